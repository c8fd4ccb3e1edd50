package org.ouzelbook.tracker.exchange;

import java.util.Locale;
import java.util.OptionalInt;
import java.util.Set;
import org.ouzelbook.tracker.exchange.cell.Blank;

/** How many birds a row tells of: a blank count is one registration of one bird, or of two if the row says that it was a pair. */
final class SightingCount {
    private static final Set<String> PAIR = Set.of("pair", "pr", "a pair", "1 pair");
    private static final Set<String> PAIR_SEX = Set.of("pair", "m+f", "f+m", "m/f", "f/m", "m & f", "both", "♂♀", "mf");

    private SightingCount() {}

    /** {@return whether the row says that none were seen} */
    static boolean isNone(RowReader row) {
        String count = row.text(Column.COUNT);
        return (!count.isEmpty() && Blank.isNone(count))
                || row.text(Column.PRESENCE).equalsIgnoreCase("absent");
    }

    /** {@return the count; 1 if the row's count cannot be read, which is then noted} */
    static int of(RowReader row, boolean pair) {
        String text = row.text(Column.COUNT).toLowerCase(Locale.ROOT);
        if (PAIR.contains(text)) {
            return 2;
        }
        OptionalInt count = row.whole(Column.COUNT, false);
        boolean pairBySex = PAIR_SEX.contains(row.text(Column.SEX).toLowerCase(Locale.ROOT));
        return Math.max(1, count.orElse(pair || pairBySex ? 2 : 1));
    }
}
