package org.ouzelbook.ui.app.leak;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.BookView;
import org.ouzelbook.ui.app.BookRecords;

/**
 * Tries to find the nests, rings, people and notes of a book in files that are meant for everybody: by coordinates, by river km, by
 * words, by keys, by a landmark beside a word for a nest, by stretches too small to hide a pair, and by what two files tell together.
 * It is the last look before a file goes out, and no proof: it finds what can be read in a file, not what a person can work out.
 */
public final class LeakCheck {
    private static final Pattern KEY =
            Pattern.compile("(?i)\\b[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}\\b");

    private static final int MOST_OF_A_KIND = 50;

    private final NestPlaces places;
    private final CountedWaters waters;
    private final CoordinateSearch coordinates;
    private final KmSearch kilometres;
    private final GridSearch grids;
    private final OffsetSearch offsets;
    private final PrivateText words = new PrivateText();
    private final Set<UUID> keys = new HashSet<>();
    private final LandmarkSearch landmarks = new LandmarkSearch();

    private LeakCheck(SurveyRecords records, boolean peopleAgreed) {
        places = new NestPlaces(records);
        waters = new CountedWaters(records);
        coordinates = new CoordinateSearch(places);
        kilometres = new KmSearch(places);
        grids = new GridSearch(places);
        offsets = new OffsetSearch(places, records.landmarks());
        learnPublic(records);
        learnNames(records, peopleAgreed);
        learnNotes(records);
        learnKeys(records);
    }

    /**
     * {@return what looks for the secrets of these records}
     *
     * @param records every record of a book
     * @param peopleAgreed whether the people in it agreed to be named
     */
    public static LeakCheck of(SurveyRecords records, boolean peopleAgreed) {
        return new LeakCheck(records, peopleAgreed);
    }

    /**
     * {@return what looks for the secrets of a book}
     *
     * @param view the book
     * @param peopleAgreed whether the people in it agreed to be named
     */
    public static LeakCheck of(BookView view, boolean peopleAgreed) {
        return of(view, BookRecords.asWritten(view), peopleAgreed);
    }

    /**
     * {@return what looks for the secrets of a book}
     *
     * @param view the book
     * @param written its records as they were written
     * @param peopleAgreed whether the people in it agreed to be named
     */
    public static LeakCheck of(BookView view, SurveyRecords written, boolean peopleAgreed) {
        LeakCheck check = new LeakCheck(written, peopleAgreed);
        if (!peopleAgreed) {
            view.samePeople().values().forEach(check.words::addPerson);
        }
        return check;
    }

    private void learnPublic(SurveyRecords records) {
        words.addPublic(records.rivers().rivers().stream().map(River::name).toList());
        words.addPublic(records.reaches().stream().map(Reach::name).toList());
        for (Species species : Species.all()) {
            words.addPublic(List.of(species.englishName(), species.scientificName()));
        }
        for (Landmark landmark : records.landmarks()) {
            words.addPublic(List.of(landmark.name()));
            words.addPublic(landmark.aliases());
            boolean hasNests = landmark.nestSite() || places.hasNestAt(landmark.place());
            landmarks.add(landmark.name(), hasNests);
            landmark.aliases().forEach(alias -> landmarks.add(alias, hasNests));
        }
    }

    private void learnNames(SurveyRecords records, boolean peopleAgreed) {
        records.nests().forEach(nest -> words.addName(nest.label()));
        records.ringedBirds().forEach(bird -> {
            words.addName(bird.label());
            words.addName(bird.ring());
        });
        records.sightings().stream()
                .map(sighting -> sighting.rings())
                .distinct()
                .forEach(words::addName);
        if (!peopleAgreed) {
            Set<String> people = new HashSet<>();
            records.sightings().forEach(sighting -> people.add(sighting.observer()));
            records.visits().forEach(visit -> people.addAll(visit.observers()));
            records.kickSamples().forEach(sample -> people.add(sample.sampler()));
            records.decisions().forEach(decision -> people.add(decision.by()));
            people.forEach(words::addPerson);
        }
    }

    private void learnNotes(SurveyRecords records) {
        Set<String> notes = new HashSet<>();
        records.visits().forEach(visit -> notes.add(visit.note()));
        records.sightings().forEach(sighting -> notes.add(sighting.note()));
        records.nests().forEach(nest -> notes.add(nest.note()));
        records.nestChecks().forEach(check -> {
            notes.add(check.note());
            notes.add(check.stageText());
        });
        records.ringedBirds().forEach(bird -> notes.add(bird.note()));
        records.kickSamples().forEach(sample -> notes.add(sample.note()));
        records.decisions().forEach(decision -> decision.note().ifPresent(notes::add));
        notes.forEach(words::addNote);
    }

