package org.ouzelbook.ui.cli;

import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A command written out so that a person can copy it back into the shell that this program was started from. */
final class ShellWords {
    /** Name of the system property in which the launcher tells how it was called. */
    private static final String CALLED = "ouzelbook.called";

    private ShellWords() {}

    /**
     * {@return the words of a command of this program, ready to copy}
     *
     * @param words the command's name and what follows it
     */
    static String of(Object... words) {
        return Stream.concat(Stream.of(System.getProperty(CALLED, "ouzelbook")), Stream.of(words))
                .map(word -> quoted(word.toString()))
                .collect(Collectors.joining(" "));
    }

    /** In double quotes, which POSIX shells and Windows both understand, if the word would not stay one. */
    private static String quoted(String word) {
        return word.matches("[\\p{L}\\p{N}._/~:\\\\=+-]+") ? word : '"' + word + '"';
    }
}
