package org.ouzelbook.tracker.exchange;

import java.time.LocalTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.Keys;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.NestStage;
import org.ouzelbook.tracker.exchange.cell.When;
import org.ouzelbook.tracker.exchange.cell.Words;

/** Takes looks at nests. An empty nest is by itself neither a success nor a failure. */
record NestCheckRows(BookIndex book, TableTally tally) implements KindRows {
    private static final Pattern YOUNG =
            Pattern.compile("young|chick|nestling|pull[iu]|naked|blind|pin|feathered|fledg");
    private static final Pattern EGGS = Pattern.compile("egg|incubat|laying|clutch");
    private static final Pattern EMPTY = Pattern.compile("empty");
    private static final Pattern COMPLETE = Pattern.compile("complete|lined|finished|built$");
    private static final Pattern BUILDING = Pattern.compile("build|[¼½¾]|half|quarter|started");

    @Override
    public void take(RowReader row) {
        Optional<String> label = row.label(Column.NEST);
        Optional<Nest> nest = label.flatMap(book::nest);
        if (label.isPresent() && nest.isEmpty()) {
            row.problem(Column.NEST, unknown(label.get()));
        }
        Optional<When.Read> when = row.neededDate();
        Optional<LocalTime> time = row.time(Column.TIME).or(() -> when.flatMap(When.Read::time));
        OptionalInt eggs = row.whole(Column.EGGS, true);
        OptionalInt young = row.whole(Column.YOUNG, true);
        OptionalInt adults = row.whole(Column.ADULTS, true);
        Optional<NestOutcome> outcome = row.word(Column.OUTCOME, Words.OUTCOMES);
        if (nest.isEmpty() || when.isEmpty() || !row.isReady()) {
            tally.leaveOut(row);
            return;
        }
        NestCheck made = new NestCheck(
                Keys.next(),
                nest.get().id(),
                when.get().date(),
                time,
                stage(row.text(Column.STAGE), eggs, young),
                row.text(Column.STAGE),
                eggs,
                young,
                adults,
                outcome,
                row.note(moreThan(row, Column.EGGS), moreThan(row, Column.YOUNG)));
        boolean known = book.checks(nest.get()).stream()
                .anyMatch(check -> Differences.between(check, made).isEmpty());
        if (known) {
            tally.settle(row, Outcome.DUPLICATE);
        } else {
            tally.add(made, row.number());
            book.know(made);
            tally.settle(row, Outcome.ADDED);
        }
    }

    private Message unknown(String label) {
        List<String> similar = book.similarNests(label);
        return similar.isEmpty()
                ? Message.of("import.nest.unknown")
                : Message.of("import.nest.unknown.similar", similar);
    }

    private static String moreThan(RowReader row, Column column) {
        String text = row.text(column);
        return text.endsWith("+") ? column.written() + ": " + text : "";
    }

    /** What was counted says more than the words. */
    private static NestStage stage(String text, OptionalInt eggs, OptionalInt young) {
        if (young.orElse(0) > 0) {
            return NestStage.YOUNG;
        }
        if (eggs.orElse(0) > 0) {
            return NestStage.EGGS;
        }
        String words = text.toLowerCase(Locale.ROOT);
        if (EMPTY.matcher(words).find()) {
            return NestStage.EMPTY;
        }
        if (YOUNG.matcher(words).find()) {
            return NestStage.YOUNG;
        }
        if (EGGS.matcher(words).find()) {
            return NestStage.EGGS;
        }
        if (BUILDING.matcher(words).find()) {
            return NestStage.BUILDING;
        }
        return COMPLETE.matcher(words).find() ? NestStage.COMPLETE : NestStage.UNKNOWN;
    }
}
