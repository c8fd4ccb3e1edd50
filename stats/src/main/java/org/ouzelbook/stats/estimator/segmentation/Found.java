package org.ouzelbook.stats.estimator.segmentation;

import java.util.Optional;

/**
 * A territory of one map.
 *
 * @param line the line that its middle lies on
 * @param from its lower border on that line
 * @param to its upper border on that line
 * @param middle its middle, in metres along the line
 * @param beyond the part on another line, where it bends at a confluence
 */
record Found(int line, int from, int to, double middle, Optional<Beyond> beyond) {
    /**
     * The other part of a territory that bends.
     *
     * @param line its line; the same, if the territory bends from one tributary into another
     * @param from its lower border
     * @param to its upper border
     */
    record Beyond(int line, int from, int to) {}

    static Found straight(int line, Cells cells, int from, int to) {
        return new Found(line, from, to, cells.middle(from, to), Optional.empty());
    }

    static Found bent(Crossing crossing, int onFirst, int onSecond) {
        boolean first = crossing.isMiddleOnFirst(onFirst, onSecond);
        Arm home = first ? crossing.one : crossing.other;
        Arm away = first ? crossing.other : crossing.one;
        int homeEnd = home.border(first ? onFirst : onSecond);
        int awayEnd = away.border(first ? onSecond : onFirst);
        return new Found(
                home.line(),
                Math.min(home.border(), homeEnd),
                Math.max(home.border(), homeEnd),
                crossing.middle(onFirst, onSecond),
                Optional.of(
                        new Beyond(away.line(), Math.min(away.border(), awayEnd), Math.max(away.border(), awayEnd))));
    }
}
