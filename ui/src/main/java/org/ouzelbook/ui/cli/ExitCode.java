package org.ouzelbook.ui.cli;

/** What a command says of itself to the script that called it. */
final class ExitCode {
    /** Done. */
    static final int DONE = 0;
    /** The data had problems. */
    static final int PROBLEMS = 1;
    /** Wrong usage. */
    static final int WRONG_USAGE = 2;

    private ExitCode() {}
}
