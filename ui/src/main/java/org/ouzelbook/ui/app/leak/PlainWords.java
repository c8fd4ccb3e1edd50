package org.ouzelbook.ui.app.leak;

import java.io.IOException;
import java.util.regex.Pattern;

/** A page or other marked-up text as people read it: every text and every attribute on a line of its own, letters for entities. */
final class PlainWords {
    private static final Pattern MARKED_UP = Pattern.compile("^\\s*(?:\uFEFF)?<[!?a-zA-Z]");
    private static final Pattern STYLE = Pattern.compile("(?is)<style[^>]*>.*?</style>");
    private static final Pattern TAG = Pattern.compile("<[^<>]*>");

    /** Tags that part no words: those of a line of text in HTML, SVG, and the documents of word processors. */
    private static final Pattern WITHIN_A_LINE = Pattern.compile(
            "(?i)</?(?:a|abbr|b|big|cite|code|em|font|i|mark|s|small|span|strong|sub|sup|tspan|tt|u|text:span|text:a|w:t|w:r|w:rpr|w:b|w:i|w:u"
                    + "|w:lang|w:prooferr|w:rfonts|w:sz|w:szcs|w:color|w:hyperlink|w:rstyle|w:noproof|a:t|a:r|a:rpr)(?:\\s[^<>]*)?/?>");

    private PlainWords() {}

    static boolean isMarkedUp(CharSequence text) {
        return MARKED_UP.matcher(text).find();
    }

    /** {@return the text with every line where it was} */
    static CharSequence of(CharSequence text, Scratch scratch) throws IOException {
        if (!isMarkedUp(text)) {
            return Spelling.withoutEntities(text, scratch);
        }
        CharSequence bare = scratch.replaced(text, STYLE, style -> lines(style.group()));
        CharSequence open = scratch.replaced(
                bare,
                TAG,
                tag -> "\u001f"
                        + tag.group().substring(1, tag.group().length() - 1).replace('"', '\u001f')
                        + "\u001f");
        return Spelling.withoutEntities(open, scratch);
    }

    /**
     * {@return what is read of a marked-up text in which tags stand within lines, with those lines whole and without attributes; blank if
     * there are no such tags}
     */
    static CharSequence asRead(CharSequence text, Scratch scratch) throws IOException {
        if (!isMarkedUp(text) || !WITHIN_A_LINE.matcher(text).find()) {
            return "";
        }
        CharSequence bare = scratch.replaced(text, STYLE, style -> lines(style.group()));
        CharSequence whole = scratch.replaced(bare, WITHIN_A_LINE, tag -> lines(tag.group()));
        CharSequence parted = scratch.replaced(whole, TAG, tag -> "\u001f" + lines(tag.group()));
        return Spelling.withoutEntities(parted, scratch);
    }

    private static String lines(String text) {
        return text.indexOf('\n') < 0 ? "" : text.replaceAll("[^\\n]", "");
    }
}
