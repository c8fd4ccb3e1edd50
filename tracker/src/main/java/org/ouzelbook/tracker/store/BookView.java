package org.ouzelbook.tracker.store;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.Entry;
import org.ouzelbook.tracker.domain.ImportedFile;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.Origin;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Seal;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.river.RiverNetwork;

/** What a book holds, read at one moment. It may be used only while the work it was given to is running. */
public sealed class BookView permits BookEdit {
    private final Database database;

    BookView(Database database) {
        this.database = database;
    }

    Database database() {
        return database;
    }

    /** {@return the rivers, main rivers first, by name} */
    public List<River> rivers() {
        return RiverStore.rivers(database);
    }

    /**
     * {@return the river with this name, in any case}
     *
     * @param name a name
     */
    public Optional<River> river(String name) {
        return RiverStore.named(database, name);
    }

    /** {@return every version of the line of every river} */
    public List<RiverLine> lines() {
        return RiverStore.lines(database);
    }

    /**
     * {@return every version of the line of one river, oldest first}
     *
     * @param river a river of the book
     */
    public List<RiverLine> lines(River river) {
        return RiverStore.lines(database, river.id());
    }

    /** {@return the rivers and how they join} */
    public RiverNetwork network() {
        return RiverNetwork.of(rivers(), lines());
    }

    /** {@return the landmarks, river by river from the mouth up} */
    public List<Landmark> landmarks() {
        return LandmarkStore.landmarks(database);
    }

    /** {@return the reaches, river by river from the mouth up} */
    public List<Reach> reaches() {
        return RiverStore.reaches(database);
    }

    /** {@return the visits, by date} */
    public List<Visit> visits() {
        return VisitStore.visits(database);
    }

    /**
     * {@return the visits of a span of days, by date}
     *
     * @param from its first day
     * @param to its last day
     */
    public List<Visit> visits(LocalDate from, LocalDate to) {
        return VisitStore.visits(database, from, to);
    }

    /**
     * {@return the visit with exactly this label}
     *
     * @param label a label
     */
    public Optional<Visit> visit(String label) {
        return VisitStore.labelled(database, label);
    }

    /**
     * {@return the visit with this key}
     *
     * @param id a key
     */
    public Optional<Visit> visit(UUID id) {
        return VisitStore.VISITS.byId(database, id);
    }

    /**
     * {@return the sightings that meet the query, by date and time}
     *
     * @param query what to look for
     */
    public List<Sighting> sightings(SightingQuery query) {
        List<Sighting> found = new ArrayList<>();
        eachSighting(query, found::add);
        return found;
    }

    /**
     * Hands on the sightings that meet the query one by one, by date and time, however many there are.
     *
     * @param query what to look for
     * @param reader hears each
     */
    public void eachSighting(SightingQuery query, Consumer<? super Sighting> reader) {
        SightingStore.each(database, query, reader);
    }

    /**
     * {@return the sighting with this key}
     *
     * @param id a key
     */
    public Optional<Sighting> sighting(UUID id) {
        return SightingStore.byId(database, id);
    }

    /**
     * {@return the sightings with exactly this label, by date; labels of sightings need not be unique}
     *
     * @param label a label; not blank
     */
    public List<Sighting> sightings(String label) {
        return SightingStore.labelled(database, label);
    }

    /** {@return the nests, by label} */
    public List<Nest> nests() {
        return NestStore.nests(database);
    }

    /**
     * {@return the nest with exactly this label}
     *
     * @param label a label
     */
    public Optional<Nest> nest(String label) {
        return NestStore.labelled(database, label);
    }

    /** {@return the checks of every nest, by date} */
    public List<NestCheck> nestChecks() {
        return NestStore.checks(database);
    }

    /**
     * {@return the checks of one nest, by date}
     *
     * @param nest a nest of the book
     */
    public List<NestCheck> nestChecks(Nest nest) {
        return NestStore.checks(database, nest.id());
    }

    /** {@return the birds with colour rings, by label} */
    public List<RingedBird> ringedBirds() {
        return RingedBirdStore.birds(database);
    }

    /**
     * {@return the ringed bird with exactly this label}
     *
     * @param label a label
     */
    public Optional<RingedBird> ringedBird(String label) {
        return RingedBirdStore.labelled(database, label);
    }

    /** {@return the kick samples, by date} */
    public List<KickSample> kickSamples() {
        return KickSampleStore.samples(database);
    }

    /**
     * {@return the kick sample with exactly this label}
     *
     * @param label a label
     */
    public Optional<KickSample> kickSample(String label) {
        return KickSampleStore.labelled(database, label);
    }

