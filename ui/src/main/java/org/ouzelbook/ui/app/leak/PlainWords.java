package org.ouzelbook.ui.app.leak;

import java.io.IOException;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** A page or other marked-up text as people read it: every text and every attribute on a line of its own, letters for entities. */
final class PlainWords {
    private static final Pattern MARKED_UP = Pattern.compile("^\\s*(?:\uFEFF)?<[!?a-zA-Z]");
    private static final Pattern STYLE = Pattern.compile("(?is)<style[^>]*>.*?</style>");
    private static final Pattern TAG = Pattern.compile("<[^<>]*>");
    private static final Pattern ENTITY = Pattern.compile("&(?:#(\\d{1,7})|#x([0-9a-fA-F]{1,6})|([a-z]{2,6}));");

    private static final Map<String, String> NAMED =
            Map.of("amp", "&", "lt", "<", "gt", ">", "quot", "\"", "apos", "'", "nbsp", " ");

    private PlainWords() {}

    static boolean isMarkedUp(CharSequence text) {
        return MARKED_UP.matcher(text).find();
    }

    /** {@return the text with as many letters as before, or fewer, and every line where it was} */
    static CharSequence of(CharSequence text, Scratch scratch) throws IOException {
        if (!isMarkedUp(text)) {
            return text;
        }
        CharSequence bare = scratch.replaced(text, STYLE, style -> lines(style.group()));
        CharSequence open = scratch.replaced(
                bare,
                TAG,
                tag -> "\u001f"
                        + tag.group().substring(1, tag.group().length() - 1).replace('"', '\u001f')
                        + "\u001f");
        return scratch.replaced(open, ENTITY, PlainWords::letter);
    }

    private static String lines(String text) {
        return text.replaceAll("[^\\n]", "");
    }

    private static String letter(MatchResult entity) {
        if (entity.group(3) != null) {
            return NAMED.getOrDefault(entity.group(3), entity.group());
        }
        int code = entity.group(1) != null ? Integer.parseInt(entity.group(1)) : Integer.parseInt(entity.group(2), 16);
        return Character.isValidCodePoint(code) ? Character.toString(code) : entity.group();
    }
}
