package org.ouzelbook.tracker.exchange;

import java.time.LocalDate;
import java.time.Year;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Keys;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.exchange.cell.Words;

/** Takes birds with colour rings. */
record RingedBirdRows(BookIndex book, TableTally tally) implements KindRows {
    @Override
    public void take(RowReader row) {
        Optional<String> label = row.label(Column.BIRD);
        Sex sex = row.word(Column.SEX, Words.SEXES).orElse(Sex.UNKNOWN);
        Optional<Year> hatched = hatched(row);
        Optional<LocalDate> ringed = row.date(Column.RINGED);
        Optional<RingedBird> made = label.map(bird -> new RingedBird(
                Keys.next(),
                bird,
                row.text(Column.LEFT_UPPER),
                row.text(Column.LEFT_LOWER),
                row.text(Column.RIGHT_UPPER),
                row.text(Column.RIGHT_LOWER),
                row.text(Column.RING),
                sex,
                hatched,
                ringed,
                row.note()));
        Optional<RingedBird> known = label.flatMap(book.edit()::ringedBird);
        Labelled.settle(row, Column.BIRD, made, known, tally, bird -> {});
    }

    private static Optional<Year> hatched(RowReader row) {
        return row.known(Column.HATCHED).flatMap(text -> {
            String digits = text.replaceFirst("[.,]0+$", "");
            int thisYear = row.table().answers().today().getYear();
            if (!digits.matches("(19|20)[0-9]{2}") || Integer.parseInt(digits) > thisYear) {
                row.problem(Column.HATCHED, Message.of("import.bird.hatched"));
                return Optional.empty();
            }
            return Optional.of(Year.of(Integer.parseInt(digits)));
        });
    }
}