    /** {@return what surveyors decided, season by season, river by river from the mouth up} */
    public List<Decision> decisions() {
        return DecisionStore.decisions(database);
    }

    /**
     * {@return what surveyors decided about one season, river by river from the mouth up}
     *
     * @param species whose territories
     * @param season the year of the season
     */
    public List<Decision> decisions(Species species, int season) {
        return DecisionStore.decisions(database, species, season);
    }

    /** {@return what was sealed, season by season} */
    public List<Seal> seals() {
        return SealStore.seals(database);
    }

    /**
     * {@return what was sealed of one season}
     *
     * @param species whose territories
     * @param season the year of the season
     */
    public Optional<Seal> seal(Species species, int season) {
        return SealStore.seal(database, species, season);
    }

    /** {@return the files that were imported, oldest first} */
    public List<ImportedFile> importedFiles() {
        return ImportedFileStore.files(database);
    }

    /**
     * {@return the imported file with exactly this content, whatever its name}
     *
     * @param sha256 the SHA-256 of its bytes, as 64 lower-case hexadecimal digits
     */
    public Optional<ImportedFile> importedFile(String sha256) {
        return ImportedFileStore.withContent(database, sha256);
    }

    /** {@return the number of the last step of the history; 0 if the book has none} */
    public long lastStep() {
        return new History(database).lastStep();
    }

    /**
     * {@return the records that were added, changed or removed after a step, each once; a sighting also where only a link to
     * another one came or went}
     *
     * @param step number of a step; 0 for the beginning
     * @param most with more changes than this the answer is empty: then it is better to read the book anew
     */
    public Optional<Set<TouchedRecord>> touchedAfter(long step, int most) {
        return new History(database).touchedAfter(step, most);
    }

    /**
     * {@return how the records that later steps touched differ from what they were after a step; those that are again as they
     * were are left out}
     *
     * @param step number of a step; 0 for the beginning
     * @param most with more changes than this the answer is empty
     */
    public Optional<List<ChangedRecord>> changesAfter(long step, int most) {
        return new History(database).changesAfter(step, most, this::record);
    }

    /**
     * {@return a record as it is now; empty if the book has it no more}
     *
     * @param touched which record
     */
    public Optional<Entry> record(TouchedRecord touched) {
        if (touched.type().equals(Sighting.class)) {
            return sighting(touched.id()).map(Entry.class::cast);
        }
        return Schema.of(touched.type()).byId(database, touched.id()).map(Entry.class::cast);
    }

    /**
     * {@return the file and row that a record was imported from; empty if it was made in the program}
     *
     * @param entry a record of the book
     */
    public Optional<Origin> origin(Entry entry) {
        return ImportedFileStore.origin(database, Schema.of(entry).table(), entry.id());
    }

    /**
     * {@return the rows of an imported file whose records are in the book now, edited since or not}
     *
     * @param file a file that was imported
     */
    public BitSet rowsFrom(ImportedFile file) {
        return ImportedFileStore.rows(database, file);
    }

    /**
     * {@return the keys of the records that say exactly the same as this one}, links to simultaneous sightings left out.
     * Fast however large the book is.
     *
     * @param entry a record, of the book or not; its own key does not matter
     */
    public List<UUID> identical(Entry entry) {
        Row wanted = Schema.of(entry).row(entry);
        long fingerprint = wanted.number("fingerprint");
        List<Row> rows = entry instanceof Sighting sighting
                ? SightingStore.withFingerprint(database, sighting, fingerprint)
                : wanted.table().rows(database, "WHERE fingerprint = ?", fingerprint);
        return rows.stream().filter(wanted::saysTheSame).map(Row::id).toList();
    }

    /** {@return whose book each record came from, by its key; the keeper's own records are left out} */
    public Map<UUID, String> owners() {
        return Together.owners(database);
    }

    /**
     * {@return names that may be one person's, then records of two people that may be of one bird or one visit, of which nobody has
     * decided}
     */
    public List<SamePair> openPairs() {
        return Stream.concat(SamePeople.open(database).stream(), SameSeen.open(database).stream())
                .toList();
    }

    /** {@return for each sighting that a person decided to be of the same bird as another, the one that stands for both} */
    public Map<UUID, UUID> sameSightings() {
        return SameSeen.standIns(database, SightingStore.SIGHTINGS.table());
    }

    /** {@return for each visit that a person decided to be the same as another, the one that stands for both} */
    public Map<UUID, UUID> sameVisits() {
        return SameSeen.standIns(database, VisitStore.VISITS.table());
    }

    /** {@return for each name that a person decided to be the same observer's as another, the one that tells most} */
    public Map<String, String> samePeople() {
        return SamePeople.standIns(database);
    }
}
