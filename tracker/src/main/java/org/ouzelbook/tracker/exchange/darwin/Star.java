package org.ouzelbook.tracker.exchange.darwin;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/**
 * The rows of an archive. They are made one record after another whenever they are asked for, and none is kept: an archive may be
 * larger than the memory.
 */
final class Star {
    private final List<Source> sources = new ArrayList<>();
    private final Map<StarFile, List<ArchiveRow>> inHand = new EnumMap<>(StarFile.class);
    private Set<StarFile> asked = EnumSet.allOf(StarFile.class);

    /**
     * A record of the book that makes rows.
     *
     * @param day its first day, as text
     * @param id the identifier that it is published under
     * @param rows makes its rows; at most one of them is an event
     */
    private record Source(String day, String id, Runnable rows) {}

    /** Hears of rows. */
    @FunctionalInterface
    interface Reader<E extends Exception> {
        /** Takes a row. */
        void take(ArchiveRow row) throws E;
    }

    Star() {
        for (StarFile file : StarFile.values()) {
            inHand.put(file, new ArrayList<>());
        }
    }

    /** Takes a record that makes rows, at most one of them an event. */
    void add(Object day, String id, Runnable rows) {
        sources.add(new Source(day.toString(), id, rows));
    }

    /** {@return a new event} */
    ArchiveRow event(String id, String type) {
        return added(StarFile.EVENTS, id).with("dwc:eventType", type);
    }

    /** {@return a new occurrence of an event} */
    ArchiveRow occurrence(String eventId, String id) {
        return added(StarFile.OCCURRENCES, eventId)
                .with("dwc:occurrenceID", id)
                .with("dwc:basisOfRecord", "HumanObservation")
                .with("dwc:kingdom", "Animalia");
    }

    /** {@return what was looked for at an event} */
    ArchiveRow inventory(String eventId) {
        return added(StarFile.INVENTORIES, eventId);
    }

    private ArchiveRow added(StarFile file, String eventId) {
        if (!asked.contains(file)) {
            return ArchiveRow.unheard();
        }
        ArchiveRow row = ArchiveRow.blank().with("dwc:eventID", eventId);
        rows(file).add(row);
        return row;
    }

    private List<ArchiveRow> rows(StarFile file) {
        return inHand.getOrDefault(file, List.of());
    }

    /**
     * Takes measurements of one thing.
     *
     * @param key the key of the record
     * @param eventId its event
     * @param occurrenceId its occurrence; blank if it is the event that is measured
     */
    record Measured(Star star, UUID key, String eventId, String occurrenceId) {
        /** Measures, unless the value is blank. */
        Measured with(String type, Object value, String unit, String method) {
            if (!star.asked.contains(StarFile.MEASUREMENTS)) {
                return this;
            }
            ArchiveRow row = ArchiveRow.blank().with("dwc:measurementValue", value);
            if (!row.value("dwc:measurementValue").isEmpty()) {
                star.rows(StarFile.MEASUREMENTS)
                        .add(row.with("dwc:eventID", eventId)
                                .with("dwc:occurrenceID", occurrenceId)
                                .with("dwc:measurementID", PublishedId.of(key, type))
                                .with("dwc:measurementType", type)
                                .with("dwc:measurementUnit", unit)
                                .with("dwc:measurementMethod", method));
            }
            return this;
        }
    }

    Measured measured(UUID key, String eventId, String occurrenceId) {
        return new Measured(this, key, eventId, occurrenceId);
    }

    /** {@return the files with the columns in which some row tells something, the event core first} */
    List<ArchiveTable> tables() {
        Map<StarFile, Set<String>> told = new EnumMap<>(StarFile.class);
        Map<StarFile, Integer> counts = new EnumMap<>(StarFile.class);
        asked = EnumSet.allOf(StarFile.class);
        for (Source source : sources) {
            make(source);
            inHand.forEach((file, rows) -> {
                rows.forEach(row ->
                        told.computeIfAbsent(file, key -> new LinkedHashSet<>()).addAll(row.terms()));
                counts.merge(file, rows.size(), Integer::sum);
            });
        }
        List<ArchiveTable> tables = new ArrayList<>();
        for (StarFile file : StarFile.values()) {
            Set<String> inUse = told.getOrDefault(file, Set.of("dwc:eventID"));
            tables.add(new ArchiveTable(
                    file, file.terms().stream().filter(inUse::contains).toList(), counts.getOrDefault(file, 0)));
        }
        return tables;
    }

    /** Tells the rows of a file, in an order that tells nothing of that in which records were made: events by their day. */
    <E extends Exception> void each(StarFile file, Reader<E> reader) throws E {
        Comparator<Source> byId = Comparator.comparing(Source::id);
        asked = EnumSet.of(file);
        sources.sort(file == StarFile.EVENTS ? Comparator.comparing(Source::day).thenComparing(byId) : byId);
        for (Source source : sources) {
            make(source);
            for (ArchiveRow row : rows(file)) {
                reader.take(row);
            }
        }
    }

    private void make(Source source) {
        inHand.values().forEach(List::clear);
        source.rows().run();
    }
}
