package org.ouzelbook.tracker.notebook;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.Month;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.Keys;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.TravelMode;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.place.PlaceReading;
import org.ouzelbook.tracker.place.Places;
import org.ouzelbook.tracker.place.Word;

/**
 * Reads the line that opens a visit: {@code visit 11 may otter stone to kirk bridge, upstream, 0700-0935, AB, looking for
 * dipper kingfisher}. Its parts are parted by commas; the first tells the date and the stretch.
 */
public final class VisitLine {
    private static final Pattern DATE = Pattern.compile(
            "(?:(\\d{4}-\\d{2}-\\d{2})|(\\d{1,2})\\s+([a-z]{3,9})\\.?(?:\\s+(\\d{4}))?|(today))(?:\\s+|$)",
            Pattern.CASE_INSENSITIVE);
    private static final Pattern TIMES =
            Pattern.compile("(\\d{1,2}):?(\\d{2})(?:\\s*(?:-|–|to)\\s*(\\d{1,2}):?(\\d{2}))?");
    private static final Pattern INITIALS = Pattern.compile("\\p{Lu}{2,3}(?:\\s*[+&/ ]\\s*\\p{Lu}{2,3})*");

    private final Places places;
    private final LocalDate today;
    private final List<Message> questions = new ArrayList<>();
    private LocalDate date;
    private Optional<UUID> riverId = Optional.empty();
    private Optional<Stretch> walked = Optional.empty();
    private Optional<LocalTime> start = Optional.empty();
    private Optional<LocalTime> end = Optional.empty();
    private Optional<Direction> direction = Optional.empty();
    private Optional<Direction> inferred = Optional.empty();
    private Optional<TravelMode> mode = Optional.empty();
    private final List<String> observers = new ArrayList<>();
    private final Set<Species> lookedFor = new LinkedHashSet<>();
    private String level = "";
    private String weather = "";
    private String note = "";
    private boolean effective = true;

    private VisitLine(Places places, LocalDate today) {
        this.places = places;
        this.today = today;
        this.date = today;
    }

    /**
     * A visit as its line tells it.
     *
     * @param visit the visit, labelled with its date; empty while anything is unclear
     * @param questions what is unclear
     */
    public record Reading(Optional<Visit> visit, List<Message> questions) {
        /** Copies the questions. */
        public Reading {
            questions = List.copyOf(questions);
        }
    }

    /**
     * {@return whether a line opens a visit}
     *
     * @param line a line
     */
    public static boolean opens(String line) {
        return line.strip().toLowerCase(Locale.ROOT).matches("(?s)visit(\\s.*)?");
    }

    /**
     * {@return what the line that opens a visit says}
     *
     * @param line the line, {@code visit} first
     * @param places the rivers and landmarks of the book
     * @param today the date of a visit that names none, and the last date that a day and month without a year may mean
     */
    public static Reading read(String line, Places places, LocalDate today) {
        return new VisitLine(places, today).read(line);
    }

    private Reading read(String line) {
        String text = line.strip().substring("visit".length()).strip();
        int noteStart = text.indexOf('"') >= 0 ? text.indexOf('"') : text.indexOf("//");
        if (noteStart >= 0) {
            note = text.substring(noteStart)
                    .replaceFirst("^(\"|//)", "")
                    .replaceFirst("\"$", "")
                    .strip();
            text = text.substring(0, noteStart);
        }
        List<String> items = Arrays.stream(text.split("\\s*[,;]\\s*(?!\\d+\\s*km)"))
                .map(String::strip)
                .filter(item -> !item.isEmpty())
                .toList();
        boolean looking = false;
        for (int i = 0; i < items.size(); i++) {
            String rest = i == 0 ? withoutDate(items.get(0)) : items.get(i);
            boolean species = looking && species(rest);
            looking = rest.toLowerCase(Locale.ROOT).startsWith("looking for") || species;
            if (!rest.isEmpty() && !species) {
                item(rest);
            }
        }
        if (lookedFor.isEmpty()) {
            questions.add(Message.of("visit.whichBirds"));
        }
        if (riverId.isEmpty() && questions.isEmpty()) {
            questions.add(Message.of("visit.whichStretch"));
        }
        if (start.isPresent() && end.isPresent() && end.get().isBefore(start.get())) {
            questions.add(Message.of("visit.endsBeforeStart", start.get(), end.get()));
        }
        if (direction.isPresent() && inferred.isPresent() && !direction.equals(inferred)) {
            questions.add(Message.of("visit.wrongWay", direction.get(), inferred.get()));
        }
        direction = direction.or(() -> inferred);
        return new Reading(questions.isEmpty() ? Optional.of(visit()) : Optional.empty(), questions);
    }

    private Visit visit() {
        return new Visit(
                Keys.next(),
                date.toString(),
                riverId.orElseThrow(),
                date,
                start,
                end,
                walked,
                direction,
                mode,
                observers,
                List.copyOf(lookedFor),
                level,
                weather,
                effective,
                note);
    }

