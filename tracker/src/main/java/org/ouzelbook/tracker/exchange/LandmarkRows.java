package org.ouzelbook.tracker.exchange;

import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Keys;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.exchange.cell.Words;

/** Takes landmarks. */
record LandmarkRows(BookIndex book, TableTally tally) implements KindRows {
    @Override
    public void take(RowReader row) {
        Optional<String> name = row.label(Column.NAME);
        Optional<Place> place = RowPlace.of(row);
        LandmarkKind kind = row.word(Column.KIND, Words.LANDMARK_KINDS).orElse(LandmarkKind.OTHER);
        List<String> aliases = RowReader.pieces(row.text(Column.ALIASES).replace(',', ';'));
        boolean nestSite = row.yes(Column.NEST_SITE, false);
        Optional<Landmark> made = name.isEmpty() || place.isEmpty()
                ? Optional.empty()
                : Optional.of(new Landmark(Keys.next(), name.get(), kind, place.get(), aliases, nestSite));
        Optional<Landmark> known =
                made.flatMap(landmark -> book.landmark(landmark.place().riverId(), landmark.name()));
        Labelled.settle(row, Column.NAME, made, known, tally, book::know);
    }
}
