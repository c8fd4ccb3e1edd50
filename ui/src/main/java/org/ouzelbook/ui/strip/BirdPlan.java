package org.ouzelbook.ui.strip;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * The life of one bird, made ready.
 *
 * @param scene what it shows
 * @param words the same in words
 */
record BirdPlan(BirdScene scene, StripTelling words) implements ReadyStrip {
    private static final double CLOSEST_METRES = 500;

    /** {@return the rivers on which it was read for certain, else those on which it may have been, else the first of all} */
    List<Water> waters() {
        boolean known = scene.readings().stream().anyMatch(BirdScene.Reading::certain);
        Set<UUID> rivers = scene.readings().stream()
                .filter(reading -> reading.certain() || !known)
                .map(reading -> reading.sighting().place().riverId())
                .collect(Collectors.toUnmodifiableSet());
        List<Water> read = scene.waters().list().stream()
                .filter(water -> rivers.contains(water.river().id()))
                .toList();
        return read.isEmpty() ? scene.waters().list().stream().limit(1).toList() : read;
    }

    static BirdPlan of(BirdScene scene) {
        return new BirdPlan(scene, new StripTelling(StripWords.title(scene), () -> StripWords.description(scene)));
    }

    @Override
    public StripDrawing drawing(Frame frame) {
        return new BirdLayout(this, frame).drawing();
    }

    @Override
    public Frame farthest(double width, double height) {
        return Frame.fitting(scene.waters(), width, height);
    }

    @Override
    public double closest() {
        return CLOSEST_METRES;
    }
}
