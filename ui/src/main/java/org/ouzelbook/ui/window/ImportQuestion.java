package org.ouzelbook.ui.window;

import java.time.DateTimeException;
import java.time.Year;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.exchange.ImportAnswers;
import org.ouzelbook.tracker.exchange.Problem;
import org.ouzelbook.tracker.exchange.TableKind;
import org.ouzelbook.tracker.exchange.cell.DateOrder;
import org.ouzelbook.tracker.exchange.cell.DecimalSign;
import org.ouzelbook.tracker.exchange.cell.SerialDates;
import org.ouzelbook.ui.app.ImportReport;
import org.ouzelbook.ui.app.Texts;

/**
 * A question that an import leaves open, and the answers that settle it for all its rows.
 *
 * @param words the question
 * @param rows which rows it is about
 * @param first the first of them
 * @param choices the answers to choose from
 * @param written what to write instead of choosing; empty if that is no way to answer
 */
record ImportQuestion(String words, String rows, Problem first, List<Choice> choices, Optional<Written> written) {
    private static final int ROWS_NAMED = 8;
    private static final double NEAR = 100;
    private static final double FAR = 250;

    ImportQuestion {
        choices = List.copyOf(choices);
    }

    /**
     * An answer to choose.
     *
     * @param words the answer
     * @param answer puts it among the answers
     */
    record Choice(String words, Function<ImportAnswers, ImportAnswers> answer) {}

    /**
     * An answer to write.
     *
     * @param prompt what to write
     * @param answer puts it among the answers; empty if it is not understood
     */
    record Written(String prompt, Function<String, Optional<Function<ImportAnswers, ImportAnswers>>> answer) {}

    /**
     * {@return the question that a reason asks}
     *
     * @param reason open rows of one reason, or a table that was not recognised
     * @param rivers the rivers of the book
     */
    static ImportQuestion of(ImportReport.Reason reason, List<River> rivers) {
        Problem first = reason.first().get(0);
        return new ImportQuestion(
                words(first.message()),
                rows(reason),
                first,
                choices(first.message(), rivers),
                written(first.message()));
    }

    /** {@return whether a reason is settled by an answer here} */
    static boolean isOne(ImportReport.Reason reason) {
        return !choices(reason.first().get(0).message(), List.of()).isEmpty();
    }

    /**
     * {@return the name of a file without its folders}
     *
     * @param file the file, as a problem tells it
     */
    static String nameOf(String file) {
        return file.substring(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
    }

    private static String words(Message message) {
        String key = "window.ask." + message.key();
        return Texts.keys().contains(key) ? Texts.of(key, message.facts().toArray()) : Texts.of(message);
    }

    private static String rows(ImportReport.Reason reason) {
        List<Long> named = reason.first().stream()
                .map(Problem::row)
                .filter(row -> row > 0)
                .limit(ROWS_NAMED)
                .toList();
        String file = nameOf(reason.first().get(0).file());
        return named.isEmpty()
                ? file
                : Texts.of(
                        "window.import.rows", file, reason.count(), Texts.word(named), reason.count() - named.size());
    }

    private static Choice choice(Object word, Function<ImportAnswers, ImportAnswers> answer) {
        return new Choice(Texts.word(word), answer);
    }

    private static List<Choice> choices(Message message, List<River> rivers) {
        return switch (message.key()) {
            case "import.ask.dateOrder" ->
                Stream.of(DateOrder.values())
                        .map(order -> choice(order, answers -> answers.withDateOrder(order)))
                        .toList();
            case "import.ask.serialDates" ->
                Stream.of(SerialDates.values())
                        .map(serials -> choice(serials, answers -> answers.withSerials(serials)))
                        .toList();
            case "import.ask.species" ->
                Species.all().stream()
                        .map(species -> choice(species, answers -> answers.withSpecies(species)))
                        .toList();
            case "import.ask.river" ->
                rivers.stream()
                        .map(river -> choice(river.name(), answers -> answers.withRiver(river.name())))
                        .toList();
            case "import.ask.zone" ->
                Stream.of(ZoneId.systemDefault(), ZoneId.of("Europe/London"), ZoneId.of("UTC"))
                        .distinct()
                        .map(zone -> choice(zone.getId(), answers -> answers.withZone(zone)))
                        .toList();
            case "import.ask.year" -> {
                int now = Year.now(ZoneId.systemDefault()).getValue();
                yield Stream.of(now, now - 1)
                        .map(year -> choice(Year.of(year), answers -> answers.withYear(Year.of(year))))
                        .toList();
            }
            case "import.ask.offRiver" ->
                Stream.of(NEAR, FAR)
                        .map(metres ->
                                choice(Texts.of("window.import.near", metres), answers -> answers.withOffRiver(metres)))
                        .toList();
            case "import.number.thousandsOrDecimals" ->
                Stream.of(DecimalSign.POINT, DecimalSign.COMMA)
                        .map(sign -> choice(sign, answers -> answers.withDecimals(sign)))
                        .toList();
            case "import.number.otherSign" ->
                List.of(choice(DecimalSign.EITHER, answers -> answers.withDecimals(DecimalSign.EITHER)));
            case "import.kind.doubt", "import.kind.none", "import.kind.nearest" ->
                Stream.of(TableKind.values())
                        .map(kind -> choice(kind, answers -> answers.withKind(kind)))
                        .toList();
            default ->
                RiverQuestion.of(message).choices().stream()
                        .map(one -> new Choice(
                                one.words(),
                                answers -> answers.withRivers(one.answer().apply(answers.rivers()))))
                        .toList();
        };
    }

    private static Optional<Written> written(Message message) {
        return switch (message.key()) {
            case "import.ask.year" ->
                Optional.of(new Written(Texts.of("window.import.otherYear"), ImportQuestion::year));
            case "import.ask.zone" ->
                Optional.of(new Written(Texts.of("window.import.otherZone"), ImportQuestion::zone));
            default -> Optional.empty();
        };
    }

    private static Optional<Function<ImportAnswers, ImportAnswers>> year(String text) {
        if (!text.strip().matches("(1[89]|20)[0-9]{2}")) {
            return Optional.empty();
        }
        Year year = Year.of(Integer.parseInt(text.strip()));
        return Optional.of(answers -> answers.withYear(year));
    }

    private static Optional<Function<ImportAnswers, ImportAnswers>> zone(String text) {
        try {
            ZoneId zone = ZoneId.of(text.strip());
            return Optional.of(answers -> answers.withZone(zone));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }
}
