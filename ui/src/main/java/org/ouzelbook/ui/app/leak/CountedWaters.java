package org.ouzelbook.ui.app.leak;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * The waters of a book for which birds can be counted, its rivers and reaches. Whoever has the counts of two of them has that of the
 * water by which they differ, so that must not be smaller than a public cell either.
 */
final class CountedWaters {
    private record Counted(String name, StretchSearch.Told water) {}

    private final List<Counted> rivers = new ArrayList<>();
    private final List<Counted> reaches = new ArrayList<>();

    CountedWaters(SurveyRecords records) {
        for (River river : records.rivers().rivers()) {
            records.rivers()
                    .measuredLine(river.id())
                    .ifPresent(line -> rivers.add(counted(river.name(), river.name(), line.extent())));
        }
        records.reaches()
                .forEach(reach -> reaches.add(counted(
                        reach.name(), records.rivers().river(reach.riverId()).name(), reach.stretch())));
    }

    private static Counted counted(String name, String river, Stretch stretch) {
        return new Counted(
                name,
                new StretchSearch.Told(
                        river, stretch.lower().km(), stretch.upper().km()));
    }

    /** {@return what counts of the reaches of a name tell, by themselves and beside those of other water} */
    List<Leak> leaks(String file, String reach) {
        List<Leak> leaks = new ArrayList<>();
        for (Counted asked : reaches) {
            if (asked.name().equalsIgnoreCase(reach.strip())) {
                if (asked.water().isTooSmall()) {
                    leaks.add(new Leak(
                            file, "", 0, Leak.Kind.SMALL_STRETCH, Message.of("leak.small", metres(asked.water()))));
                }
                rivers.forEach(other -> beside(file, asked, other).ifPresent(leaks::add));
                reaches.forEach(other -> beside(file, asked, other).ifPresent(leaks::add));
            }
        }
        return leaks;
    }

    private static Optional<Leak> beside(String file, Counted asked, Counted other) {
        return asked.water()
                .piece(other.water())
                .map(piece -> new Leak(
                        file,
                        "",
                        0,
                        Leak.Kind.DIFFERENCE,
                        Message.of("leak.reach", asked.name(), other.name(), metres(piece))));
    }

    private static long metres(StretchSearch.Told water) {
        return Math.round((water.toKm() - water.fromKm()) * 1000);
    }
}
