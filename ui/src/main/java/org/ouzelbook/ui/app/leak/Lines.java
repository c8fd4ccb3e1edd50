package org.ouzelbook.ui.app.leak;

/** Tells places in a text by their line. Places asked for in rising order cost one walk through the text together. */
final class Lines {
    private final CharSequence text;
    private int counted;
    private int line = 1;

    Lines(CharSequence text) {
        this.text = text;
    }

    /** {@return the line of a place, from 1; of one behind the end, the last} */
    int of(int at) {
        if (at < counted) {
            counted = 0;
            line = 1;
        }
        for (int end = Math.min(at, text.length()); counted < end; counted++) {
            if (text.charAt(counted) == '\n') {
                line++;
            }
        }
        return line;
    }
}
