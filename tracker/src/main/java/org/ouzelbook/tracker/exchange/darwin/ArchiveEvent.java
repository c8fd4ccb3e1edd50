package org.ouzelbook.tracker.exchange.darwin;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * An event of an archive that is being read, with what the other files tell of it.
 *
 * @param row its row
 * @param inventory what the Humboldt extension says of it, by term
 * @param measured what was measured of it, by type
 * @param absent names of the taxa that occurrences of it say were absent
 */
record ArchiveEvent(
        ArchiveFile.Told row, Map<String, String> inventory, Map<String, String> measured, List<String> absent) {
    private static final String NEST_RECORD = "nest record";

    /** What an event is to a field book. */
    enum Kind {
        /** A walk with its effort. */
        VISIT,
        /** A sample of the river bed. */
        SAMPLE,
        /** A nest or a look at it. */
        NEST,
        /** Something that holds other events, or lasted for days. */
        WHOLE,
        /** Anything else: its occurrences are casual. */
        CASUAL
    }

    String value(String term) {
        return row.value(term);
    }

    /** {@return what it is} */
    Kind kind(boolean isParent) {
        String type = value("eventType").toLowerCase(Locale.ROOT);
        if (value("samplingProtocol").toLowerCase(Locale.ROOT).contains(NEST_RECORD)) {
            return Kind.NEST;
        }
        if (type.contains("sample")
                || value("samplingProtocol").toLowerCase(Locale.ROOT).contains("kick sampl")) {
            return Kind.SAMPLE;
        }
        if (isParent || lastsForDays()) {
            return Kind.WHOLE;
        }
        boolean looked = !lookedFor().isEmpty() || type.contains("visit") || type.contains("transect");
        boolean walked = value("sampleSizeUnit").toLowerCase(Locale.ROOT).matches("(kilo)?met(re|er)s?|km|m");
        return looked || walked ? Kind.VISIT : Kind.CASUAL;
    }

    private boolean lastsForDays() {
        String[] ends = value("eventDate").split("/", -1);
        return ends.length == 2
                && ends[0].length() >= 10
                && ends[1].length() >= 10
                && !ends[0].substring(0, 10).equals(ends[1].substring(0, 10));
    }

    /** {@return names of the taxa that it says it looked for, each once} */
    List<String> lookedFor() {
        List<String> names = new ArrayList<>();
        names.addAll(List.of(inventory.getOrDefault("targetTaxonomicScope", "").split("\\|", -1)));
        names.addAll(List.of(inventory.getOrDefault("absentTaxa", "").split("\\|", -1)));
        names.addAll(absent);
        return names.stream()
                .map(String::strip)
                .filter(name -> !name.isEmpty())
                .distinct()
                .toList();
    }

    /** {@return what the book calls it: the field number if there is one} */
    String label() {
        String fieldNumber = value("fieldNumber");
        return fieldNumber.isEmpty() ? row.event() : fieldNumber;
    }
}
