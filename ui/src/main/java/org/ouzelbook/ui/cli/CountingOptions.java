package org.ouzelbook.ui.cli;

import org.ouzelbook.ui.app.Counting;
import picocli.CommandLine.Option;

/** How territories are counted, for every command that tells a density or a trend. */
final class CountingOptions {
    @Option(names = "--by-rule")
    private boolean byRule;

    /** {@return how} */
    Counting counting() {
        return byRule ? Counting.BY_RULE : Counting.BY_MODEL;
    }
}
