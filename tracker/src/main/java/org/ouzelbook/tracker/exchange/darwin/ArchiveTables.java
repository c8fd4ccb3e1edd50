package org.ouzelbook.tracker.exchange.darwin;

import java.io.IOException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.ouzelbook.tracker.domain.Entry;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.exchange.file.FileSource;
import org.ouzelbook.tracker.exchange.file.NumberedRows;
import org.ouzelbook.tracker.river.RiverNetwork;
import org.ouzelbook.tracker.store.BookView;
import org.ouzelbook.tracker.store.SightingQuery;

/**
 * An archive as tables of visits, sightings and kick samples, whose rows have the numbers that they have in the archive's files.
 *
 * <p>An event with effort or a list of what was looked for is a visit; what its occurrences say was absent, it looked for.
 * Occurrences of other events are casual sightings. Records that the book published itself are known by their identifiers.
 *
 * @param tables the tables
 * @param remarks what was passed over
 */
public record ArchiveTables(List<Made> tables, List<Message> remarks) {
    /** Copies the lists. */
    public ArchiveTables {
        tables = List.copyOf(tables);
        remarks = List.copyOf(remarks);
    }

    /** What the rows of a table are. */
    public enum Kind {
        /** Visits. */
        VISITS,
        /** Sightings. */
        SIGHTINGS,
        /** Lines of kick samples. */
        KICK_SAMPLES
    }

    /**
     * A table.
     *
     * @param table the table
     * @param kind what its rows are
     * @param known the numbers of its rows that the book has already
     */
    public record Made(FileSource table, Kind kind, BitSet known) {
        /** Copies the set. */
        public Made {
            known = (BitSet) known.clone();
        }

        @Override
        public BitSet known() {
            return (BitSet) known.clone();
        }
    }

    /**
     * {@return the tables of an archive}
     *
     * @param archive the archive
     * @param book the book that they go into
     * @throws IOException if a file cannot be read
     */
    public static ArchiveTables of(ReadArchive archive, BookView book) throws IOException {
        return new Maker(archive, book).make();
    }

    private static final class Maker {
        private final ReadArchive archive;
        private final RiverNetwork rivers;
        private final Set<String> published = new HashSet<>();
        private final Map<String, String> visitsOfTheBook = new HashMap<>();
        private final Map<String, ArchiveEvent> events = new HashMap<>();
        private final Map<String, ArchiveEvent.Kind> kinds = new HashMap<>();
        private final Map<String, Map<String, String>> measured = new HashMap<>();
        private final Map<String, String> texts = new HashMap<>();
        private final Map<String, String> labels = new HashMap<>();
        private final List<Made> tables = new ArrayList<>();
        private int otherSpecies;
        private int ofNests;
        private final Map<String, Integer> otherDatums = new TreeMap<>();

        private Maker(ReadArchive archive, BookView book) {
            this.archive = archive;
            this.rivers = book.network();
            book.visits().forEach(visit -> {
                publish(visit);
                visitsOfTheBook.put(PublishedId.of(visit.id()), visit.label());
                Species.all()
                        .forEach(species ->
                                published.add(PublishedId.of(visit.id(), "absence " + species.scientificName())));
            });
            book.eachSighting(SightingQuery.ALL, this::publish);
            book.kickSamples().forEach(this::publish);
            book.nests().forEach(nest -> published.add(PublishedId.of(nest.id(), "occurrence")));
        }

        private void publish(Entry entry) {
            published.add(PublishedId.of(entry.id()));
        }

        private ArchiveTables make() throws IOException {
            readEvents();
            for (ArchiveFile file : archive.of("Event")) {
                NumberedRows visits = new NumberedRows(ArchiveColumns.VISITS);
                file.each(row -> visit(row, visits));
                keep(file, Kind.VISITS, visits);
            }
            for (ArchiveFile file : archive.of("Occurrence")) {
                NumberedRows sightings = new NumberedRows(ArchiveColumns.SIGHTINGS);
                NumberedRows samples = new NumberedRows(ArchiveColumns.SAMPLES);
                file.each(row -> occurrence(row, sightings, samples));
                keep(file, Kind.SIGHTINGS, sightings);
                keep(file, Kind.KICK_SAMPLES, samples);
            }
            List<Message> remarks = new ArrayList<>();
            if (archive.of("Event").isEmpty() && archive.of("Occurrence").isEmpty()) {
                remarks.add(Message.of("import.darwin.noRecords"));
            }
            if (otherSpecies > 0) {
                remarks.add(Message.of("import.darwin.otherSpecies", otherSpecies));
            }
            if (ofNests > 0) {
                remarks.add(Message.of("import.darwin.nests", ofNests));
            }
            otherDatums.forEach((datum, rows) -> remarks.add(Message.of("import.darwin.datum", datum, rows)));
            return new ArchiveTables(tables, remarks);
        }

