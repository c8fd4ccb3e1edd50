package org.ouzelbook.tracker.exchange;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ouzelbook.tracker.domain.Keys;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestSite;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.exchange.cell.Words;

/** Takes nests. */
record NestRows(BookIndex book, TableTally tally) implements KindRows {
    @Override
    public void take(RowReader row) {
        Optional<String> label = row.label(Column.NEST);
        Optional<Place> place = RowPlace.of(row);
        Optional<Species> species = row.species();
        NestSite site = row.word(Column.SITE, Words.NEST_SITES).orElse(NestSite.OTHER);
        OptionalDouble height = row.number(Column.HEIGHT_M);
        if (height.orElse(0) < 0) {
            row.problem(Column.HEIGHT_M, Message.of("import.nest.belowWater"));
        }
        Optional<LocalDate> found = row.date(Column.FOUND);
        Optional<Nest> made = label.isEmpty() || place.isEmpty() || species.isEmpty()
                ? Optional.empty()
                : Optional.of(new Nest(
                        Keys.next(), label.get(), place.get(), species.get(), site, height, found, row.note()));
        Labelled.settle(row, Column.NEST, made, label.flatMap(book::nest), tally, book::know);
    }
}
