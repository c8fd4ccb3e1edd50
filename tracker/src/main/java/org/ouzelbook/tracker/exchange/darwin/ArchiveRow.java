package org.ouzelbook.tracker.exchange.darwin;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.exchange.export.Numbers;

/** One row of an archive that is being written: what each term says. */
final class ArchiveRow {
    private static final Pattern UNSEEN = Pattern.compile("[\\p{Cc}\\u2028\\u2029\\s]+");

    private final Map<String, String> values = new LinkedHashMap<>();
    private final boolean heard;

    private ArchiveRow(boolean heard) {
        this.heard = heard;
    }

    /** {@return a row that tells nothing yet} */
    static ArchiveRow blank() {
        return new ArchiveRow(true);
    }

    /** {@return a row that nobody asked for, and that stays blank} */
    static ArchiveRow unheard() {
        return new ArchiveRow(false);
    }

    /** {@return whether somebody asked for the row} */
    boolean isHeard() {
        return heard;
    }

    /** Tells a term; an empty value and a blank text tell nothing. */
    ArchiveRow with(String term, Object value) {
        if (!heard) {
            return this;
        }
        Object told = value instanceof Optional<?> optional ? optional.isPresent() ? optional.get() : "" : value;
        String text = plain(Numbers.text(told));
        if (!text.isEmpty()) {
            values.put(term, text);
        }
        return this;
    }

    /** {@return what a term says; blank if nothing} */
    String value(String term) {
        return values.getOrDefault(term, "");
    }

    /** {@return the terms that say something} */
    Set<String> terms() {
        return values.keySet();
    }

    /** A table without quotation marks has no place for tabs and line breaks, nor for other characters that nobody sees. */
    private static String plain(String text) {
        return isPlain(text) ? text : UNSEEN.matcher(text).replaceAll(" ").strip();
    }

    /** Whether it holds only letters and signs that are seen, and single spaces between them: nearly every text does. */
    private static boolean isPlain(String text) {
        boolean edge = true;
        for (int i = 0; i < text.length(); i++) {
            char sign = text.charAt(i);
            boolean seen = (sign > ' ' && sign < '\u007f') || (sign > '\u00a0' && sign < '\u1680');
            if (!seen && (sign != ' ' || edge)) {
                return false;
            }
            edge = sign == ' ';
        }
        return !edge || text.isEmpty();
    }
}
