package org.ouzelbook.tracker.exchange;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.Keys;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.TravelMode;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.exchange.cell.Blank;
import org.ouzelbook.tracker.exchange.cell.When;
import org.ouzelbook.tracker.exchange.cell.Words;
import org.ouzelbook.tracker.exchange.cell.WrittenSpecies;

/** Takes visits. */
record VisitRows(BookIndex book, TableTally tally) implements KindRows {
    private static final Pattern BARE_INITIAL = Pattern.compile("\\p{L}\\.?");
    private static final Pattern SEVERAL = Pattern.compile("[;&+|/\\n]|\\band\\b");

    @Override
    public void take(RowReader row) {
        Optional<String> label = row.label(Column.VISIT);
        Optional<When.Read> when = row.neededDate();
        Optional<River> river = RowPlace.neededRiver(row);
        Optional<Stretch> walked = RowPlace.stretch(row, river);
        Optional<LocalTime> start =
                row.time(Column.START).or(() -> row.time(Column.TIME)).or(() -> when.flatMap(When.Read::time));
        Optional<LocalTime> end = row.time(Column.END).or(() -> when.flatMap(When.Read::end));
        if (start.isPresent() && end.isPresent() && end.get().isBefore(start.get())) {
            row.problem(Column.END, Message.of("import.visit.endsBeforeStart", start.get(), end.get()));
        }
        Optional<Direction> direction = row.word(Column.DIRECTION, Words.DIRECTIONS);
        Optional<TravelMode> mode = row.word(Column.MODE, Words.MODES);
        List<Species> lookedFor = lookedFor(row);
        boolean effective = row.yes(Column.EFFECTIVE, true);
        if (row.isReady() && walked.isEmpty()) {
            row.warning(Column.FROM_KM, Message.of("import.visit.noStretch"));
        }
        Optional<Visit> made = label.isEmpty() || when.isEmpty() || river.isEmpty()
                ? Optional.empty()
                : Optional.of(new Visit(
                        Keys.next(),
                        label.get(),
                        river.get().id(),
                        when.get().date(),
                        start,
                        end,
                        walked,
                        direction,
                        mode,
                        people(row.text(Column.OBSERVER)),
                        lookedFor,
                        row.text(Column.LEVEL),
                        row.text(Column.WEATHER),
                        effective,
                        row.note()));
        Labelled.settle(row, Column.VISIT, made, label.flatMap(book::visit), tally, book::know);
    }

    private List<Species> lookedFor(RowReader row) {
        Optional<String> text = row.known(Column.SPECIES);
        if (text.isEmpty()) {
            Optional<Species> usual = row.table().answers().species();
            if (usual.isEmpty()) {
                row.warning(Column.SPECIES, Message.of("import.visit.nothingLookedFor"));
            }
            return usual.map(List::of).orElse(List.of());
        }
        if (text.get().matches("(?i)all( four| 4)?( species)?")) {
            return Species.all();
        }
        List<Species> species = new ArrayList<>();
        for (String piece : WrittenSpecies.pieces(text.get())) {
            row.species(piece).filter(one -> !species.contains(one)).ifPresent(species::add);
        }
        return species;
    }

    /** {@return the people of a cell; a comma separates them unless it stands before a bare initial, as in "Brook, A."} */
    static List<String> people(String text) {
        List<String> people = new ArrayList<>();
        SEVERAL.splitAsStream(text).forEach(piece -> {
            List<String> byComma = Pattern.compile(",")
                    .splitAsStream(piece)
                    .map(Blank::plainSpaces)
                    .filter(name -> !name.isEmpty())
                    .toList();
            if (byComma.stream().anyMatch(name -> BARE_INITIAL.matcher(name).matches())) {
                people.add(Blank.plainSpaces(piece));
            } else {
                people.addAll(byComma);
            }
        });
        return people;
    }
}