    private void learnKeys(SurveyRecords records) {
        records.visits().forEach(visit -> keys.add(visit.id()));
        records.sightings().forEach(sighting -> keys.add(sighting.id()));
        records.nests().forEach(nest -> keys.add(nest.id()));
        records.nestChecks().forEach(check -> keys.add(check.id()));
        records.ringedBirds().forEach(bird -> keys.add(bird.id()));
        records.kickSamples().forEach(sample -> keys.add(sample.id()));
        records.decisions().forEach(decision -> keys.add(decision.id()));
    }

    /**
     * {@return what a file tells that it must not; at most fifty of a kind, each secret once}
     *
     * @param file its name
     * @param content its bytes
     * @throws IOException if it cannot be taken apart
     * @throws org.ouzelbook.ui.app.WrongRequest if it unpacks to an absurd size
     */
    public List<Leak> in(String file, byte[] content) throws IOException {
        return in(file, content, Progress.NONE);
    }

    /**
     * {@return what a file tells that it must not; at most fifty of a kind, each secret once}
     *
     * @param file its name
     * @param content its bytes
     * @param progress hears how far the look has come
     * @throws IOException if it cannot be taken apart
     * @throws java.util.concurrent.CancellationException if it is stopped
     * @throws org.ouzelbook.ui.app.WrongRequest if it unpacks to an absurd size
     */
    public List<Leak> in(String file, byte[] content, Progress progress) throws IOException {
        return in(file, LongBytes.of(content), progress);
    }

    /** {@return what a file tells that it must not} */
    List<Leak> in(String file, LongBytes content, Progress progress) throws IOException {
        return look(file, content, progress).leaks();
    }

    /**
     * {@return what files tell that they must not, each for itself and any two together}
     *
     * @param files their bytes, by name
     * @throws IOException if one cannot be taken apart
     * @throws org.ouzelbook.ui.app.WrongRequest if one unpacks to an absurd size
     */
    public List<Leak> in(Map<String, byte[]> files) throws IOException {
        Together together = new Together();
        for (Map.Entry<String, byte[]> file : files.entrySet()) {
            together.add(look(file.getKey(), LongBytes.of(file.getValue()), Progress.NONE));
        }
        return List.copyOf(together.found);
    }

    /**
     * {@return what files tell that they must not, each for itself and any two together}
     *
     * @param files the files
     * @param progress hears how far the look has come
     * @throws IOException if one cannot be read or taken apart
     * @throws java.util.concurrent.CancellationException if it is stopped
     * @throws org.ouzelbook.ui.app.WrongRequest if one unpacks to an absurd size
     */
    public List<Leak> in(Collection<Path> files, Progress progress) throws IOException {
        Together together = new Together();
        int done = 0;
        for (Path file : files) {
            try (LongBytes content = LongBytes.of(file)) {
                double begin = (double) done++ / files.size();
                together.add(look(file.toString(), content, progress.part(begin, (double) done / files.size())));
            }
        }
        return List.copyOf(together.found);
    }

    /** What looks through several files found. */
    private static final class Together {
        private final List<Leak> found = new ArrayList<>();
        private final Map<String, Set<StretchSearch.Told>> told = new LinkedHashMap<>();

        void add(Look look) {
            found.addAll(look.leaks());
            told.forEach((earlier, stretches) -> together(earlier, stretches, look.file, look.told, found));
            told.put(look.file, look.told);
        }
    }

    /**
     * {@return what a count of birds on a reach tells that it must not, by itself or beside the counts of the book’s other waters}
     *
     * @param file what the count is to stand in
     * @param reach the reach’s name
     */
    public List<Leak> ofReach(String file, String reach) {
        return List.copyOf(waters.leaks(file, reach));
    }

    private static void together(
            String one, Set<StretchSearch.Told> first, String other, Set<StretchSearch.Told> second, List<Leak> found) {
        for (StretchSearch.Told here : first) {
            for (StretchSearch.Told there : second) {
                Optional<StretchSearch.Told> piece = here.piece(there);
                if (piece.isPresent()) {
                    found.add(new Leak(
                            other,
                            "",
                            0,
                            Leak.Kind.DIFFERENCE,
                            Message.of(
                                    "leak.difference",
                                    one,
                                    Math.round((piece.get().toKm() - piece.get().fromKm()) * 1000))));
                    return;
                }
            }
        }
    }

    private Look look(String file, LongBytes content, Progress progress) throws IOException {
        LookProgress looked = new LookProgress(progress, content.size());
        Look look = new Look(file, looked);
        new FileParts(look, looked).read(file, content);
        return look;
    }

    /** One look through one file. */
    private final class Look implements FileParts.Reader {
        private final String file;
        private final LookProgress looked;
        private final Map<String, Leak> found = new LinkedHashMap<>();
        private final Map<Leak.Kind, Integer> counts = new LinkedHashMap<>();
        private final Set<StretchSearch.Told> told = new LinkedHashSet<>();

