package org.ouzelbook.ui.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.MapAnswer;
import org.ouzelbook.ui.app.MapSeason;
import org.ouzelbook.ui.app.Scope;
import org.ouzelbook.ui.app.SealSeason;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.WrongRequest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code map}: how many territories in a season, where, and why. */
@Command(name = "map")
final class MapCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private AnalysisOptions question = new AnalysisOptions();

    @Mixin
    private RuleOptions rules = new RuleOptions();

    @Option(names = "--why", paramLabel = "TERRITORY")
    private @Nullable String why;

    MapCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        MapAnswer answer;
        try (Book book = Book.open(question.book());
                ProgressLine progress = new ProgressLine(terminal, Texts.of("cli.map.fitting"))) {
            answer = warned(book, question.scope(), MapSeason.of(book, question.scope(), rules::change, progress));
        }
        if (question.json()) {
            Json.print(answer, terminal.out());
        } else if (why != null) {
            explain(answer, why);
        } else {
            new MapPage(terminal, question.book()).print(answer);
        }
        return ExitCode.DONE;
    }

    /** Tells beside the answer that it is not the one that was sealed. */
    private static MapAnswer warned(Book book, Scope scope, MapAnswer answer) {
        List<Message> warnings = new ArrayList<>(answer.warnings());
        warnings.addAll(SealSeason.warnings(book, scope, answer));
        return answer.withWarnings(warnings);
    }

    private void explain(MapAnswer answer, String letter) {
        boolean found = false;
        for (MapAnswer.OnRiver river : answer.rivers()) {
            Optional<MapAnswer.Cluster> asked = river.territories().stream()
                    .filter(territory -> territory.id().equalsIgnoreCase(letter.strip()))
                    .findFirst();
            if (asked.isPresent()) {
                found = true;
                new MapPage(terminal, question.book()).explain(answer, river, asked.get());
            }
        }
        if (!found) {
            List<String> letters = answer.rivers().stream()
                    .flatMap(river -> river.territories().stream())
                    .map(MapAnswer.Cluster::id)
                    .distinct()
                    .toList();
            throw new WrongRequest(Message.of("cli.map.noTerritory", letter, answer.season() + "", letters));
        }
    }
}
