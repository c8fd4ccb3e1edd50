package org.ouzelbook.tracker.exchange.export;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;

/**
 * The records of a book as tables. The private tables have the columns that import reads, so that what goes out can come in
 * again. The public ones leave out whatever tells a nest, a ring or a person: labels, notes, times of sightings (with the pace of
 * the walk they would tell the place), what the birds did, and every place but its {@link PublicGrid} cell.
 */
public final class RecordTables {
    private final Records records;
    private final PublicGrid grid;

    private RecordTables(Records records) {
        this.records = records;
        this.grid = new PublicGrid(records.rivers());
    }

    /**
     * {@return the tables}
     *
     * @param records what goes out
     * @param audience who may read it
     */
    public static List<DataTable> of(Records records, Audience audience) {
        RecordTables tables = new RecordTables(records);
        return audience == Audience.PRIVATE ? tables.privately() : tables.publicly();
    }

    private List<DataTable> publicly() {
        Map<UUID, String> labels = publicLabels();
        List<DataTable> tables = new ArrayList<>();
        tables.add(table(
                "landmarks",
                "name river km latitude longitude kind aliases",
                records.landmarks(),
                landmark -> row(
                        landmark.name(),
                        spot(landmark.place()),
                        Words.of(landmark.kind()),
                        Words.list(landmark.aliases()))));
        tables.add(reaches());
        tables.add(table(
                "visits",
                "visit date start end river from_km to_km direction mode species effective",
                records.visits(),
                visit -> row(
                        labels.getOrDefault(visit.id(), ""),
                        visit.date(),
                        visit.start(),
                        visit.end(),
                        river(visit.riverId()),
                        ends(visit.walked().map(walked -> grid.cells(visit.riverId(), walked))),
                        visit.direction(),
                        visit.mode(),
                        Words.species(visit.lookedFor()),
                        Words.of(visit.effective()))));
        tables.add(publicSightings(labels));
        tables.add(table(
                "kick_samples",
                "sample date river km latitude longitude minutes taxon abundance",
                taxa(),
                taxon -> row(
                        labels.getOrDefault(taxon.sample.id(), ""),
                        taxon.sample.date(),
                        spot(taxon.sample.place()),
                        Words.of(taxon.sample.minutes()),
                        taxon.line.name(),
                        taxon.line.abundance())));
        return tables;
    }

    /** Visits and kick samples by their day and order: a label may hold initials. */
    private Map<UUID, String> publicLabels() {
        Map<UUID, String> labels = new HashMap<>();
        Map<LocalDate, Integer> visits = new HashMap<>();
        Map<LocalDate, Integer> samples = new HashMap<>();
        for (Visit visit : records.visits()) {
            labels.put(visit.id(), visit.date() + "-" + visits.merge(visit.date(), 1, Integer::sum));
        }
        for (KickSample sample : records.kickSamples()) {
            labels.put(sample.id(), sample.date() + "-" + samples.merge(sample.date(), 1, Integer::sum));
        }
        return labels;
    }

    /** In an order of all that is told, since that in which birds were met would tell where. */
    private DataTable publicSightings(Map<UUID, String> labels) {
        List<Sighting> inOrder = new ArrayList<>(records.sightings());
        inOrder.sort(Comparator.comparing(Sighting::date)
                .thenComparing(sighting -> river(sighting.place().riverId()))
                .thenComparing(sighting -> cell(sighting).lower())
                .thenComparing(sighting -> sighting.species().englishName())
                .thenComparing(Sighting::count)
                .thenComparing(Sighting::age)
                .thenComparing(Sighting::sex)
                .thenComparing(sighting -> told(sighting.visitId().map(id -> labels.getOrDefault(id, ""))))
                .thenComparing(sighting -> told(sighting.breedingCode().flatMap(BreedingCode::evidenceClass))));
        return table(
                "sightings",
                "visit date river from_km to_km latitude longitude species count age sex evidence",
                inOrder,
                sighting -> row(
                        sighting.visitId().map(id -> labels.getOrDefault(id, "")),
                        sighting.date(),
                        river(sighting.place().riverId()),
                        ends(Optional.of(cell(sighting))),
                        degrees(grid.middle(sighting.place().riverId(), cell(sighting))),
                        sighting.species().englishName(),
                        sighting.count(),
                        Words.of(sighting.age()),
                        Words.of(sighting.sex()),
                        sighting.breedingCode().flatMap(BreedingCode::evidenceClass)));
    }

    private static String told(Optional<?> value) {
        return value.map(Object::toString).orElse("");
    }

    private Stretch cell(Sighting sighting) {
        return grid.cell(sighting.place().riverId(), sighting.place().chainage());
    }

