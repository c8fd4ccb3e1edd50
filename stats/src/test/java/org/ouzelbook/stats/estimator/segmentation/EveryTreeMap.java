package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * Every map of small waters that meet, written down one by one with its weight. Only the weight of a single stretch is shared
 * with the recursions.
 */
final class EveryTreeMap {
    private final Tree tree;
    private final Nature nature;
    private final List<Piece> pieces = new ArrayList<>();
    private final Map<Integer, List<Piece>> byCell = new HashMap<>();
    private final List<Integer> firstCell = new ArrayList<>();
    private final int cellCount;
    private final double total;
    private final List<OneMap> maps = new ArrayList<>();

    /** A territory that can be. */
    record Piece(Found found, List<Integer> cells, double weight, boolean met, double cellsLong) {}

    /** One map. */
    record OneMap(List<Piece> territories, double weight) {}

    EveryTreeMap(Tree tree, Nature nature) {
        this.tree = tree;
        this.nature = nature;
        int cells = 0;
        for (Cells line : tree.lines) {
            firstCell.add(cells);
            cells += line.count;
        }
        cellCount = cells;
        for (int line = 0; line < tree.lines.size(); line++) {
            straight(line);
            tree.forks.get(line).forEach(fork -> fork.crossings.forEach(this::bent));
        }
        for (Piece piece : pieces) {
            piece.cells()
                    .forEach(cell -> byCell.computeIfAbsent(cell, any -> new ArrayList<>())
                            .add(piece));
        }
        grow(0, new Piece[cellCount], new ArrayList<>(), 1);
        total = maps.stream().mapToDouble(OneMap::weight).sum();
    }

    List<OneMap> maps() {
        return maps;
    }

    double total() {
        return total;
    }

    int cell(int line, int cell) {
        return firstCell.get(line) + cell;
    }

    private void straight(int line) {
        Cells cells = tree.lines.get(line);
        StretchWeights weights = new StretchWeights(cells, nature);
        double[] lengths = LengthLaw.of(nature, cells);
        for (int from = 0; from < cells.count; from++) {
            for (int n = cells.shortest; n <= Math.min(cells.longest, cells.count - from); n++) {
                double weight = Math.exp(weights.log(from, from + n) + lengths[n]) * known(cells, from, from + n);
                List<Integer> held = new ArrayList<>();
                for (int c = from; c < from + n; c++) {
                    held.add(cell(line, c));
                }
                boolean met = cells.below[from] < cells.below[from + n];
                add(new Piece(Found.straight(line, cells, from, from + n), held, weight, met, n));
            }
        }
    }

    private void bent(Crossing crossing) {
        Cells cells = crossing.cells;
        StretchWeights weights = new StretchWeights(cells, nature);
        double[] lengths = LengthLaw.of(nature, cells);
        for (int n = 1; n <= crossing.one.reach(); n++) {
            for (int m = 1; m <= crossing.other.reach(); m++) {
                if (n + m < cells.shortest || n + m > cells.longest) {
                    continue;
                }
                int from = crossing.one.reach() - n;
                double weight =
                        Math.exp(weights.log(from, from + n + m) + lengths[n + m]) * known(cells, from, from + n + m);
                List<Integer> held = new ArrayList<>();
                for (int out = 0; out < n; out++) {
                    held.add(cell(crossing.one.line(), crossing.one.cell(out)));
                }
                for (int out = 0; out < m; out++) {
                    held.add(cell(crossing.other.line(), crossing.other.cell(out)));
                }
                add(new Piece(Found.bent(crossing, n, m), held, weight, crossing.isMet(n, m), n + m));
            }
        }
    }

    private void add(Piece piece) {
        if (piece.weight() > 0) {
            pieces.add(piece);
        }
    }

    private static double known(Cells cells, int from, int to) {
        double factor = 1;
        for (int c = from; c < to; c++) {
            for (Cells.ApartCells pair : cells.apart.get(c)) {
                factor *= pair.lower() >= from ? Math.exp(pair.logFactor()) : 1;
            }
            for (Cells.TurnCells turn : cells.turns.get(c)) {
                factor *= Math.exp(turn.log(from, to));
            }
        }
        return factor;
    }

    private void grow(int at, Piece[] held, List<Piece> territories, double weight) {
        if (at == cellCount) {
            double all = weight * steps(held);
            if (all > 0) {
                maps.add(new OneMap(List.copyOf(territories), all));
            }
            return;
        }
        if (held[at] != null) {
            grow(at + 1, held, territories, weight);
            return;
        }
        if (canBeVacant(at)) {
            Piece[] next = held.clone();
            grow(at + 1, next, territories, weight);
        }
        for (Piece piece : byCell.getOrDefault(at, List.of())) {
            if (piece.cells().stream().allMatch(cell -> cell >= at && held[cell] == null)) {
                Piece[] next = held.clone();
                piece.cells().forEach(cell -> next[cell] = piece);
                territories.add(piece);
                grow(at + 1, next, territories, weight * piece.weight());
                territories.remove(territories.size() - 1);
            }
        }
    }

