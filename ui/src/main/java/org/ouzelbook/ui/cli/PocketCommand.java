package org.ouzelbook.ui.cli;

import java.io.IOException;
import java.util.concurrent.Callable;
import org.ouzelbook.ui.report.PocketPage;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code pocket}: the notebook for a phone. */
@Command(name = "pocket")
final class PocketCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private FieldOptions field = new FieldOptions();

    PocketCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        return field.write("pocket.html", PocketPage::of, "cli.pocket.written", terminal);
    }
}
