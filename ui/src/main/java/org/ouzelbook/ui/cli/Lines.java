package org.ouzelbook.ui.cli;

/** Breaks a long paragraph into lines that are read easily. */
final class Lines {
    private static final int WIDTH = 100;

    private Lines() {}

    /**
     * {@return the paragraph, broken at blanks; a word longer than a line stays whole}
     *
     * @param paragraph words with blanks between; those before the first word are kept
     * @param furtherIn how many blanks stand before every line but the first
     */
    static String of(String paragraph, int furtherIn) {
        StringBuilder lines = new StringBuilder();
        int column = 0;
        int from = 0;
        while (from < paragraph.length()) {
            int blank = paragraph.indexOf(' ', from);
            int to = blank < 0 ? paragraph.length() : blank;
            String word = paragraph.substring(from, to);
            if (column > furtherIn && column + word.length() > WIDTH) {
                lines.setLength(lines.length() - 1);
                lines.append(System.lineSeparator()).append(" ".repeat(furtherIn));
                column = furtherIn;
            }
            lines.append(word).append(blank < 0 ? "" : " ");
            column += word.length() + 1;
            from = to + 1;
        }
        return lines.toString();
    }
}