    private String withoutDate(String item) {
        Matcher told = DATE.matcher(item);
        boolean noMonth = told.lookingAt()
                && told.group(3) != null
                && month(told.group(3)).isEmpty();
        if (noMonth || !told.lookingAt()) {
            return item;
        }
        try {
            if (told.group(1) != null) {
                date = LocalDate.parse(told.group(1));
            } else if (told.group(3) != null) {
                Month month = month(told.group(3)).orElseThrow();
                int day = Integer.parseInt(told.group(2));
                int year = told.group(4) != null ? Integer.parseInt(told.group(4)) : today.getYear();
                date = LocalDate.of(year, month, day);
                if (told.group(4) == null && date.isAfter(today)) {
                    date = LocalDate.of(year - 1, month, day);
                }
            }
        } catch (DateTimeException e) {
            questions.add(Message.of("visit.noDate", told.group().strip()));
        }
        if (date.isAfter(today)) {
            questions.add(Message.of("visit.future", date));
        }
        return item.substring(told.end()).strip();
    }

    private static Optional<Month> month(String text) {
        String lower = text.toLowerCase(Locale.ROOT);
        return Arrays.stream(Month.values())
                .filter(month -> month.name().toLowerCase(Locale.ROOT).startsWith(lower) && lower.length() >= 3)
                .findFirst();
    }

    private void item(String item) {
        String lower = item.toLowerCase(Locale.ROOT);
        Matcher times = TIMES.matcher(item);
        if (lower.matches("upstream|up|u/s")) {
            direction = Optional.of(Direction.UPSTREAM);
        } else if (lower.matches("downstream|down|d/s")) {
            direction = Optional.of(Direction.DOWNSTREAM);
        } else if (lower.matches("(on |by )?foot|(by )?canoe|(by )?kayak")) {
            mode = Optional.of(lower.endsWith("foot") ? TravelMode.FOOT : TravelMode.CANOE);
        } else if (times.matches()) {
            start = time(times.group(1), times.group(2), item);
            end = times.group(3) == null ? Optional.empty() : time(times.group(3), times.group(4), item);
        } else if (lower.startsWith("looking for")) {
            String birds = item.substring("looking for".length()).strip();
            if (!species(birds)) {
                questions.add(Message.of("visit.unknownBird", birds, Species.all()));
            }
        } else if (lower.startsWith("by ")) {
            observers.add(item.substring(3).strip());
        } else if (INITIALS.matcher(item).matches()) {
            observers.addAll(List.of(item.split("[^\\p{Lu}]+")));
        } else if (lower.startsWith("level ")) {
            level = item.substring(6).strip();
        } else if (lower.startsWith("weather ")) {
            weather = item.substring(8).strip();
        } else if (lower.equals("not effective")) {
            effective = false;
        } else if (walked.isEmpty()) {
            stretch(item);
        } else {
            questions.add(Message.of("visit.unknownPart", item));
        }
    }

    private Optional<LocalTime> time(String hour, String minute, String item) {
        try {
            return Optional.of(LocalTime.of(Integer.parseInt(hour), Integer.parseInt(minute)));
        } catch (DateTimeException e) {
            questions.add(Message.of("log.noTime", item));
            return Optional.empty();
        }
    }

    private boolean species(String text) {
        Set<Species> named = new LinkedHashSet<>();
        List<Word> words = Word.of(text);
        int at = 0;
        while (at < words.size()) {
            if (words.get(at).lower().matches("and|&|\\+")) {
                at++;
                continue;
            }
            Optional<Vocabulary.Phrase> phrase = Vocabulary.phrase(words.subList(at, words.size()));
            if (phrase.isEmpty() || !(phrase.get().meaning() instanceof Vocabulary.Meaning.Named bird)) {
                return false;
            }
            named.add(bird.species());
            at += phrase.get().words();
        }
        lookedFor.addAll(named);
        return !named.isEmpty();
    }

    private void stretch(String item) {
        String bare = item.replaceFirst("(?i)^from\\s+", "");
        Matcher kmRange = Pattern.compile("(?i)(.*?)(\\d+(?:[.,]\\d+)?)\\s*[-–]\\s*(\\d+(?:[.,]\\d+)?)(?:\\s*km)?")
                .matcher(bare);
        String[] ends = kmRange.matches()
                ? new String[] {kmRange.group(1) + kmRange.group(2), kmRange.group(1) + kmRange.group(3)}
                : bare.split("(?i)\\s+(?:to|–|-)\\s+", 2);
        if (ends.length < 2) {
            boolean oneEnd = places.read(bare, Optional.empty()) instanceof PlaceReading.Found;
            questions.add(oneEnd ? Message.of("visit.otherEnd", bare) : Message.of("visit.unknownPart", item));
            return;
        }
        Optional<Place> from = place(ends[0], Optional.empty());
        Optional<Place> to = from.isEmpty() ? Optional.empty() : place(ends[1], from.map(Place::riverId));
        if (from.isEmpty() || to.isEmpty()) {
            return;
        }
        riverId = Optional.of(from.get().riverId());
        walked = Optional.of(Stretch.between(from.get().chainage(), to.get().chainage()));
        Direction told =
                from.get().chainage().compareTo(to.get().chainage()) <= 0 ? Direction.UPSTREAM : Direction.DOWNSTREAM;
        inferred = Optional.of(told);
    }

    private Optional<Place> place(String text, Optional<UUID> river) {
        PlaceReading reading = places.read(text.matches("\\d+") ? "km " + text : text, river);
        if (reading instanceof PlaceReading.Found found) {
            return Optional.of(found.place());
        }
        questions.add(((PlaceReading.Unclear) reading).question());
        return Optional.empty();
    }
}
