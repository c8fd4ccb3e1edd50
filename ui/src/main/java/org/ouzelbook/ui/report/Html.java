package org.ouzelbook.ui.report;

import java.util.List;

/** Writes HTML that is also well-formed XML; every text is escaped, so that no name or note can become markup. */
final class Html {
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

    /** Text; a per cent sign never begins a line. */
    Html text(String text) {
        html.append(escaped(text.replace(" %", "\u00a0%")));
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
