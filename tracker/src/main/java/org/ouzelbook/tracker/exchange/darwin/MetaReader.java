package org.ouzelbook.tracker.exchange.darwin;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.exchange.file.FileBytes;
import org.ouzelbook.tracker.exchange.file.FileSource;
import org.ouzelbook.tracker.exchange.file.PlainXml;
import org.ouzelbook.tracker.exchange.file.UnreadableFile;

/**
 * Reads meta.xml.
 *
 * <p>Source: Darwin Core text guide, TDWG: what is not said is a comma, a quotation mark, a line feed, UTF-8 and no header.
 */
final class MetaReader {
    private static final int MOST_COLUMNS = 10_000;

    private final Function<String, Optional<FileSource>> siblings;
    private final List<ArchiveFile> files = new ArrayList<>();
    private boolean hasCore;

    private MetaReader(Function<String, Optional<FileSource>> siblings) {
        this.siblings = siblings;
    }

    /**
     * {@return the files that a meta.xml describes, the core first}
     *
     * @param meta the meta.xml
     * @param siblings the files beside it, by name
     * @throws UnreadableFile if it is broken, or describes what cannot be read
     * @throws IOException if it cannot be read
     */
    static List<ArchiveFile> read(FileSource meta, Function<String, Optional<FileSource>> siblings) throws IOException {
        MetaReader reader = new MetaReader(siblings);
        try (InputStream in = meta.open()) {
            reader.read(PlainXml.of(in));
        } catch (XMLStreamException e) {
            throw PlainXml.unreadable(e);
        }
        if (!reader.hasCore) {
            throw new UnreadableFile(Message.of("import.darwin.noCore"));
        }
        return List.copyOf(reader.files);
    }

    private void read(PlainXml xml) throws XMLStreamException, IOException {
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT
                    && (xml.getLocalName().equals("core") || xml.getLocalName().equals("extension"))) {
                file(xml);
            }
        }
    }

    private void file(PlainXml xml) throws XMLStreamException, IOException {
        String element = xml.getLocalName();
        hasCore |= element.equals("core");
        String rowType = rowType(xml.attribute("rowType").orElse(""));
        char separator = separator(xml.attribute("fieldsTerminatedBy").orElse(","));
        Optional<Character> quote = quote(xml.attribute("fieldsEnclosedBy").orElse("\""), separator);
        int headerRows = number(xml.attribute("ignoreHeaderLines").orElse("0"));
        List<String> locations = new ArrayList<>();
        Map<String, Integer> columns = new HashMap<>();
        Map<String, String> constants = new HashMap<>();
        int id = -1;
        while (!(xml.next() == XMLStreamConstants.END_ELEMENT
                && xml.getLocalName().equals(element))) {
            if (xml.isStartElement()) {
                switch (xml.getLocalName()) {
                    case "location" -> locations.add(xml.text().strip());
                    case "id", "coreid" -> id = number(xml.attribute("index").orElse("0"));
                    case "field" -> field(xml, columns, constants);
                    default -> {
                        // nothing else describes a file
                    }
                }
            }
        }
        for (String location : locations) {
            FileSource source = siblings.apply(location)
                    .orElseThrow(() -> new UnreadableFile(Message.of("import.darwin.noFile", location)));
            files.add(new ArchiveFile(
                    source,
                    rowType,
                    FileBytes.of(source).encoding(),
                    separator,
                    quote,
                    headerRows,
                    id,
                    columns,
                    constants));
        }
    }

    private static void field(PlainXml xml, Map<String, Integer> columns, Map<String, String> constants)
            throws UnreadableFile {
        String term = bare(xml.attribute("term").orElse(""));
        Optional<String> index = xml.attribute("index");
        if (index.isPresent()) {
            columns.put(term, number(index.get()));
        }
        xml.attribute("default").ifPresent(constant -> constants.put(term, constant));
    }

    static String rowType(String address) {
        return (address.contains("/eco/") ? "eco" : "") + bare(address);
    }

    /** {@return the last part of a term's address or prefixed name} */
    static String bare(String term) {
        String plain = term.strip();
        return plain.substring(
                Math.max(Math.max(plain.lastIndexOf('/'), plain.lastIndexOf('#')), plain.lastIndexOf(':')) + 1);
    }

    private static char separator(String written) throws UnreadableFile {
        String plain = written.replace("\\t", "\t");
        if (plain.length() != 1 || plain.matches("[\\r\\n]")) {
            throw new UnreadableFile(Message.of("import.darwin.separator", written));
        }
        return plain.charAt(0);
    }

    private static Optional<Character> quote(String written, char separator) throws UnreadableFile {
        if (written.isEmpty()) {
            return Optional.empty();
        }
        if (written.length() != 1 || written.charAt(0) == separator || written.matches("[\\r\\n]")) {
            throw new UnreadableFile(Message.of("import.darwin.separator", written));
        }
        return Optional.of(written.charAt(0));
    }

    private static int number(String written) throws UnreadableFile {
        if (!written.strip().matches("\\d{1,5}") || Integer.parseInt(written.strip()) > MOST_COLUMNS) {
            throw new UnreadableFile(Message.of("import.darwin.number", written));
        }
        return Integer.parseInt(written.strip());
    }
}
