package org.ouzelbook.tracker.exchange.darwin;

import java.util.List;
import java.util.stream.Collectors;

/**
 * The columns of one file of an archive.
 *
 * @param file which
 * @param terms the terms that its columns hold, the event's identifier first
 * @param rows how many rows it has
 */
record ArchiveTable(StarFile file, List<String> terms, int rows) {
    ArchiveTable {
        terms = List.copyOf(terms);
    }

    /** {@return the first line: the names of the terms} */
    String header() {
        return terms.stream().map(ArchiveTable::bare).collect(Collectors.joining("\t", "", "\n"));
    }

    /** {@return a row as a line, with tabs between its cells} */
    String line(ArchiveRow row) {
        return terms.stream().map(row::value).collect(Collectors.joining("\t", "", "\n"));
    }

    private static String bare(String term) {
        return term.substring(term.indexOf(':') + 1);
    }

    /** {@return the address of a term} */
    static String address(String term) {
        String vocabulary = term.substring(0, term.indexOf(':'));
        return switch (vocabulary) {
            case "dwc" -> "http://rs.tdwg.org/dwc/terms/" + bare(term);
            case "eco" -> "http://rs.tdwg.org/eco/terms/" + bare(term);
            case "dcterms" -> "http://purl.org/dc/terms/" + bare(term);
            case "obis" -> "http://rs.iobis.org/obis/terms/" + bare(term);
            default -> throw new IllegalArgumentException("No vocabulary has the prefix of " + term);
        };
    }
}
