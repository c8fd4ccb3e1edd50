package org.ouzelbook.ui.strip;

/**
 * All seasons, made ready.
 *
 * @param scene what they show
 * @param words the same in words
 */
record SeasonsPlan(SeasonsScene scene, StripTelling words) implements ReadyStrip {
    private static final double CLOSEST_METRES = 500;

    static SeasonsPlan of(SeasonsScene scene) {
        return new SeasonsPlan(scene, new StripTelling(StripWords.title(scene), () -> StripWords.description(scene)));
    }

    @Override
    public StripDrawing drawing(Frame frame) {
        return new SeasonsLayout(this, frame).drawing();
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
