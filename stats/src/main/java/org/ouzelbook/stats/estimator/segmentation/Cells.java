package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A surveyed line cut into cells of one width, with what each step of the recursions asks for in arrays. Borders are counted
 * from the lower end: cell {@code c} lies between borders {@code c} and {@code c + 1}.
 */
final class Cells {
    /** The place of the lower end, in metres along the line. */
    final double lower;

    final int count;
    final double width;

    /**
     * Only territories that reach across this border are asked about; 0 if all are. So it is where two arms of a confluence are
     * put together as one line.
     */
    final int through;

    /** The longest territory, in cells. */
    final int longest;

    /** The shortest territory, in cells. */
    final int shortest;

    /** Positions of the registrations above the lower end, going up. */
    final double[] position;

    /** Their visits; {@link Registration#CASUAL} also for those beyond what their visit covered. */
    final int[] visit;

    /** For each border, how many registrations lie below it. */
    final int[] below;

    /** For each visit and border, how many cells below it the visit covered; what it covered ends at the nearest borders. */
    final int[][] covered;

    /** For each visit, the borders at which its covered water begins and ends, in turn, going up. */
    final int[][] walked;

    /** For each border, the logarithm of the weight of a limit there. */
    final double[] limit;

    /** For each cell, whether it can be vacant. */
    final boolean[] canBeVacant;

    /** For each border, how many cells below it no territory can hold. */
    final int[] barred;

    /** For each cell, the pairs apart whose upper place lies in it. */
    final List<List<ApartCells>> apart;

    /** For each cell, the birds met in it that turned back. */
    final List<List<TurnCells>> turns;

    /** Which registrations were noted as seen at once. */
    final AtOnce atOnce;

    record ApartCells(int lower, double logFactor) {}

    /** Where the territory of a bird that turned back can end, and the logarithms of the weights. */
    record TurnCells(boolean upward, int lowest, int highest, double logFits, double logOtherwise) {
        /** For a territory, between two borders, in which the bird was met. */
        double log(int lower, int upper) {
            int end = upward ? upper : lower;
            return end >= lowest && end <= highest ? logFits : logOtherwise;
        }
    }

    Cells(SurveyedLine line, Grain grain) {
        this(line, grain, (int) Math.max(1, Math.round((line.upper() - line.lower()) / grain.cell())), 0);
    }

    /** Cells whose number is known; two arms of a confluence do not limit a territory's length, as the water goes on beyond. */
    Cells(SurveyedLine line, Grain grain, int count, int through) {
        this.lower = line.lower();
        this.count = count;
        this.through = through;
        width = (line.upper() - line.lower()) / count;
        int most = through > 0 ? Integer.MAX_VALUE : count;
        shortest = (int) Math.max(1, Math.min(count, Math.ceil(grain.shortest() / width - 1e-9)));
        longest = (int) Math.max(shortest, Math.min(most, Math.floor(grain.longest() / width + 1e-9)));
        covered = new int[line.visits().size()][count + 1];
        walked = new int[covered.length][];
        for (int v = 0; v < covered.length; v++) {
            walked[v] = walked(line.visits().get(v));
            for (int i = 0; i < walked[v].length; i += 2) {
                Arrays.fill(covered[v], walked[v][i] + 1, walked[v][i + 1] + 1, 1);
            }
            for (int c = 0; c < count; c++) {
                covered[v][c + 1] += covered[v][c];
            }
        }
        int size = line.registrations().size();
        position = new double[size];
        visit = new int[size];
        below = new int[count + 1];
        for (int i = 0; i < size; i++) {
            Registration one = line.registrations().get(i);
            position[i] = one.position() - lower;
            boolean onVisit = one.visit() >= 0 && isCovered(one.visit(), cell(one.position()));
            visit[i] = onVisit ? one.visit() : Registration.CASUAL;
            below[cell(one.position()) + 1]++;
        }
        for (int c = 0; c < count; c++) {
            below[c + 1] += below[c];
        }
        limit = new double[count + 1];
        canBeVacant = new boolean[count];
        Arrays.fill(canBeVacant, true);
        boolean[] bar = new boolean[count];
        apart = emptyLists();
        turns = emptyLists();
        List<int[]> links = new ArrayList<>();
        line.constraints().forEach(constraint -> apply(line, constraint, bar, links));
        atOnce = new AtOnce(position, visit, links, line.inSight(), through * width);
        barred = new int[count + 1];
        for (int c = 0; c < count; c++) {
            barred[c + 1] = barred[c] + (bar[c] ? 1 : 0);
        }
    }

    private <T> List<List<T>> emptyLists() {
        List<List<T>> lists = new ArrayList<>();
        for (int c = 0; c < count; c++) {
            lists.add(new ArrayList<>());
        }
        return lists;
    }

    private int[] walked(VisitedWater visit) {
        List<VisitedWater.Piece> pieces = visit.pieces().stream()
                .filter(piece -> border(piece.lower()) < border(piece.upper()))
                .sorted(Comparator.comparingDouble(VisitedWater.Piece::lower))
                .toList();
        return pieces.stream()
                .flatMapToInt(piece -> IntStream.of(border(piece.lower()), border(piece.upper())))
                .toArray();
    }

    boolean isCovered(int v, int c) {
        return covered[v][c + 1] > covered[v][c];
    }

    private void apply(SurveyedLine line, Constraint constraint, boolean[] bar, List<int[]> links) {
        if (constraint instanceof Constraint.Simultaneous pair) {
            links.add(new int[] {
                line.registrations().indexOf(pair.one()), line.registrations().lastIndexOf(pair.other())
            });
        } else if (constraint instanceof Constraint.Apart pair) {
            int lower = cell(pair.lower());
            int upper = Math.max(lower + 1, cell(pair.upper()));
            if (upper < count) {
                apart.get(upper).add(new ApartCells(lower, Math.log(pair.factor())));
            }
        } else if (constraint instanceof Constraint.Bond bond) {
            for (int c = cell(bond.lower()) + 1; c <= cell(bond.upper()); c++) {
                limit[c] += Math.log(bond.factor());
            }
        } else if (constraint instanceof Constraint.Turn turn) {
            turns.get(cell(turn.from()))
                    .add(new TurnCells(
                            turn.from() <= turn.end(),
                            border(turn.end() - turn.within()),
                            border(turn.end() + turn.within()),
                            Math.log(turn.fits()),
                            Math.log(turn.otherwise())));
        } else if (constraint instanceof Constraint.Held held) {
            canBeVacant[cell(held.position())] = false;
        } else if (constraint instanceof Constraint.Limit wall) {
            int border = border(wall.position());
            if (border > 0 && border < count) {
                apart.get(border).add(new ApartCells(border - 1, Double.NEGATIVE_INFINITY));
            }
        } else if (constraint instanceof Constraint.Vacant vacant) {
            Arrays.fill(bar, cell(vacant.lower()), cell(vacant.upper()) + 1, true);
        }
    }

    /** The cell that holds a place; the first or last for places beyond the ends. */
    int cell(double place) {
        return (int) Math.max(0, Math.min(count - 1, Math.floor((place - lower) / width)));
    }

    /** The border nearest to a place. */
    int border(double place) {
        return (int) Math.max(0, Math.min(count, Math.round((place - lower) / width)));
    }

    /** The place of a border, in metres along the line. */
    double place(int border) {
        return lower + border * width;
    }

    /** The middle between two borders, in metres. */
    double middle(int from, int to) {
        return place(from) + (to - from) * width / 2;
    }
}