        private Look(String file, LookProgress looked) {
            this.file = file;
            this.looked = looked;
        }

        private List<Leak> leaks() {
            return List.copyOf(found.values());
        }

        private void add(Leak.Kind kind, String secret, String part, int line, Message what) {
            if (!found.containsKey(kind + secret) && counts.merge(kind, 1, Integer::sum) <= MOST_OF_A_KIND) {
                found.put(kind + secret, new Leak(file, part, line, kind, what));
            }
        }

        @Override
        public void bytes(String where, byte[] bytes) {
            coordinates.inBytes(bytes, false, (at, nest) -> addPlace(where, 0, nest));
        }

        @Override
        public void remains(String where, byte[] bytes) {
            coordinates.inBytes(bytes, true, (at, nest) -> addPlace(where, 0, nest));
        }

        /** Each search goes through the text from its beginning to its end and holds only the few words or figures that it is at. */
        @Override
        public void text(String where, CharSequence written) throws IOException {
            try (Scratch scratch = new Scratch(looked)) {
                CharSequence withKeys = Spelling.decoded(written, scratch);
                // the letters and digits of a key happen to read as degrees, minutes and a side
                CharSequence text = withoutKeys(withKeys, scratch);
                Lines lines = new Lines(text);
                coordinates.inText(text, (at, nest) -> addPlace(where, lines.of(at), nest));
                looked.searched();
                grids.inText(text, (at, nest) -> addPlace(where, lines.of(at), nest));
                kilometres.inText(text, (at, nest) -> addKm(where, lines.of(at), nest));
                looked.searched();
                words(where, PlainWords.of(text, scratch), scratch);
                words(where, PlainWords.asRead(text, scratch), scratch);
                keys(where, withKeys, lines);
                looked.searched();
            }
            StretchSearch.table(written, (line, header, row) -> row(where, line, header, row));
            StretchSearch.features(written, (line, header, row) -> row(where, line, header, row));
            looked.searched();
        }

        private CharSequence withoutKeys(CharSequence text, Scratch scratch) throws IOException {
            return scratch.replaced(
                    text, KEY, key -> "\u001f".repeat(key.group().length()));
        }

        private void addPlace(String where, int line, NestPlaces.Nest nest) {
            add(
                    Leak.Kind.COORDINATES,
                    nest.label(),
                    where,
                    line,
                    Message.of("leak.coordinates", shortened(nest.label())));
        }

        private void words(String where, CharSequence text, Scratch scratch) throws IOException {
            CharSequence plain = withoutKeys(Spelling.folded(text, scratch), scratch);
            Lines lines = new Lines(plain);
            words.in(
                    plain,
                    (at, name) ->
                            add(Leak.Kind.NAME, name, where, lines.of(at), Message.of("leak.name", shortened(name))),
                    (at, first) -> add(
                            Leak.Kind.NOTE,
                            where + lines.of(at),
                            where,
                            lines.of(at),
                            Message.of("leak.note", shortened(first))));
            looked.searched();
            landmarks.in(
                    plain,
                    (at, landmark, nestWord, inItsName) -> add(
                            Leak.Kind.LANDMARK,
                            landmark,
                            where,
                            lines.of(at),
                            Message.of(inItsName ? "leak.landmark.named" : "leak.landmark", landmark, nestWord)));
            offsets.inText(plain, (at, nest) -> addKm(where, lines.of(at), nest));
            looked.searched();
        }

        private void addKm(String where, int line, NestPlaces.Nest nest) {
            add(Leak.Kind.RIVER_KM, nest.label(), where, line, Message.of("leak.km", shortened(nest.label())));
        }

        private void keys(String where, CharSequence text, Lines lines) {
            Matcher key = KEY.matcher(text);
            while (key.find()) {
                if (keys.contains(UUID.fromString(key.group()))) {
                    add(
                            Leak.Kind.KEY,
                            key.group(),
                            where,
                            lines.of(key.start()),
                            Message.of("leak.key", key.group().substring(0, 4)));
                }
            }
        }

        private void row(String where, int line, List<String> header, List<String> row) {
            kilometres.inTable(header, row, (column, nest) -> addKm(where, line, nest));
            coordinates.inTable(header, row, (column, nest) -> addPlace(where, line, nest));
            StretchSearch.told(header, row).ifPresent(stretch -> {
                told.add(stretch);
                if (stretch.isTooSmall()) {
                    add(
                            Leak.Kind.SMALL_STRETCH,
                            stretch.toString(),
                            where,
                            line,
                            Message.of("leak.small", Math.round((stretch.toKm() - stretch.fromKm()) * 1000)));
                }
            });
        }
    }

    /** {@return enough of a secret to find it by, for one who knows it} */
    private static String shortened(String secret) {
        return secret.substring(0, Math.min(1, secret.length())) + "…";
    }
}
