package org.ouzelbook.ui.cli;

import java.io.IOException;
import java.util.concurrent.Callable;
import org.ouzelbook.ui.report.FieldSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code sheet}: paper to write on along the water. */
@Command(name = "sheet")
final class SheetCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private FieldOptions field = new FieldOptions();

    SheetCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        return field.write("field-sheet.pdf", FieldSheet::of, "cli.sheet.written", terminal);
    }
}
