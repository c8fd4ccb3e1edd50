package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What the notes of birds seen at once say of the registrations of one visit. Two that were noted as seen at once cannot both be
 * of one pair: one of them may still be a stray. Two near each other that were not noted so are rather of one pair, the more so
 * the oftener such things are noted ({@link Nature#noting}).
 */
final class AtOnce {
    /** For each registration, those below it that were noted as seen at once with it. */
    private final int[][] noted;

    /** For each registration, the next below it on its visit, if that is near and was not noted so; −1 if not. */
    private final int[] unnoted;

    private final boolean[] links;
    private int nearNoted;
    private int nearUnnoted;

    /**
     * The notes on one line.
     *
     * @param position places of the registrations, going up, in metres
     * @param visit their visits; {@link Registration#CASUAL} for none
     * @param pairs those noted as seen at once
     * @param inSight two neighbours of one visit no farther apart could have been noted, in metres; 0 if nobody noted such
     * @param through only neighbours on both sides of this place are counted, in metres; all if it is 0
     */
    AtOnce(double[] position, int[] visit, List<int[]> pairs, double inSight, double through) {
        int size = position.length;
        List<List<Integer>> below = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            below.add(new ArrayList<>());
        }
        for (int[] pair : pairs) {
            List<Integer> others = below.get(Math.max(pair[0], pair[1]));
            int lower = Math.min(pair[0], pair[1]);
            if (visit[pair[0]] == visit[pair[1]] && pair[0] != pair[1] && !others.contains(lower)) {
                others.add(lower);
            }
        }
        noted = new int[size][];
        unnoted = new int[size];
        links = new boolean[size];
        Map<Integer, Integer> last = new HashMap<>();
        for (int i = 0; i < size; i++) {
            noted[i] = below.get(i).stream().mapToInt(Integer::intValue).toArray();
            unnoted[i] = -1;
            Integer next = visit[i] < 0 ? null : last.put(visit[i], i);
            if (next != null && position[i] - position[next] <= inSight && inSight > 0) {
                int counted = through == 0 || (position[next] < through && position[i] >= through) ? 1 : 0;
                if (below.get(i).contains(next)) {
                    nearNoted += counted;
                } else {
                    nearUnnoted += counted;
                    unnoted[i] = next;
                }
            }
            for (int other : noted[i]) {
                link(i, other);
            }
            if (unnoted[i] >= 0) {
                link(i, unnoted[i]);
            }
        }
    }

    private void link(int one, int other) {
        links[one] = true;
        links[other] = true;
    }

    /** Whether the notes say anything of a registration. */
    boolean concerns(int registration) {
        return links[registration];
    }

    /** The registrations below one that were noted as seen at once with it. */
    int[] notedBelow(int registration) {
        return noted[registration];
    }

    /** The next registration below one on its visit, if that is near and was not noted so; −1 if not. */
    int unnotedBelow(int registration) {
        return unnoted[registration];
    }

    /** Whether a territory's weight hangs on how often such things are noted. */
    boolean tellsOfNoting() {
        return Arrays.stream(unnoted).anyMatch(below -> below >= 0);
    }

    /** How many neighbours on one visit, near enough to be noted, were. */
    int nearNoted() {
        return nearNoted;
    }

    /** How many were not. */
    int nearUnnoted() {
        return nearUnnoted;
    }
}
