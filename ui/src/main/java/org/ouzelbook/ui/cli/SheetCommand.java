package org.ouzelbook.ui.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.report.FieldSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code sheet}: paper to write on along the water. */
@Command(name = "sheet")
final class SheetCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private WaterOptions question = new WaterOptions();

    @Option(
            names = {"-o", "--out"},
            paramLabel = "FILE",
            defaultValue = "field-sheet.pdf")
    private Path out = Path.of("field-sheet.pdf");

    @Option(names = "--replace")
    private boolean replace;

    SheetCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        if (!replace && Files.exists(out)) {
            throw new FileAlreadyExistsException(out.toString());
        }
        FieldSheet.of(question.water()).write(out);
        terminal.out().println(Texts.of("cli.sheet.written", out.toString()));
        return ExitCode.DONE;
    }
}
