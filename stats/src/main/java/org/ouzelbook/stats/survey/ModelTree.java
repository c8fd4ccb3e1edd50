package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.estimator.segmentation.SurveyedTree;
import org.ouzelbook.stats.estimator.segmentation.SurveyedTree.Branch;
import org.ouzelbook.stats.estimator.segmentation.SurveyedTree.Link;
import org.ouzelbook.stats.estimator.segmentation.SurveyedTree.Mouth;
import org.ouzelbook.tracker.domain.River;

/**
 * Rivers that meet, in one season, as the model of territories sees them. A tributary is one of them where both it and the river
 * that it joins were walked, near enough to the confluence for a territory to reach there.
 *
 * @param lines the rivers; each stands after the one that it joins
 * @param waters the same for the estimator
 * @param mouths where those that join another do so, by key
 */
record ModelTree(List<ModelLine> lines, SurveyedTree waters, Map<UUID, River.Confluence> mouths) {
    ModelTree {
        lines = List.copyOf(lines);
        mouths = Map.copyOf(mouths);
    }

    /** One river by itself. */
    static ModelTree of(ModelLine line) {
        return of(List.of(line), Map.of(), List.of());
    }

    /**
     * All rivers of a season.
     *
     * @param season the season
     * @param field what its records say for certain
     * @param lines the rivers that were walked, by key
     */
    static List<ModelTree> all(Season season, Field field, Map<UUID, ModelLine> lines) {
        Map<UUID, List<ModelLine>> trees = new LinkedHashMap<>();
        Map<UUID, River.Confluence> mouths = new LinkedHashMap<>();
        for (River river : season.records().rivers().inOrderOfWater()) {
            ModelLine line = lines.get(river.id());
            if (line != null) {
                Optional<River.Confluence> mouth = river.mouth().filter(at -> meets(line, at, lines));
                mouth.ifPresent(at -> mouths.put(river.id(), at));
                List<ModelLine> tree = mouth.map(at -> trees.getOrDefault(at.riverId(), new ArrayList<>()))
                        .orElseGet(ArrayList::new);
                tree.add(line);
                trees.put(river.id(), tree);
            }
        }
        return trees.values().stream()
                .distinct()
                .map(tree -> of(tree, mouths, field.links()))
                .toList();
    }

    private static boolean meets(ModelLine line, River.Confluence mouth, Map<UUID, ModelLine> lines) {
        ModelLine receiving = lines.get(mouth.riverId());
        double at = mouth.chainage().metres();
        return receiving != null
                && line.line().lower() <= 0
                && receiving.line().lower() <= at
                && at <= receiving.line().upper();
    }

    private static ModelTree of(List<ModelLine> lines, Map<UUID, River.Confluence> mouths, List<Field.Link> links) {
        Map<UUID, Integer> places = new LinkedHashMap<>();
        List<Branch> branches = new ArrayList<>();
        for (ModelLine line : lines) {
            Optional<Mouth> mouth = Optional.ofNullable(mouths.get(line.river()))
                    .map(at -> new Mouth(
                            places.getOrDefault(at.riverId(), 0), at.chainage().metres()));
            places.put(line.river(), branches.size());
            branches.add(new Branch(line.line(), line.days(), mouth));
        }
        List<Link> known = new ArrayList<>();
        for (Field.Link link : links) {
            across(link.one(), link.other(), link.kind(), lines, places, mouths).ifPresent(known::add);
            across(link.other(), link.one(), link.kind(), lines, places, mouths).ifPresent(known::add);
        }
        return new ModelTree(lines, new SurveyedTree(branches, known), mouths);
    }

    /** What is known of a record on a tributary and one on the river that it joins. */
    private static Optional<Link> across(
            Member one,
            Member other,
            Field.Kind kind,
            List<ModelLine> lines,
            Map<UUID, Integer> places,
            Map<UUID, River.Confluence> mouths) {
        Integer branch = places.get(one.place().riverId());
        Integer receiving = places.get(other.place().riverId());
        River.Confluence mouth = mouths.get(one.place().riverId());
        if (branch == null
                || receiving == null
                || mouth == null
                || !mouth.riverId().equals(other.place().riverId())
                || !lines.get(branch).holds(one)
                || !lines.get(receiving).holds(other)) {
            return Optional.empty();
        }
        if (kind == Field.Kind.SIMULTANEOUS
                && one instanceof Member.Seen bird
                && other instanceof Member.Seen another) {
            return Optional.of(new SurveyedTree.Birds(
                    branch,
                    ModelLine.registration(bird, lines.get(branch).effort()),
                    receiving,
                    ModelLine.registration(another, lines.get(receiving).effort())));
        }
        return Optional.of(new SurveyedTree.Places(
                branch, one.metres(), receiving, other.metres(), kind.apart(), ModelLine.HARDLY));
    }

    /** The same with another line of one of the rivers, and what is then known for certain. */
    ModelTree with(ModelLine line, Field field) {
        List<ModelLine> others = new ArrayList<>(lines);
        others.set(place(line.river()), line);
        return of(others, mouths, field.links());
    }

    /** The place of a river among the lines. */
    int place(UUID river) {
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).river().equals(river)) {
                return i;
            }
        }
        throw new IllegalArgumentException("No line has the key " + river);
    }
}
