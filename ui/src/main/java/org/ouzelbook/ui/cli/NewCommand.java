package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.river.RiverAnswers;
import org.ouzelbook.tracker.river.RiverAnswers.Mouth;
import org.ouzelbook.tracker.river.UnderstoodRiver.MouthBy;
import org.ouzelbook.ui.app.NewBook;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.WrongRequest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes a new book of drawn rivers. */
@Command(name = "new")
final class NewCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "BOOK")
    private @Nullable Path book;

    @Option(names = "--river", paramLabel = "FILE", required = true, arity = "1..*")
    private List<Path> rivers = new ArrayList<>();

    @Option(names = "--mouth-at", paramLabel = "WHERE")
    private List<String> mouths = new ArrayList<>();

    @Option(names = "--joins", paramLabel = "RIVER=RIVER")
    private List<String> joins = new ArrayList<>();

    @Option(names = "--bridge-gaps", paramLabel = "METRES")
    private double bridgeGaps;

    @Option(names = "--leave-gaps")
    private boolean leaveGaps;

    @Option(names = "--json")
    private boolean json;

    NewCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (!(bridgeGaps >= 0)) {
            throw new WrongRequest(Message.of("new.bridgeGaps", bridgeGaps));
        }
        RiverAnswers answers = new RiverAnswers(mouths(), joins(), bridgeGaps, leaveGaps);
        NewBook.Answer answer =
                NewBook.make(Objects.requireNonNull(book), rivers, answers, System.getProperty("user.name", ""));
        if (json) {
            Json.print(answer, terminal.out());
        } else {
            print(answer);
        }
        return answer.book().isPresent() ? ExitCode.DONE : ExitCode.PROBLEMS;
    }

    private void print(NewBook.Answer answer) {
        answer.rivers().forEach(line -> print(line, answer.book().isPresent()));
        answer.warnings().forEach(warning -> terminal.out().println(Texts.of(warning)));
        answer.questions().forEach(question -> terminal.err().println(Texts.of(question)));
        if (answer.book().isPresent()) {
            terminal.out().println(Texts.of("new.made", answer.book().get()));
        } else {
            terminal.err().println(Texts.of("new.notMade"));
        }
    }

    private void print(NewBook.DrawnLine line, boolean made) {
        terminal.out()
                .println(terminal.bold(
                        Texts.of("new.river", line.river(), line.lengthKm(), line.fromKm(), line.toKm())));
        detail("new.mouth", degrees(line.lowerEnd()), line.mouthBy());
        if (line.mouthBy() == MouthBy.DRAWN_DOWNSTREAM) {
            detail("new.turn", line.river(), degrees(line.upperEnd()));
        }
        line.joins().ifPresent(joins -> detail("new.joins", joins.river(), joins.km(), joins.metresAway()));
        if (line.pieces() > 1) {
            detail("new.pieces", line.pieces(), line.turned());
        }
        if (made) {
            line.gaps().forEach(gap -> detail("new.gap", gap.km(), gap.metres()));
        }
        if (line.leftOutKm() > 0) {
            detail("new.leftOut", line.leftOutKm());
        }
    }

    private void detail(String key, Object... facts) {
        terminal.out().println("  " + Texts.of(key, facts));
    }

    private static String degrees(GeoPoint point) {
        return String.format(Locale.ROOT, "%.5f, %.5f", point.latitude(), point.longitude());
    }

    /** {@code first}, {@code last} or {@code 52.104,-3.412}, for the main river or, after {@code NAME=}, for one of that name. */
    private Map<String, Mouth> mouths() {
        Map<String, Mouth> told = new HashMap<>();
        for (String text : mouths) {
            int sign = text.lastIndexOf('=');
            String name = sign < 0 ? "" : text.substring(0, sign).strip();
            told.put(name, mouth(text.substring(sign + 1).strip(), text));
        }
        return told;
    }

    private static Mouth mouth(String where, String whole) {
        if (where.equalsIgnoreCase("first")) {
            return new Mouth.First();
        }
        if (where.equalsIgnoreCase("last")) {
            return new Mouth.Last();
        }
        try {
            String[] numbers = where.split("\\s*,\\s*", -1);
            if (numbers.length == 2) {
                return new Mouth.Near(new GeoPoint(Double.parseDouble(numbers[0]), Double.parseDouble(numbers[1])));
            }
        } catch (IllegalArgumentException e) {
            throw new WrongRequest(Message.of("new.mouthAt", whole));
        }
        throw new WrongRequest(Message.of("new.mouthAt", whole));
    }

    private Map<String, Optional<String>> joins() {
        Map<String, Optional<String>> told = new HashMap<>();
        for (String text : joins) {
            int sign = text.indexOf('=');
            if (sign <= 0 || sign == text.length() - 1) {
                throw new WrongRequest(Message.of("new.joinsForm", text));
            }
            String receiving = text.substring(sign + 1).strip();
            told.put(
                    text.substring(0, sign).strip(),
                    receiving.equalsIgnoreCase("none") ? Optional.empty() : Optional.of(receiving));
        }
        return told;
    }
}
