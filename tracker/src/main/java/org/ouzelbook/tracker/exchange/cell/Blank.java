package org.ouzelbook.tracker.exchange.cell;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/** The ways of writing nothing: blank is unknown, which is not the same as none. */
public final class Blank {
    private static final Pattern ODD_SPACES = Pattern.compile("[\\u00a0\\u1680\\u2000-\\u200a\\u202f\\u205f\\u3000]");
    private static final Pattern INVISIBLE = Pattern.compile("[\\u200b-\\u200f\\u2060\\ufeff\\u00ad]");
    private static final Set<String> UNKNOWN =
            Set.of("", "?", "-", "–", "—", "n/a", "na", "n.a.", "unknown", "not known", "not recorded", "nr", "null");
    private static final Set<String> NONE =
            Set.of("0", "none", "nil", "-", "–", "—", "zero", "no", "no birds", "absent");

    private Blank() {}

    /**
     * {@return the text with every kind of space made plain and invisible characters taken out, stripped}
     *
     * @param text any text
     */
    public static String plainSpaces(String text) {
        if (isPlain(text)) {
            return text.strip();
        }
        String spaced = ODD_SPACES.matcher(text).replaceAll(" ");
        return INVISIBLE.matcher(spaced).replaceAll("").replace('\0', ' ').strip();
    }

    private static boolean isPlain(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) >= 0x80 || text.charAt(i) == 0) {
                return false;
            }
        }
        return true;
    }

    /**
     * {@return whether a cell says that something is unknown}
     *
     * @param text a cell, stripped
     */
    public static boolean isUnknown(String text) {
        return text.isEmpty() || (text.length() <= 12 && UNKNOWN.contains(text.toLowerCase(Locale.ROOT)));
    }

    /**
     * {@return whether a cell of a count says that none were seen: 0, none, nil or a dash}
     *
     * @param text a cell of a count, stripped
     */
    public static boolean isNone(String text) {
        return text.length() <= 12 && NONE.contains(text.toLowerCase(Locale.ROOT));
    }
}
