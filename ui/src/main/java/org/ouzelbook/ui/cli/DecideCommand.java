package org.ouzelbook.ui.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.DecideTerritories;
import org.ouzelbook.ui.app.DecisionAnswer;
import org.ouzelbook.ui.app.DecisionLine;
import org.ouzelbook.ui.app.Scope;
import org.ouzelbook.ui.app.ShowRecords;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.WrongRequest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code decide}: makes, lists and removes the surveyor's decisions about territories. */
@Command(name = "decide")
final class DecideCommand implements Callable<Integer> {
    private static final String REMOVE = "remove";
    private static final Pattern NUMBER = Pattern.compile("[0-9]{1,9}");

    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "BOOK")
    private @Nullable Path book;

    @Parameters(index = "1..*", paramLabel = "DECISION")
    private List<String> words = new ArrayList<>();

    @Option(names = "--species", paramLabel = "NAME", converter = AnalysisOptions.SpeciesNamed.class)
    private Species species = Species.DIPPER;

    @Option(names = "--season", paramLabel = "YEAR")
    private @Nullable Integer season;

    @Option(names = "--river", paramLabel = "NAME")
    private @Nullable String river;

    @Option(names = "--by", paramLabel = "NAME")
    private String by = System.getProperty("user.name", "");

    @Option(names = "--json")
    private boolean json;

    DecideCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        Path path = Objects.requireNonNull(book);
        String line = String.join(" ", words).strip();
        if (words.isEmpty()) {
            RecordTable.DECISIONS.printOwned(
                    ShowRecords.in(path, ShowRecords.Wish.ALL, ShowRecords::decisions), terminal, json);
        } else if (line.toLowerCase(Locale.ROOT).startsWith(REMOVE)) {
            remove(path, line.substring(REMOVE.length()).strip());
        } else {
            make(path, DecisionLine.readAll(line));
        }
        return ExitCode.DONE;
    }

    /** Decisions of one line have one reason. */
    private void make(Path path, List<DecisionLine> written) {
        List<DecisionLine> lines = written;
        if (written.get(0).note().isEmpty()) {
            Optional<String> reason = reason();
            lines = written.stream().map(line -> line.because(reason)).toList();
        }
        Scope all = Scope.everything();
        Scope scope = new Scope(
                species,
                Optional.ofNullable(season),
                all.from(),
                all.to(),
                Optional.ofNullable(river),
                all.reach(),
                all.level());
        try (Book open = Book.open(path)) {
            LocalDate today = LocalDate.now(ZoneId.systemDefault());
            tell("decide.made", DecideTerritories.make(open, scope, lines, by, today));
        }
    }

    /** Asks a person for the reason; a script says it in the line or goes without. */
    private Optional<String> reason() {
        if (json || !terminal.errIsScreen()) {
            return Optional.empty();
        }
        terminal.err().print(Texts.of("decide.why") + " ");
        terminal.flush();
        try {
            return Optional.ofNullable(terminal.in().readLine())
                    .map(String::strip)
                    .filter(text -> !text.isEmpty());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void remove(Path path, String number) {
        if (!NUMBER.matcher(number).matches()) {
            throw new WrongRequest(Message.of("decide.numberNotUnderstood", number));
        }
        try (Book open = Book.open(path)) {
            tell("decide.removed", List.of(DecideTerritories.remove(open, Integer.parseInt(number), by)));
        }
    }

    private void tell(String key, List<DecideTerritories.Answer> answers) {
        if (json) {
            Json.print(answers.size() == 1 ? answers.get(0) : answers, terminal.out());
            return;
        }
        for (DecideTerritories.Answer answer : answers) {
            DecisionAnswer decision = answer.decision();
            Object[] facts = key.equals("decide.made")
                    ? new Object[] {decision.number(), decision.words()}
                    : new Object[] {decision.words()};
            terminal.out().println(Texts.of(key, facts));
        }
        answers.stream().map(DecideCommand::count).distinct().forEach(terminal.out()::println);
        terminal.out().println(Texts.of("decide.undo"));
    }

    private static String count(DecideTerritories.Answer answer) {
        return Texts.of(
                answer.countBefore() == answer.countNow() ? "decide.countSame" : "decide.count",
                answer.decision().river(),
                answer.decision().season(),
                answer.countBefore(),
                answer.countNow());
    }
}
