package org.ouzelbook.ui.report;

import java.util.List;
import java.util.regex.Pattern;

/** Writes HTML that is also well-formed XML; every text is escaped, so that no name or note can become markup. */
final class Html {
    /** Words in scripts that run from the right; the isolates of the Unicode Bidirectional Algorithm (UAX #9, 2.4) go round them. */
    private static final Pattern FROM_THE_RIGHT = Pattern.compile(
            "[\\u0590-\\u08FF\\uFB1D-\\uFDFF\\uFE70-\\uFEFC](?:[^A-Za-z,.:;()\\n]*[\\u0590-\\u08FF\\uFB1D-\\uFDFF\\uFE70-\\uFEFC])?");

    private final StringBuilder html = new StringBuilder();

    /** Opens an element; each must be closed. */
    Html open(String element, String... attributes) {
        start(element, attributes);
        html.append('>');
        return this;
    }

    Html close(String element) {
        html.append("</").append(element).append(">\n");
        return this;
    }

    /** An element that holds nothing but text. */
    Html element(String element, String text, String... attributes) {
        return open(element, attributes).text(text).close(element);
    }

    /** An element that never holds anything, as {@code meta} or {@code input}. */
    Html empty(String element, String... attributes) {
        start(element, attributes);
        html.append("/>\n");
        return this;
    }

    private void start(String element, String... attributes) {
        html.append('<').append(element);
        for (int i = 0; i < attributes.length; i += 2) {
            html.append(' ')
                    .append(attributes[i])
                    .append("=\"")
                    .append(escaped(attributes[i + 1]))
                    .append('"');
        }
    }

    /** Text; a per cent sign never begins a line, and a name that is written from the right leaves the words beside it where they are. */
    Html text(String text) {
        html.append(
                escaped(FROM_THE_RIGHT.matcher(text.replace(" %", "\u00a0%")).replaceAll("\u2068$0\u2069")));
        return this;
    }

    /** Markup that is known to be safe: our own drawings and style. */
    Html markup(String markup) {
        html.append(markup);
        return this;
    }

    /** A list with a dot before each line; nothing where there are no lines. */
    Html list(List<String> lines) {
        if (lines.isEmpty()) {
            return this;
        }
        open("ul");
        lines.forEach(line -> element("li", line));
        return close("ul");
    }

    static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    @Override
    public String toString() {
        return html.toString();
    }
}
