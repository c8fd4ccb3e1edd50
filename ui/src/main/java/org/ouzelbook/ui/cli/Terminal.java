package org.ouzelbook.ui.cli;

import java.io.BufferedReader;
import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * Where a command reads and writes. Tests give their own.
 *
 * @param in what the person types
 * @param out answers
 * @param err problems and progress
 * @param outIsScreen whether answers go to a screen, not to a file or another program
 * @param errIsScreen whether progress would be seen by a person
 * @param colour whether answers may carry colour
 */
public record Terminal(
        BufferedReader in, PrintWriter out, PrintWriter err, boolean outIsScreen, boolean errIsScreen, boolean colour) {
    /** Name of the system property in which the launcher tells which of the streams 0, 1 and 2 are screens. */
    private static final String SCREENS = "ouzelbook.screens";

    /** {@return the terminal that the program was started from} */
    public static Terminal ofSystem() {
        String screens = System.getProperty(SCREENS, "");
        boolean outIsScreen = screens.contains("1");
        return new Terminal(
                new BufferedReader(new InputStreamReader(new FileInputStream(FileDescriptor.in), charset())),
                writer(FileDescriptor.out),
                writer(FileDescriptor.err),
                outIsScreen,
                screens.contains("2"),
                outIsScreen && colourWanted());
    }

    private static PrintWriter writer(FileDescriptor stream) {
        return new PrintWriter(new OutputStreamWriter(new FileOutputStream(stream), charset()));
    }

    /** UTF-8, save on a Windows console, which says what it uses. */
    private static Charset charset() {
        String console = System.getProperty("sun.stdout.encoding", "UTF-8");
        return Charset.isSupported(console) ? Charset.forName(console) : StandardCharsets.UTF_8;
    }

    /** Follows the convention of no-color.org, and leaves terminals alone that say they can show nothing. */
    private static boolean colourWanted() {
        String noColour = System.getenv("NO_COLOR");
        return (noColour == null || noColour.isEmpty()) && !"dumb".equals(System.getenv("TERM"));
    }

    /**
     * {@return the text in bold where colour is allowed, else as it is}
     *
     * @param text a text
     */
    String bold(String text) {
        return colour ? "\u001b[1m" + text + "\u001b[0m" : text;
    }

    /** Sends on everything that was printed so far. */
    public void flush() {
        out.flush();
        err.flush();
    }
}
