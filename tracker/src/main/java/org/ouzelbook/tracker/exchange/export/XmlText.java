package org.ouzelbook.tracker.exchange.export;

import java.io.IOException;
import java.io.Writer;
import java.util.ArrayDeque;
import java.util.Deque;

/** An XML document that is being written: texts are escaped, and characters that XML 1.0 cannot hold are replaced. */
public final class XmlText {
    private final StringBuilder xml = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    private final Deque<String> open = new ArrayDeque<>();

    /** Begins a document. */
    public XmlText() {}

    /**
     * Opens an element.
     *
     * @param name its name
     * @param attributes names and values of its attributes by turns
     * @return this
     */
    public XmlText open(String name, Object... attributes) {
        tag(name, attributes).append('>');
        open.push(name);
        return this;
    }

    /**
     * Writes an element without content.
     *
     * @param name its name
     * @param attributes names and values of its attributes by turns
     * @return this
     */
    public XmlText empty(String name, Object... attributes) {
        tag(name, attributes).append("/>\n");
        return this;
    }

    /**
     * Writes an element that holds a text, unless the text is blank.
     *
     * @param name its name
     * @param text the text
     * @param attributes names and values of its attributes by turns
     * @return this
     */
    public XmlText element(String name, String text, Object... attributes) {
        if (!text.isBlank()) {
            tag(name, attributes).append('>');
            escape(text);
            xml.append("</").append(name).append(">\n");
        }
        return this;
    }

    private StringBuilder tag(String name, Object... attributes) {
        xml.append('<').append(name);
        for (int i = 0; i < attributes.length; i += 2) {
            xml.append(' ').append(attributes[i]).append("=\"");
            escape(Numbers.text(attributes[i + 1]));
            xml.append('"');
        }
        return xml;
    }

    private void escape(String text) {
        text.codePoints().forEach(point -> {
            switch (point) {
                case '&' -> xml.append("&amp;");
                case '<' -> xml.append("&lt;");
                case '>' -> xml.append("&gt;");
                case '"' -> xml.append("&quot;");
                default -> xml.appendCodePoint(isAllowed(point) ? point : 0xFFFD);
            }
        });
    }

    /** Source: Extensible Markup Language 1.0 (5th edition, 2008), 2.2, characters. */
    private static boolean isAllowed(int point) {
        return point == '\t'
                || point == '\n'
                || point == '\r'
                || (point >= 0x20 && point <= 0xD7FF)
                || (point >= 0xE000 && point <= 0xFFFD)
                || point >= 0x10000;
    }

    /**
     * Closes the element that was opened last.
     *
     * @return this
     */
    public XmlText close() {
        xml.append("</").append(open.pop()).append(">\n");
        return this;
    }

    /**
     * Hands on what was written since the last time, so that a long document is never held whole.
     *
     * @param out where to
     * @return this
     * @throws IOException if it cannot be written
     */
    public XmlText drainTo(Writer out) throws IOException {
        out.append(xml);
        xml.setLength(0);
        return this;
    }

    /**
     * Closes all that is open and hands on the rest of the document.
     *
     * @param out where to
     * @throws IOException if it cannot be written
     */
    public void end(Writer out) throws IOException {
        out.write(end());
    }

    /**
     * Closes all that is open.
     *
     * @return the document, or what was not handed on of it
     */
    public String end() {
        while (!open.isEmpty()) {
            close();
        }
        return xml.toString();
    }
}
