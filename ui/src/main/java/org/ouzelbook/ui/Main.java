package org.ouzelbook.ui;

import org.ouzelbook.ui.cli.Ouzelbook;
import org.ouzelbook.ui.cli.Terminal;

/** Runs one command and ends with its exit code. Knows no JavaFX, so that it runs where there is none. */
public final class Main {
    private Main() {}

    /**
     * Runs the program.
     *
     * @param arguments the command and what follows it
     */
    public static void main(String[] arguments) {
        Terminal terminal = Terminal.ofSystem();
        int exitCode = Ouzelbook.run(terminal, arguments);
        terminal.flush();
        System.exit(exitCode);
    }
}