    private boolean canBeVacant(int at) {
        int line = 0;
        while (line + 1 < firstCell.size() && firstCell.get(line + 1) <= at) {
            line++;
        }
        return tree.lines.get(line).canBeVacant[at - firstCell.get(line)];
    }

    /** The weight of all steps from territories and vacant cells to the next, from limits, and at confluences. */
    private double steps(Piece[] held) {
        double weight = 1;
        for (int line = 0; line < tree.lines.size(); line++) {
            Cells cells = tree.lines.get(line);
            int here = line;
            if (line == 0 && tree.forks.get(0).stream().noneMatch(fork -> fork.border == 0)) {
                weight *= next(cells, true, held[cell(0, 0)] != null);
            }
            for (int c = 1; c < cells.count; c++) {
                int border = c;
                if (tree.forks.get(line).stream().noneMatch(fork -> fork.border == border)) {
                    Piece below = held[cell(here, c - 1)];
                    Piece above = held[cell(here, c)];
                    if (below == null || !below.equals(above)) {
                        weight *= next(cells, below != null, above != null);
                        weight *= below == null && above == null ? 1 : Math.exp(cells.limit[c]);
                    }
                }
            }
            for (Fork fork : tree.forks.get(line)) {
                weight *= meeting(fork, held);
            }
        }
        return weight;
    }

    private double next(Cells cells, boolean fromTerritory, boolean toTerritory) {
        double end = cells.width / (nature.vacantLength() + cells.width);
        if (fromTerritory) {
            return toTerritory ? nature.abutting() : 1 - nature.abutting();
        }
        return toTerritory ? end : 1 - end;
    }

    /** The mean over the pairs of arms through which the water may go on, each time by the laws of plain lines. */
    private double meeting(Fork fork, Piece[] held) {
        int arms = fork.arms.size();
        Piece[] at = new Piece[arms];
        for (int arm = 0; arm < arms; arm++) {
            Arm water = fork.arms.get(arm);
            at[arm] = held[cell(water.line(), water.cell(0))];
        }
        double sum = 0;
        int pairs = 0;
        for (int one = 0; one < arms; one++) {
            for (int other = one + 1; other < arms; other++) {
                pairs++;
                sum += through(fork, at, one, other);
            }
        }
        double limits = 1;
        for (int one = 0; one < arms; one++) {
            for (int other = one + 1; other < arms; other++) {
                boolean both = Objects.equals(at[one], at[other]);
                limits *= both ? 1 : Math.exp(fork.limit(one, other));
            }
        }
        return limits * sum / pairs;
    }

    private double through(Fork fork, Piece[] at, int one, int other) {
        Cells line = fork.arms.get(0).cells();
        boolean crossed = at[one] != null && at[one].equals(at[other]);
        double weight;
        if (fork.hasBelow && one == 0) {
            weight = crossed ? 1 : next(line, at[one] != null, at[other] != null);
        } else {
            Cells way = fork.crossings.stream()
                    .filter(crossing -> crossing.first == one && crossing.second == other)
                    .findFirst()
                    .orElseThrow()
                    .cells;
            double meanLength = 0;
            double[] lengths = LengthLaw.of(nature, way);
            for (int n = 0; n < lengths.length; n++) {
                meanLength += n * Math.exp(lengths[n]);
            }
            // A stationary row of territories and vacancies: begins per cell, and what lies at a border.
            double end = next(way, false, true);
            double part = 1 - nature.abutting();
            double begins = 1 / (meanLength + part / end);
            // Where a line ends here from below, the row has no territory across its end.
            begins /= fork.hasBelow ? 1 - begins * (meanLength - 1) : 1;
            double vacantCells = begins * part / end;
            weight = begins;
            if (!crossed) {
                weight = at[one] == null && at[other] == null
                        ? vacantCells * (1 - end)
                        : begins * (at[one] != null && at[other] != null ? nature.abutting() : part);
            }
        }
        for (int arm = 0; arm < at.length; arm++) {
            if (arm != one && arm != other) {
                boolean crossing = isCrossing(at, arm);
                boolean lower = fork.hasBelow && arm == 0;
                if (crossing) {
                    return 0;
                }
                weight *= lower ? 1 : next(line, true, at[arm] != null);
            }
        }
        return weight;
    }

    private static boolean isCrossing(Piece[] at, int arm) {
        for (int other = 0; other < at.length; other++) {
            if (other != arm && at[arm] != null && at[arm].equals(at[other])) {
                return true;
            }
        }
        return false;
    }
}
