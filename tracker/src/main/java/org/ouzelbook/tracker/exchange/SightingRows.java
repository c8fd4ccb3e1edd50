package org.ouzelbook.tracker.exchange;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Keys;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.exchange.cell.Words;
import org.ouzelbook.tracker.exchange.cell.WrittenActivities;
import org.ouzelbook.tracker.exchange.cell.WrittenBreedingCode;

/** Takes sightings: most of them at once, those that name each other as seen at the same time at the end. */
final class SightingRows implements KindRows {
    private final BookIndex book;
    private final TableTally tally;
    private final KnownSightings known;
    private final SimultaneousRows simultaneous;
    private final Set<String> referredTo;

    SightingRows(TableContext table, TableTally tally) {
        this.book = table.book();
        this.tally = tally;
        this.known = KnownSightings.of(book.edit(), table.survey().sightingsOfItsYears());
        this.simultaneous = new SimultaneousRows(book, this::settle, tally::leaveOut);
        this.referredTo = table.survey().referredTo();
    }

    @Override
    public void take(RowReader row) {
        SightingVisit visit = SightingVisit.of(row);
        if (SightingCount.isNone(row)) {
            visit.settleNoneSeen(row, tally);
            return;
        }
        Optional<Sighting> sighting = sighting(row, visit);
        List<String> names = RowReader.pieces(row.text(Column.SIMULTANEOUS_WITH));
        String label = row.text(Column.SIGHTING);
        if (!names.isEmpty() || (!label.isEmpty() && referredTo.contains(BookIndex.key(label)))) {
            simultaneous.keep(row, label, sighting, names);
        } else if (sighting.isEmpty() || !row.isReady()) {
            tally.leaveOut(row);
        } else {
            settle(row, sighting.get());
        }
    }

    @Override
    public void finish() {
        simultaneous.settle();
    }

    private void settle(RowReader row, Sighting sighting) {
        if (known.isKnown(sighting)) {
            tally.settle(row, Outcome.DUPLICATE);
            return;
        }
        long repeated = known.repeatedRow(sighting, row.number());
        if (repeated > 0) {
            tally.settleRepeated(row, repeated);
            return;
        }
        if (known.isLabelTaken(sighting)) {
            row.problem(Column.SIGHTING, Message.of("import.sighting.changed", sighting.date()));
            tally.leaveOut(row);
            return;
        }
        OptionalLong same = known.possiblySame(sighting, row.number());
        if (same.isPresent() && sighting.simultaneousWith().isEmpty()) {
            row.warning(
                    Column.OBSERVER,
                    same.getAsLong() == 0
                            ? Message.of("import.sighting.sameAsInBook")
                            : Message.of("import.sighting.sameAsRow", same.getAsLong()));
        }
        tally.add(sighting, row.number());
        tally.settle(row, Outcome.ADDED);
    }

    private Optional<Sighting> sighting(RowReader row, SightingVisit visit) {
        Optional<Place> place = RowPlace.of(row, visit.river(book));
        Optional<Species> species = row.species();
        Age age = row.word(Column.AGE, Words.AGES).orElse(Age.UNKNOWN);
        Sex sex = row.word(Column.SEX, Words.SEXES).orElse(Sex.UNKNOWN);
        WrittenActivities doing =
                WrittenActivities.of(row.known(Column.ACTIVITY).orElse(""));
        int count = SightingCount.of(row, doing.pair());
        Optional<BreedingCode> code = breedingCode(row);
        Optional<Chainage> flewTo = place.flatMap(
                from -> RowPlace.kmOnRiver(row, Column.FLEW_TO_KM, book.river(book.riverName(from.riverId()))));
        boolean turnedBack = turnedBack(row, doing, flewTo);
        String unknownActivities = unknownActivities(row, doing);
        if (place.isEmpty() || species.isEmpty() || visit.date().isEmpty()) {
            return Optional.empty();
        }
        Optional<UUID> visitId = visit.visitFor(row, place.get(), tally);
        return Optional.of(new Sighting(
                Keys.next(),
                row.text(Column.SIGHTING),
                visitId,
                visit.date().get(),
                visit.time(row),
                place.get(),
                species.get(),
                count,
                age,
                sex,
                doing.activities().isEmpty() ? Set.of() : EnumSet.copyOf(doing.activities()),
                code,
                row.text(Column.RINGS),
                Set.of(),
                flewTo,
                turnedBack,
                row.text(Column.OBSERVER),
                row.note(unknownActivities)));
    }

    private static Optional<BreedingCode> breedingCode(RowReader row) {
        return row.known(Column.BREEDING_CODE).flatMap(text -> {
            Optional<BreedingCode> code = WrittenBreedingCode.of(text);
            if (code.isEmpty()) {
                row.problem(Column.BREEDING_CODE, Message.of("import.breedingCode.unknown"));
            }
            return code;
        });
    }

    private static boolean turnedBack(RowReader row, WrittenActivities doing, Optional<Chainage> flewTo) {
        boolean told = row.yes(Column.TURNED_BACK, false);
        if (told && flewTo.isEmpty() && row.known(Column.FLEW_TO_KM).isEmpty()) {
            row.problem(Column.TURNED_BACK, Message.of("import.turnedBack.nowhere"));
        }
        if (doing.turnedBack() && flewTo.isEmpty()) {
            row.warning(Column.ACTIVITY, Message.of("import.turnedBack.kept"));
        }
        return (told || doing.turnedBack()) && flewTo.isPresent();
    }

    private static String unknownActivities(RowReader row, WrittenActivities doing) {
        List<String> kept = new ArrayList<>(doing.others());
        if (!kept.isEmpty()) {
            row.warning(Column.ACTIVITY, Message.of("import.activity.unknown", kept));
        }
        if (doing.turnedBack()) {
            kept.add("turned back");
        }
        return kept.isEmpty() ? "" : Column.ACTIVITY.written() + ": " + String.join(", ", kept);
    }
}
