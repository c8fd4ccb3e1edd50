package org.ouzelbook.ui.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.report.PocketPage;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code pocket}: the notebook for a phone. */
@Command(name = "pocket")
final class PocketCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private WaterOptions question = new WaterOptions();

    @Option(
            names = {"-o", "--out"},
            paramLabel = "FILE",
            defaultValue = "pocket.html")
    private Path out = Path.of("pocket.html");

    @Option(names = "--replace")
    private boolean replace;

    PocketCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        if (!replace && Files.exists(out)) {
            throw new FileAlreadyExistsException(out.toString());
        }
        Files.writeString(out, PocketPage.of(question.water()).html());
        terminal.out().println(Texts.of("cli.pocket.written", out.toString()));
        return ExitCode.DONE;
    }
}
