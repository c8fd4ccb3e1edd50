package org.ouzelbook.tracker.exchange.darwin;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * One file of an archive.
 *
 * @param name the name of the file
 * @param rowType what each row is
 * @param terms the terms that its columns hold, the event's identifier first; with the prefix of their vocabulary
 * @param rows its rows
 */
record ArchiveTable(String name, String rowType, List<String> terms, List<ArchiveRow> rows) {
    ArchiveTable {
        terms = List.copyOf(terms);
        rows = List.copyOf(rows);
    }

    /** {@return a table of the columns in which some row tells something; the first is always there} */
    static ArchiveTable of(String name, String rowType, String terms, List<ArchiveRow> rows) {
        List<String> told = new ArrayList<>();
        for (String term : Arrays.asList(terms.strip().split("\\s+", -1))) {
            if (told.isEmpty() || rows.stream().anyMatch(row -> !row.value(term).isEmpty())) {
                told.add(term);
            }
        }
        return new ArchiveTable(name, rowType, told, rows);
    }

    /** {@return the file: tabs between cells, a row a line, the names of the terms above} */
    String text() {
        StringBuilder text = new StringBuilder();
        text.append(String.join("\t", terms.stream().map(ArchiveTable::bare).toList()))
                .append('\n');
        for (ArchiveRow row : rows) {
            for (int i = 0; i < terms.size(); i++) {
                text.append(i == 0 ? "" : "\t").append(row.value(terms.get(i)));
            }
            text.append('\n');
        }
        return text.toString();
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
