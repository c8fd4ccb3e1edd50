package org.ouzelbook.ui.app.leak;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.exchange.export.PublicGrid;

/**
 * The waters of a book for which birds can be counted, its rivers and reaches. Whoever has the counts of two of them has that of the
 * water by which they differ, so that must not be smaller than a public cell either. Nor may the end of a reach cut a cell in two, one
 * of them smaller than any public cell, where a nest lies in the smaller one: the cell is told on the map of the river, and on which side
 * of the end its birds are is told by the count.
 */
final class CountedWaters {
    private record Counted(String name, UUID riverId, StretchSearch.Told water) {}

    private final PublicGrid grid;
    private final List<Nest> nests;
    private final List<Counted> rivers = new ArrayList<>();
    private final List<Counted> reaches = new ArrayList<>();

    CountedWaters(SurveyRecords records) {
        grid = new PublicGrid(records.rivers());
        nests = records.nests();
        for (River river : records.rivers().rivers()) {
            records.rivers()
                    .measuredLine(river.id())
                    .ifPresent(line -> rivers.add(counted(river.name(), river, line.extent())));
        }
        records.reaches()
                .forEach(reach ->
                        reaches.add(counted(reach.name(), records.rivers().river(reach.riverId()), reach.stretch())));
    }

    private static Counted counted(String name, River river, Stretch stretch) {
        return new Counted(name, river.id(), told(river.name(), stretch));
    }

    private static StretchSearch.Told told(String river, Stretch stretch) {
        return new StretchSearch.Told(
                river, stretch.lower().km(), stretch.upper().km());
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
                cut(file, asked, asked.water().fromKm()).ifPresent(leaks::add);
                cut(file, asked, asked.water().toKm()).ifPresent(leaks::add);
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

    private Optional<Leak> cut(String file, Counted asked, double atKm) {
        Chainage end = Chainage.ofKm(atKm);
        Stretch cell = grid.cell(asked.riverId(), end);
        Stretch piece = Stretch.between(end, end.compareTo(cell.middle()) < 0 ? cell.lower() : cell.upper());
        StretchSearch.Told told = told(asked.water().river(), piece);
        boolean holdsANest = nests.stream()
                .anyMatch(nest -> nest.place().riverId().equals(asked.riverId())
                        && piece.contains(nest.place().chainage()));
        return told.isTooSmall() && holdsANest
                ? Optional.of(new Leak(
                        file,
                        "",
                        0,
                        Leak.Kind.DIFFERENCE,
                        Message.of("leak.reach.cut", asked.name(), atKm, metres(told))))
                : Optional.empty();
    }

    private static long metres(StretchSearch.Told water) {
        return Math.round((water.toKm() - water.fromKm()) * 1000);
    }
}
