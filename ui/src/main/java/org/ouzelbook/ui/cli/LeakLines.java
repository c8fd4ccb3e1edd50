package org.ouzelbook.ui.cli;

import java.util.List;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.leak.Leak;

/** Leaks as lines: file, part and line, and what is told there. */
final class LeakLines {
    private static final int SHOWN = 40;

    private LeakLines() {}

    static void print(List<Leak> leaks, Terminal terminal) {
        leaks.stream()
                .limit(SHOWN)
                .forEach(leak -> terminal.out().println("  " + leak.place() + ": " + Texts.of(leak.what())));
        if (leaks.size() > SHOWN) {
            terminal.out().println("  " + Texts.of("leak.more", leaks.size() - SHOWN));
        }
    }
}