    private List<DataTable> privately() {
        List<DataTable> tables = new ArrayList<>();
        tables.add(table(
                "landmarks",
                "name river km latitude longitude uncertainty_m bank kind aliases nest_site",
                records.landmarks(),
                (Landmark landmark) -> row(
                        landmark.name(),
                        place(landmark.place()),
                        Words.of(landmark.kind()),
                        Words.list(landmark.aliases()),
                        Words.of(landmark.nestSite()))));
        tables.add(reaches());
        tables.add(table(
                "visits",
                "visit date start end river from_km to_km direction mode observers species level weather effective note",
                records.visits(),
                visit -> row(
                        visit.label(),
                        visit.date(),
                        visit.start(),
                        visit.end(),
                        river(visit.riverId()),
                        ends(visit.walked()),
                        visit.direction(),
                        visit.mode(),
                        Words.list(visit.observers()),
                        Words.species(visit.lookedFor()),
                        visit.level(),
                        visit.weather(),
                        Words.of(visit.effective()),
                        visit.note())));
        tables.add(privateSightings());
        tables.addAll(new NestTables(records, this::place).tables());
        tables.add(table(
                "kick_samples",
                "sample date river km latitude longitude uncertainty_m bank minutes method sampler note taxon abundance",
                taxa(),
                taxon -> row(
                        taxon.sample.label(),
                        taxon.sample.date(),
                        place(taxon.sample.place()),
                        Words.of(taxon.sample.minutes()),
                        taxon.sample.method(),
                        taxon.sample.sampler(),
                        taxon.sample.note(),
                        taxon.line.name(),
                        taxon.line.abundance())));
        tables.add(table(
                "decisions",
                "season species river kind from_km to_km note observer date",
                records.decisions(),
                decision -> row(
                        decision.season(),
                        decision.species().englishName(),
                        river(decision.riverId()),
                        Words.of(decision.kind()),
                        ends(Optional.of(decision.stretch())),
                        decision.note(),
                        decision.by(),
                        decision.on())));
        return tables;
    }

    private DataTable privateSightings() {
        Map<UUID, String> visits = records.visits().stream().collect(Collectors.toMap(Visit::id, Visit::label));
        Map<UUID, String> labels = records.sightings().stream()
                .collect(Collectors.toMap(
                        Sighting::id,
                        sighting -> sighting.label().isBlank()
                                        && !sighting.simultaneousWith().isEmpty()
                                ? sighting.id().toString()
                                : sighting.label()));
        return table(
                "sightings",
                "sighting visit date time river km latitude longitude uncertainty_m bank species count age sex activity "
                        + "breeding_code rings simultaneous_with flew_to_km turned_back observer note",
                records.sightings(),
                sighting -> row(
                        labels.getOrDefault(sighting.id(), ""),
                        sighting.visitId().map(id -> visits.getOrDefault(id, "")),
                        sighting.date(),
                        sighting.time(),
                        place(sighting.place()),
                        sighting.species().englishName(),
                        sighting.count(),
                        Words.of(sighting.age()),
                        Words.of(sighting.sex()),
                        Words.list(sighting.activities().stream()
                                .sorted()
                                .map(Words::of)
                                .toList()),
                        sighting.breedingCode().map(BreedingCode::number),
                        sighting.rings(),
                        Words.list(sighting.simultaneousWith().stream()
                                .map(id -> labels.getOrDefault(id, id.toString()))
                                .sorted()
                                .toList()),
                        Words.km(sighting.flewTo()),
                        Words.of(sighting.turnedBack()),
                        sighting.observer(),
                        sighting.note()));
    }

    private DataTable reaches() {
        return table(
                "reaches",
                "reach river from_km to_km",
                records.reaches(),
                (Reach reach) -> row(reach.name(), river(reach.riverId()), ends(Optional.of(reach.stretch()))));
    }

    private record TaxonLine(KickSample sample, KickSample.Taxon line) {}

    private List<TaxonLine> taxa() {
        return records.kickSamples().stream()
                .flatMap(sample -> sample.taxa().stream().map(taxon -> new TaxonLine(sample, taxon)))
                .toList();
    }

    private String river(UUID riverId) {
        return records.rivers().river(riverId).name();
    }

    /** River, km and degrees. */
    private List<Object> spot(Place place) {
        Optional<GeoPoint> point =
                records.rivers().measuredLine(place.riverId()).flatMap(line -> line.point(place.chainage()));
        return row(river(place.riverId()), Words.km(place.chainage()), degrees(point));
    }

    /** River, km, degrees, uncertainty and bank. */
    private List<Object> place(Place place) {
        return row(spot(place), Math.ceil(place.uncertaintyMetres() * 10) / 10, Words.of(place.bank()));
    }

    private static List<Object> degrees(Optional<GeoPoint> point) {
        return point.isEmpty()
                ? List.of("", "")
                : List.of(
                        Degrees.of(point.get().latitude()),
                        Degrees.of(point.get().longitude()));
    }

    private static List<Object> ends(Optional<Stretch> stretch) {
        return stretch.isEmpty()
                ? List.of("", "")
                : List.of(
                        Words.km(stretch.get().lower()), Words.km(stretch.get().upper()));
    }

    /** {@return the cells of a row: lists among the values are laid out flat, empty values are blank} */
    static List<Object> row(Object... values) {
        List<Object> cells = new ArrayList<>();
        for (Object value : values) {
            if (value instanceof List<?> several) {
                cells.addAll(several);
            } else {
                cells.add(value instanceof Optional<?> optional ? Words.of(optional) : value);
            }
        }
        return cells;
    }

    static <T> DataTable table(String name, String columns, List<T> records, Function<T, List<Object>> row) {
        return new DataTable(
                name,
                Arrays.asList(columns.split(" ", -1)),
                records.stream().map(row).toList());
    }
}
