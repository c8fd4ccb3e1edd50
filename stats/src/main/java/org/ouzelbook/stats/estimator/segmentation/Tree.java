package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** Lines that meet, cut into cells. */
final class Tree {
    /** The lines; each stands after the one that it joins. */
    final List<Cells> lines;

    /** The confluences on each line, going up. */
    final List<List<Fork>> forks;

    Tree(SurveyedTree tree, Grain grain) {
        lines = tree.branches().stream()
                .map(branch -> new Cells(branch.line(), grain))
                .toList();
        List<List<Fork>> all = new ArrayList<>();
        for (int line = 0; line < lines.size(); line++) {
            List<Fork> here = new ArrayList<>();
            int receiving = line;
            joining(tree, line)
                    .forEach((border, tributaries) ->
                            here.add(new Fork(tree, lines, receiving, border, tributaries, grain)));
            all.add(List.copyOf(here));
        }
        forks = List.copyOf(all);
    }

    /** By border, the lines that join one; on a tributary itself none joins at its very mouth. */
    private SortedMap<Integer, List<Integer>> joining(SurveyedTree tree, int line) {
        SortedMap<Integer, List<Integer>> joining = new TreeMap<>();
        for (int i = 0; i < lines.size(); i++) {
            int tributary = i;
            tree.branches()
                    .get(i)
                    .mouth()
                    .filter(mouth -> mouth.branch() == line)
                    .ifPresent(mouth -> {
                        int border = Math.max(line > 0 ? 1 : 0, lines.get(line).border(mouth.position()));
                        joining.computeIfAbsent(border, any -> new ArrayList<>())
                                .add(tributary);
                    });
        }
        return joining;
    }
}
