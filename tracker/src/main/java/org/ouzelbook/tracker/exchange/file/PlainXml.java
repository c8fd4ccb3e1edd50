package org.ouzelbook.tracker.exchange.file;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import javax.xml.stream.util.StreamReaderDelegate;
import org.ouzelbook.tracker.domain.Message;

/**
 * Reads XML that stands for itself: a document type or an entity of its own is refused, so that nothing outside of the file is
 * ever fetched and nothing in it swells.
 */
public final class PlainXml extends StreamReaderDelegate {
    private static final XMLInputFactory FACTORY = factory();
    private static final int LONGEST_DECLARATION = 200;
    private static final Pattern SAYS = Pattern.compile("^<\\?xml[^>]*encoding\\s*=\\s*[\"']([^\"']*)[\"']");

    private PlainXml(XMLStreamReader reader) {
        super(reader);
    }

    private static XMLInputFactory factory() {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, true);
        return factory;
    }

    /**
     * {@return a reader that stands before the document}
     *
     * @param in the bytes; the caller closes them
     * @throws XMLStreamException if they are no XML
     */
    public static PlainXml of(InputStream in) throws XMLStreamException {
        InputStream start = in.markSupported() ? in : new BufferedInputStream(in);
        return new PlainXml(
                isUtf8(start)
                        ? FACTORY.createXMLStreamReader(
                                new InputStreamReader(start, StandardCharsets.UTF_8.newDecoder()))
                        : FACTORY.createXMLStreamReader(start));
    }

    /**
     * {@return whether the document is UTF-8, since it says so or says nothing; the mark at its start is then passed} The parser tells of
     * bytes that are none on the error stream, which our own decoder does not.
     */
    private static boolean isUtf8(InputStream in) throws XMLStreamException {
        try {
            in.mark(LONGEST_DECLARATION);
            byte[] bytes = in.readNBytes(LONGEST_DECLARATION);
            in.reset();
            if (Encoding.UTF_8_WITH_MARK.startsWithMark(bytes, bytes.length)) {
                in.skipNBytes(Encoding.UTF_8_WITH_MARK.mark().length);
                return true;
            }
            String start = new String(bytes, StandardCharsets.ISO_8859_1);
            Matcher says = SAYS.matcher(start);
            return start.startsWith("<")
                    && !start.startsWith("<\0")
                    && (!says.find() || says.group(1).equalsIgnoreCase("UTF-8"));
        } catch (IOException e) {
            throw new XMLStreamException(e);
        }
    }

    /**
     * Goes on to the next event.
     *
     * @throws Refused if it is a document type or an entity
     * @throws XMLStreamException if the XML is broken
     */
    @Override
    public int next() throws XMLStreamException {
        int event = super.next();
        if (event == XMLStreamConstants.DTD || event == XMLStreamConstants.ENTITY_REFERENCE) {
            throw new Refused(line());
        }
        return event;
    }

    /** {@return the line that it stands in, counted from 1} */
    public int line() {
        return getLocation().getLineNumber();
    }

    /**
     * {@return what an element says of itself; empty if it does not}
     *
     * @param attribute the name of an attribute, without its prefix
     */
    public Optional<String> attribute(String attribute) {
        for (int i = 0; i < getAttributeCount(); i++) {
            if (getAttributeLocalName(i).equals(attribute)) {
                return Optional.of(getAttributeValue(i));
            }
        }
        return Optional.empty();
    }

    /**
     * {@return the text within an element, whatever elements it holds; the reader then stands at its end}
     *
     * @throws XMLStreamException if the XML is broken
     */
    public String text() throws XMLStreamException {
        StringBuilder text = new StringBuilder();
        int depth = 1;
        while (depth > 0) {
            switch (next()) {
                case XMLStreamConstants.START_ELEMENT -> depth++;
                case XMLStreamConstants.END_ELEMENT -> depth--;
                case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA -> text.append(getText());
                default -> {
                    // comments and processing instructions say nothing
                }
            }
        }
        return text.toString();
    }

    /**
     * {@return why a file could not be read as XML, and where}
     *
     * @param failure what went wrong
     */
    public static UnreadableFile unreadable(XMLStreamException failure) {
        int line = failure instanceof Refused refused
                ? refused.line
                : failure.getLocation() == null ? 0 : failure.getLocation().getLineNumber();
        if (failure.getNestedException() instanceof CharacterCodingException) {
            return new UnreadableFile(Message.of("import.file.brokenLetters", line));
        }
        return new UnreadableFile(
                Message.of(failure instanceof Refused ? "import.file.doctype" : "import.file.brokenXml", line));
    }

    /** A document type or an entity. */
    public static final class Refused extends XMLStreamException {
        private static final long serialVersionUID = 1;
        private final int line;

        private Refused(int line) {
            super("A document type or entity in line " + line);
            this.line = line;
        }

        /** {@return the line where it stands} */
        public int line() {
            return line;
        }
    }
}