        private void keep(ArchiveFile file, Kind kind, NumberedRows rows) {
            rows.table(file.source().name()).ifPresent(table -> tables.add(new Made(table, kind, rows.known())));
        }

        private static void add(NumberedRows rows, int number, boolean isKnown, List<String> cells) {
            if (isKnown) {
                rows.addKnown(number, cells);
            } else {
                rows.add(number, cells);
            }
        }

        private void readEvents() throws IOException {
            Map<String, Map<String, String>> inventories = new HashMap<>();
            for (ArchiveFile file : archive.of("ecoEvent")) {
                file.each(row -> inventories.put(
                        row.event(),
                        Map.of(
                                "targetTaxonomicScope", row.value("targetTaxonomicScope"),
                                "absentTaxa", row.value("absentTaxa"),
                                "samplingPerformedBy", row.value("samplingPerformedBy"),
                                "reportedWeather", row.value("reportedWeather"))));
            }
            for (ArchiveFile file : archive.of("ExtendedMeasurementOrFact")) {
                file.each(row -> {
                    String of = row.value("occurrenceID").isEmpty() ? row.event() : row.value("occurrenceID");
                    measured.computeIfAbsent(of, id -> new HashMap<>(2))
                            .put(once(row.value("measurementType")), once(row.value("measurementValue")));
                });
            }
            Set<String> parents = new HashSet<>();
            for (ArchiveFile file : archive.of("Event")) {
                file.each(row -> {
                    parents.add(row.value("parentEventID"));
                    events.put(
                            row.event(),
                            new ArchiveEvent(
                                    row,
                                    inventories.getOrDefault(row.event(), Map.of()),
                                    measured.getOrDefault(row.event(), Map.of()),
                                    new ArrayList<>()));
                });
            }
            Map<String, Integer> numbers = new HashMap<>();
            for (ArchiveFile file : archive.of("Occurrence")) {
                file.each(row -> {
                    numbers.merge(row.value("recordNumber"), 1, Integer::sum);
                    if (isAbsent(row) && events.containsKey(row.event())) {
                        events.get(row.event()).absent().add(row.value("scientificName"));
                    }
                });
            }
            for (ArchiveFile file : archive.of("Occurrence")) {
                file.each(row -> labels.put(
                        row.value("occurrenceID"),
                        numbers.getOrDefault(row.value("recordNumber"), 0) == 1
                                        && !row.value("recordNumber").isEmpty()
                                ? row.value("recordNumber")
                                : row.value("occurrenceID")));
            }
            events.forEach((id, event) -> kinds.put(id, event.kind(parents.contains(id))));
        }

        /** {@return the same text, kept once however often it is said} */
        private String once(String text) {
            return texts.computeIfAbsent(text, same -> same);
        }

        private static boolean isAbsent(ArchiveFile.Told row) {
            return row.value("occurrenceStatus").toLowerCase(Locale.ROOT).startsWith("absen")
                    || count(row).equals("0");
        }

        /** {@return how many birds there were, which newer archives say as a quantity of individuals} */
        private static String count(ArchiveFile.Told row) {
            boolean ofBirds =
                    row.value("organismQuantityType").toLowerCase(Locale.ROOT).startsWith("individual");
            return either(row.value("individualCount"), ofBirds ? row.value("organismQuantity") : "");
        }

        private void visit(ArchiveFile.Told row, NumberedRows visits) {
            ArchiveEvent event = events.get(row.event());
            if (event == null || kinds.get(row.event()) != ArchiveEvent.Kind.VISIT) {
                return;
            }
            Optional<Footprint> footprint = Footprint.of(event, rivers);
            String lower = km(event.measured().getOrDefault("lower end of the stretch", ""));
            String upper = km(event.measured().getOrDefault("upper end of the stretch", ""));
            add(
                    visits,
                    row.number(),
                    published.contains(row.event()),
                    List.of(
                            label(event),
                            row.value("eventDate"),
                            row.value("eventTime"),
                            river(event, footprint),
                            lower.isEmpty() ? end(footprint, true) : lower,
                            upper.isEmpty() ? end(footprint, false) : upper,
                            event.measured().getOrDefault("direction walked", ""),
                            event.measured().getOrDefault("way of travelling", ""),
                            semicolons(either(
                                    row.value("recordedBy"),
                                    event.inventory().getOrDefault("samplingPerformedBy", ""))),
                            String.join("; ", ours(event.lookedFor())),
                            event.measured().getOrDefault("river level", ""),
                            weather(event.inventory().getOrDefault("reportedWeather", "")),
                            event.measured().getOrDefault("birds could be found", ""),
                            row.value("eventRemarks")));
        }

