package org.ouzelbook.tracker.exchange;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ouzelbook.tracker.domain.Keys;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.exchange.cell.When;

/** Takes kick samples: the rows of one sample are its sheet, and go in together or not at all. */
final class KickSampleRows implements KindRows {
    private final BookIndex book;
    private final TableTally tally;
    private final Map<String, List<Line>> sheets = new LinkedHashMap<>();

    /** One row with the sample that it would make alone. */
    private record Line(RowReader row, Optional<KickSample> sample) {}

    KickSampleRows(BookIndex book, TableTally tally) {
        this.book = book;
        this.tally = tally;
    }

    @Override
    public void take(RowReader row) {
        Optional<String> label = row.label(Column.SAMPLE);
        Optional<When.Read> when = row.neededDate();
        Optional<Place> place = RowPlace.of(row);
        OptionalDouble minutes = row.number(Column.MINUTES);
        if (minutes.orElse(1) <= 0) {
            row.problem(Column.MINUTES, Message.of("import.sample.minutes"));
        }
        Optional<String> taxon = row.label(Column.TAXON);
        Optional<String> abundance = abundance(row);
        Optional<KickSample> sample = label.isEmpty() || when.isEmpty() || place.isEmpty()
                ? Optional.empty()
                : Optional.of(new KickSample(
                        Keys.next(),
                        label.get(),
                        when.get().date(),
                        place.get(),
                        minutes,
                        row.text(Column.METHOD),
                        row.text(Column.SAMPLER),
                        row.note(),
                        List.of(new KickSample.Taxon(taxon.orElse(""), abundance.orElse("")))));
        String key = label.map(BookIndex::key).orElse("");
        sheets.computeIfAbsent(key, unused -> new ArrayList<>()).add(new Line(row, sample));
    }

    private static Optional<String> abundance(RowReader row) {
        Optional<String> text = row.label(Column.ABUNDANCE);
        if (text.isPresent() && !text.get().matches("[0-9]{1,7}|[A-Da-d]")) {
            row.problem(Column.ABUNDANCE, Message.of("import.sample.abundance"));
        }
        return text;
    }

    @Override
    public void finish() {
        sheets.values().forEach(this::settle);
    }

    private void settle(List<Line> sheet) {
        Line first = sheet.get(0);
        for (Line line : sheet) {
            if (first.sample.isPresent() && line.sample.isPresent()) {
                refuseOtherDayOrPlace(first, line);
            }
        }
        List<Line> bad = sheet.stream()
                .filter(line -> !line.row.isReady() || line.sample.isEmpty())
                .toList();
        if (!bad.isEmpty()) {
            for (Line line : sheet) {
                if (line.row.isReady()) {
                    line.row.problem(
                            Column.SAMPLE,
                            Message.of("import.sample.heldBack", bad.get(0).row.number()));
                }
                tally.leaveOut(line.row);
            }
            return;
        }
        KickSample made = whole(sheet);
        Optional<KickSample> known = book.edit().kickSample(made.label());
        List<String> differences =
                known.map(sample -> Differences.between(sample, made)).orElse(List.of());
        if (!differences.isEmpty()) {
            sheet.forEach(line -> {
                line.row.problem(Column.SAMPLE, Message.of("import.label.other", differences));
                tally.leaveOut(line.row);
            });
            return;
        }
        if (known.isEmpty()) {
            tally.add(made, first.row.number());
        }
        sheet.forEach(line -> tally.settle(line.row, known.isEmpty() ? Outcome.ADDED : Outcome.DUPLICATE));
    }

    private static void refuseOtherDayOrPlace(Line first, Line line) {
        KickSample one = first.sample.orElseThrow();
        KickSample other = line.sample.orElseThrow();
        if (!one.date().equals(other.date())) {
            line.row.problem(Column.DATE, Message.of("import.sample.otherDay", one.date(), first.row.number()));
        }
        boolean samePlace = one.place().riverId().equals(other.place().riverId())
                && one.place().chainage().distanceTo(other.place().chainage()) < 1;
        if (!samePlace) {
            line.row.problem(
                    Column.SAMPLE,
                    Message.of("import.sample.otherPlace", one.place().chainage(), first.row.number()));
        }
    }

    private static KickSample whole(List<Line> sheet) {
        KickSample first = sheet.get(0).sample.orElseThrow();
        List<KickSample.Taxon> taxa = sheet.stream()
                .flatMap(line -> line.sample.orElseThrow().taxa().stream())
                .distinct()
                .toList();
        return new KickSample(
                first.id(),
                first.label(),
                first.date(),
                first.place(),
                first.minutes(),
                first.method(),
                first.sampler(),
                first.note(),
                taxa);
    }
}
