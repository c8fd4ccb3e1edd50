package org.ouzelbook.ui.cli;

import java.io.BufferedReader;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;

/**
 * One command run inside a test, as from a terminal.
 *
 * @param exitCode what it ended with
 * @param out what it answered
 * @param err what it complained of
 */
public record CommandRun(int exitCode, String out, String err) {
    /**
     * {@return the finished run of a command}
     *
     * @param arguments the command and what follows it; a path may be given as it is
     */
    public static CommandRun of(Object... arguments) {
        return typing("", arguments);
    }

    /**
     * {@return the finished run of a command that a person answered}
     *
     * @param typed what the person typed
     * @param arguments the command and what follows it
     */
    public static CommandRun typing(String typed, Object... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        Terminal terminal = new Terminal(
                new BufferedReader(new StringReader(typed)),
                new PrintWriter(out),
                new PrintWriter(err),
                false,
                false,
                false);
        String[] words = new String[arguments.length];
        for (int i = 0; i < arguments.length; i++) {
            words[i] = arguments[i].toString();
        }
        int exitCode = Ouzelbook.run(terminal, words);
        terminal.flush();
        return new CommandRun(exitCode, out.toString(), err.toString());
    }
}