        private String label(ArchiveEvent event) {
            return visitsOfTheBook.getOrDefault(event.row().event(), event.label());
        }

        /** The weather of our own archives stands in an object of one name. */
        private static String weather(String reported) {
            return reported.matches("\\{\"weather\":\"[^\"\\\\]*\"}")
                    ? reported.substring("{\"weather\":\"".length(), reported.length() - 2)
                    : reported;
        }

        /** {@return the species of a scientific name, which may be followed by its author and year, as the standard wants it} */
        private static Optional<Species> species(String scientificName) {
            return Species.named(scientificName)
                    .or(() -> Species.named(scientificName.strip().replaceFirst("^(\\S+\\s+\\S+)\\s.*$", "$1")));
        }

        private static Optional<Species> species(ArchiveFile.Told row) {
            return species(row.value("scientificName")).or(() -> Species.named(row.value("vernacularName")));
        }

        private static List<String> ours(List<String> names) {
            return names.stream()
                    .map(Maker::species)
                    .flatMap(Optional::stream)
                    .map(Species::scientificName)
                    .distinct()
                    .toList();
        }

        private static String either(String one, String other) {
            return one.isEmpty() ? other : one;
        }

        private static String semicolons(String names) {
            return names.replace('|', ';');
        }

        private String river(ArchiveEvent event, Optional<Footprint> footprint) {
            return footprint.map(Footprint::river).map(River::name).orElse(event.value("waterBody"));
        }

        private static String end(Optional<Footprint> footprint, boolean lower) {
            return footprint
                    .flatMap(Footprint::stretch)
                    .map(stretch -> lower ? stretch.lower() : stretch.upper())
                    .map(end -> String.format(Locale.ROOT, "%.3f", end.km()))
                    .orElse("");
        }

        /** {@return metres as km; blank if they are no number} */
        private static String km(String metres) {
            return metres.matches("\\d{1,7}(\\.\\d+)?")
                    ? String.format(Locale.ROOT, "%.4f", Double.parseDouble(metres) / 1000)
                    : "";
        }

        private void occurrence(ArchiveFile.Told row, NumberedRows sightings, NumberedRows samples) {
            ArchiveEvent.Kind kind = kinds.getOrDefault(row.event(), ArchiveEvent.Kind.CASUAL);
            if (kind == ArchiveEvent.Kind.NEST) {
                ofNests += published.contains(row.value("occurrenceID")) ? 0 : 1;
            } else if (kind == ArchiveEvent.Kind.SAMPLE) {
                sample(row, samples);
            } else if (species(row).isEmpty()) {
                otherSpecies++;
            } else {
                sighting(row, kind == ArchiveEvent.Kind.VISIT, sightings);
            }
        }

        private void sighting(ArchiveFile.Told row, boolean onVisit, NumberedRows sightings) {
            Optional<ArchiveEvent> event = Optional.ofNullable(events.get(row.event()));
            String id = row.value("occurrenceID");
            Map<String, String> told = measured.getOrDefault(id, Map.of());
            String km = km(told.getOrDefault("river chainage", ""));
            String datum = place(row, event, "geodeticDatum", km);
            boolean isOff = !Datum.isWgs84(datum);
            if (isOff && !published.contains(id)) {
                otherDatums.merge(datum, 1, Integer::sum);
            }
            add(
                    sightings,
                    row.number(),
                    published.contains(id),
                    List.of(
                            labels.getOrDefault(id, ""),
                            onVisit ? event.map(this::label).orElse("") : "",
                            day(row, event),
                            row.value("eventTime"),
                            waterBody(row, event),
                            km,
                            isOff ? "" : place(row, event, "decimalLatitude", km),
                            isOff ? "" : place(row, event, "decimalLongitude", km),
                            place(row, event, "coordinateUncertaintyInMeters", ""),
                            told.getOrDefault("bank, looking downstream", ""),
                            species(row).map(Species::scientificName).orElse(""),
                            isAbsent(row) ? "absent" : "",
                            count(row),
                            told.getOrDefault("age told in the field", row.value("lifeStage")),
                            row.value("sex"),
                            behaviour(row),
                            code(row),
                            told.getOrDefault("colour-ring reading", ""),
                            simultaneous(row),
                            km(told.getOrDefault("flew to", "")),
                            told.getOrDefault("turned back there", ""),
                            semicolons(row.value("recordedBy")),
                            note(row)));
        }

