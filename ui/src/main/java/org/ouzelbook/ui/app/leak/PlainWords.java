package org.ouzelbook.ui.app.leak;

import java.util.Map;
import java.util.regex.Matcher;
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

    static boolean isMarkedUp(String text) {
        return MARKED_UP.matcher(text).find();
    }

    /** {@return the text with as many letters as before, or fewer, and every line where it was} */
    static String of(String text) {
        if (!isMarkedUp(text)) {
            return text;
        }
        String bare = STYLE.matcher(text).replaceAll(match -> lines(match.group()));
        String open = TAG.matcher(bare)
                .replaceAll(match -> Matcher.quoteReplacement("\u001f"
                        + match.group().substring(1, match.group().length() - 1).replace('"', '\u001f') + "\u001f"));
        return entities(open);
    }

    private static String lines(String text) {
        return text.replaceAll("[^\\n]", "");
    }

    private static String entities(String text) {
        return ENTITY.matcher(text).replaceAll(match -> {
            if (match.group(3) != null) {
                return Matcher.quoteReplacement(NAMED.getOrDefault(match.group(3), match.group()));
            }
            int code = match.group(1) != null ? Integer.parseInt(match.group(1)) : Integer.parseInt(match.group(2), 16);
            return Character.isValidCodePoint(code)
                    ? Matcher.quoteReplacement(Character.toString(code))
                    : Matcher.quoteReplacement(match.group());
        });
    }
}