        private static String place(ArchiveFile.Told row, Optional<ArchiveEvent> event, String term, String instead) {
            if (!instead.isEmpty()) {
                return "";
            }
            boolean hasOwn = !row.value("decimalLatitude").isEmpty();
            return hasOwn ? row.value(term) : event.map(of -> of.value(term)).orElse("");
        }

        private String waterBody(ArchiveFile.Told row, Optional<ArchiveEvent> event) {
            String name = either(
                    row.value("waterBody"),
                    event.map(of -> of.value("waterBody")).orElse(""));
            boolean known =
                    rivers.rivers().stream().anyMatch(river -> river.name().equalsIgnoreCase(name));
            return known
                    ? name
                    : event.flatMap(of -> Footprint.of(of, rivers))
                            .map(Footprint::river)
                            .map(River::name)
                            .orElse("");
        }

        private static String day(ArchiveFile.Told row, Optional<ArchiveEvent> event) {
            String date = either(
                    row.value("eventDate"),
                    event.map(of -> of.value("eventDate")).orElse(""));
            int slash = date.indexOf('/');
            boolean sameDay = slash >= 10 && date.startsWith(date.substring(0, 10), slash + 1);
            return sameDay ? date.substring(0, 10) : date;
        }

        /** A dead bird is told by its vitality as well. */
        private static String behaviour(ArchiveFile.Told row) {
            boolean dead = row.value("vitality").equalsIgnoreCase("dead");
            return dead && !row.value("behavior").contains("dead")
                    ? (row.value("behavior") + "; dead").replaceFirst("^; ", "")
                    : row.value("behavior");
        }

        private static String code(ArchiveFile.Told row) {
            String told = row.value("reproductiveCondition");
            return told.matches("(?i)(breeding )?(code )?\\d{1,2}") ? told : "";
        }

        private static String note(ArchiveFile.Told row) {
            String condition = row.value("reproductiveCondition");
            return condition.isEmpty() || !code(row).isEmpty()
                    ? row.value("occurrenceRemarks")
                    : (row.value("occurrenceRemarks") + "; " + condition).replaceFirst("^; ", "");
        }

        private String simultaneous(ArchiveFile.Told row) {
            String told = row.value("associatedOccurrences");
            String prefix = "at the same time as: ";
            if (!told.startsWith(prefix)) {
                return "";
            }
            List<String> names = new ArrayList<>();
            for (String id : told.substring(prefix.length()).split("\\|", -1)) {
                names.add(labels.getOrDefault(id.strip(), id.strip()));
            }
            return String.join("; ", names);
        }

        private void sample(ArchiveFile.Told row, NumberedRows samples) {
            ArchiveEvent event = events.get(row.event());
            if (event == null) {
                return;
            }
            String minutes =
                    event.value("sampleSizeUnit").toLowerCase(Locale.ROOT).startsWith("min")
                            ? event.value("sampleSizeValue")
                            : "";
            String id = row.value("occurrenceID");
            String abundanceClass = measured.getOrDefault(id, Map.of()).entrySet().stream()
                    .filter(entry -> entry.getKey().startsWith("abundance class"))
                    .map(Map.Entry::getValue)
                    .findFirst()
                    .orElse("");
            add(
                    samples,
                    row.number(),
                    published.contains(row.event()),
                    List.of(
                            event.label(),
                            day(row, Optional.of(event)),
                            waterBody(row, Optional.of(event)),
                            event.value("decimalLatitude"),
                            event.value("decimalLongitude"),
                            event.value("coordinateUncertaintyInMeters"),
                            minutes,
                            either(event.value("samplingEffort"), event.value("samplingProtocol")),
                            semicolons(row.value("recordedBy")),
                            event.value("eventRemarks"),
                            row.value("scientificName"),
                            either(
                                    either(row.value("organismQuantity"), row.value("individualCount")),
                                    abundanceClass)));
        }
    }
}
