package org.ouzelbook.tracker.notebook;

import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Keys;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.place.PlaceReading;
import org.ouzelbook.tracker.place.PlaceScan;
import org.ouzelbook.tracker.place.PlaceWords;
import org.ouzelbook.tracker.place.Word;

/** Reads one bird, pair or group from the words of a line. */
final class BirdLine {
    private static final Pattern TIME = Pattern.compile("(\\d{1,2})[:h](\\d{2})|(\\d{2})(\\d{2})h?");
    private static final Pattern RINGS = Pattern.compile("[A-Za-z?@·.\\-]{0,8}/[A-Za-z?@·.\\-/]{0,16}");

    private final LineContext context;
    private final Found found;
    private final Birds birds;
    private final PlacePhrase phrases;
    private Optional<Place> place = Optional.empty();
    private boolean placeAsked;
    private Optional<LocalTime> time = Optional.empty();
    private Optional<Bank> bank = Optional.empty();
    private OptionalDouble uncertainty = OptionalDouble.empty();
    private Optional<BreedingCode> code = Optional.empty();
    private Optional<Chainage> flewTo = Optional.empty();
    private boolean turnedBack;
    private Optional<String> observer = Optional.empty();

    /** Where what is found is gathered. */
    interface Found {
        /** Hears of a part that is understood. */
        void part(Word first, Word last, Message meaning);

        /** Hears of a part that is unclear. */
        void question(Word first, Word last, Message question, List<String> choices);
    }

    BirdLine(LineContext context, Found found) {
        this.context = context;
        this.found = found;
        this.birds = new Birds(found);
        this.phrases = new PlacePhrase(context, found);
    }

    /** {@return whether a text has the form of a ring reading} */
    static boolean isRingReading(String text) {
        return RINGS.matcher(text).matches();
    }

    /** Reads all the words of one bird, pair or group; one word or more. */
    void read(List<Word> words) {
        List<Word> rest = words;
        while (!rest.isEmpty()) {
            rest = rest.subList(step(rest), rest.size());
        }
        if (place.isEmpty() && !placeAsked) {
            ask(words.subList(words.size() - 1, words.size()), "log.noPlace");
        }
        if (birds.lackOne()) {
            ask(words, "log.emptyGroup");
        }
        checkMovement(words);
    }

    /** Reads what the words start with, and returns how many words that was. */
    private int step(List<Word> words) {
        int moved = movement(words);
        if (moved > 0) {
            return moved;
        }
        if (time(words.get(0))) {
            return 1;
        }
        int placed = place.isEmpty() && !placeAsked ? place(words) : 0;
        if (placed > 0) {
            return placed;
        }
        int beside = besides(words);
        if (beside > 0) {
            return beside;
        }
        Optional<Vocabulary.Phrase> phrase = Vocabulary.phrase(words);
        if (phrase.isPresent()) {
            birds.understand(
                    words.subList(0, phrase.get().words()), phrase.get().meaning());
            return phrase.get().words();
        }
        return number(words);
    }

    private void part(List<Word> words, String key, Object... facts) {
        found.part(words.get(0), words.get(words.size() - 1), Message.of(key, facts));
    }

    private void ask(List<Word> words, String key, Object... facts) {
        found.question(words.get(0), words.get(words.size() - 1), Message.of(key, facts), List.of());
    }

    private static String text(List<Word> words) {
        return String.join(" ", words.stream().map(Word::text).toList());
    }

    private int place(List<Word> words) {
        Optional<PlaceScan> scan = phrases.at(place, words);
        if (scan.isEmpty()) {
            return 0;
        }
        List<Word> told = words.subList(0, scan.get().words());
        if (scan.get().reading() instanceof PlaceReading.Found where) {
            place = Optional.of(where.place());
            part(told, "log.part.place", phrases.named(where));
        } else if (scan.get().reading() instanceof PlaceReading.Unclear unclear) {
            placeAsked = true;
            phrases.ask(told, unclear);
        }
        return told.size();
    }

    private boolean time(Word word) {
        Matcher digits = TIME.matcher(word.lower());
        if (!digits.matches()) {
            return false;
        }
        boolean apart = digits.group(1) != null;
        int hour = Integer.parseInt(digits.group(apart ? 1 : 3));
        int minute = Integer.parseInt(digits.group(apart ? 2 : 4));
        if (hour > 23 || minute > 59) {
            ask(List.of(word), "log.noTime", word.text());
        } else if (time.isPresent()) {
            ask(List.of(word), "log.twice", word.text(), Message.of("log.part.time", time.get()));
        } else {
            time = Optional.of(LocalTime.of(hour, minute));
            part(List.of(word), "log.part.time", time.get());
        }
        return true;
    }

    /** Bank, uncertainty, rings, breeding code and observer. */
    private int besides(List<Word> words) {
        Optional<PlaceWords.Told<Bank>> side = PlaceWords.bank(words);
        if (side.isPresent()) {
            List<Word> told = words.subList(0, side.get().words());
            if (bank.isPresent()) {
                ask(told, "log.twice", text(told), Message.of("log.part.bank", bank.get()));
            } else {
                bank = Optional.of(side.get().value());
                part(told, "log.part.bank", side.get().value());
            }
            return told.size();
        }
        Optional<PlaceWords.Told<Double>> metres = PlaceWords.uncertainty(words);
        if (metres.isPresent()) {
            uncertainty = OptionalDouble.of(metres.get().value());
            part(
                    words.subList(0, metres.get().words()),
                    "log.part.uncertainty",
                    metres.get().value());
            return metres.get().words();
        }
        String first = words.get(0).lower();
        if (words.size() > 1
                && List.of("ring", "rings").contains(first)
                && RINGS.matcher(words.get(1).text()).matches()) {
            return rings(words, 2, words.get(1).text());
        }
        if (words.get(0).text().matches(".*[A-Z?].*")
                && RINGS.matcher(words.get(0).text()).matches()) {
            return rings(words, 1, words.get(0).text());
        }
        if (words.size() > 1 && first.equals("code") && words.get(1).text().matches("\\d{1,2}")) {
            int number = Integer.parseInt(words.get(1).text());
            if (number > 16) {
                ask(words.subList(0, 2), "log.noCode", number);
            } else {
                code = Optional.of(new BreedingCode(number));
                part(words.subList(0, 2), "log.part.code", number);
            }
            return 2;
        }
        if (words.size() > 1 && first.equals("by")) {
            observer = Optional.of(words.get(1).text());
            part(words.subList(0, 2), "log.part.observer", words.get(1).text());
            return 2;
        }
        if (words.get(0).text().equals("+")) {
            birds.more();
            part(words.subList(0, 1), "log.part.and");
            return 1;
        }
        return 0;
    }

    private int rings(List<Word> words, int count, String reading) {
        if (!birds.group().rings.isEmpty()) {
            ask(words.subList(0, count), "log.twice", reading, Message.of("log.part.rings", birds.group().rings));
        } else {
            birds.group().rings = reading;
            part(words.subList(0, count), "log.part.rings", reading);
        }
        return count;
    }

    private int number(List<Word> words) {
        Word word = words.get(0);
        if (word.text().matches("\\d{1,2}")) {
            birds.count(List.of(word), Integer.parseInt(word.text()));
            return 1;
        }
        if (word.text().matches("\\d{3}")) {
            found.question(
                    word, word, Message.of("log.number", word.text()), List.of("0" + word.text(), "km " + word.text()));
            return 1;
        }
        Optional<PlaceScan> second = place.isPresent() || placeAsked ? phrases.at(place, words) : Optional.empty();
        if (second.isPresent()) {
            List<Word> told = words.subList(0, second.get().words());
            ask(told, "log.secondPlace", text(told));
            return told.size();
        }
        for (int count = Math.min(3, words.size()); count > 0 && place.isEmpty() && !placeAsked; count--) {
            List<Word> misspelt = words.subList(0, count);
            if (context.places().read(text(misspelt), Optional.empty()) instanceof PlaceReading.Unclear unclear
                    && unclear.question().key().equals("place.unknown.similar")) {
                ask(
                        misspelt,
                        "place.unknown.similar",
                        unclear.question().facts().toArray());
                placeAsked = true;
                return count;
            }
        }
        ask(List.of(word), "log.unknownWord", word.text());
        return 1;
    }

    /** {@code flew up}, {@code flushed down to kirk bridge}, {@code turned back at 8.9}, {@code back at 8.9}, {@code tb 8.9}. */
    private int movement(List<Word> words) {
        String first = words.get(0).lower();
        if (List.of("flew", "flies", "fly", "flying", "flushed").contains(first)) {
            return flight(words);
        }
        int at = first.equals("turned") ? 1 : 0;
        if (at < words.size() && words.get(at).lower().matches("back|tb")) {
            at++;
        }
        if (at == 0) {
            return 0;
        }
        if (at < words.size() && words.get(at).lower().equals("at")) {
            at++;
        }
        int taken = destination(words, at);
        turnedBack = true;
        if (taken == 0) {
            ask(words.subList(0, at), "log.whereBack", text(words.subList(0, at)));
            return at;
        }
        return at + taken;
    }

    private int flight(List<Word> words) {
        int at = words.size() > 1 && words.get(1).lower().equals("off") ? 2 : 1;
        boolean told = false;
        if (at < words.size()) {
            String way = words.get(at).lower();
            boolean up = List.of("up", "upstream", "u/s", "upriver").contains(way);
            if (up || List.of("down", "downstream", "d/s", "downriver").contains(way)) {
                birds.group().activities.add(up ? Activity.FLYING_UP : Activity.FLYING_DOWN);
                at++;
                told = true;
                part(words.subList(0, at), "log.part.word", up ? Activity.FLYING_UP : Activity.FLYING_DOWN);
            }
        }
        if (at < words.size() && words.get(at).lower().equals("to")) {
            int taken = destination(words, at + 1);
            if (taken > 0) {
                return at + 1 + taken;
            }
        }
        if (!told) {
            found.question(
                    words.get(0),
                    words.get(at - 1),
                    Message.of("log.whichWay", text(words.subList(0, at))),
                    List.of("flew up", "flew down"));
        }
        return at;
    }

    /** Reads the place that a bird flew to, from the word at {@code from}; returns how many words told it. */
    private int destination(List<Word> words, int from) {
        Optional<PlaceScan> scan =
                from < words.size() ? phrases.at(place, words.subList(from, words.size())) : Optional.empty();
        if (scan.isEmpty()) {
            return 0;
        }
        List<Word> told = words.subList(from, from + scan.get().words());
        if (scan.get().reading() instanceof PlaceReading.Found where) {
            boolean otherRiver = place.isPresent()
                    && !place.get().riverId().equals(where.place().riverId());
            if (otherRiver) {
                ask(told, "log.flewToOtherRiver", text(told));
            } else if (flewTo.filter(other -> !other.equals(where.place().chainage()))
                    .isPresent()) {
                ask(told, "log.twice", text(told), Message.of("log.part.flewTo", flewTo.get()));
            } else {
                part(
                        words.subList(0, from + told.size()),
                        words.get(0).lower().matches("turned|back|tb") ? "log.part.turnedBack" : "log.part.flewTo",
                        where.place().chainage());
            }
            flewTo = Optional.of(where.place().chainage());
        } else if (scan.get().reading() instanceof PlaceReading.Unclear unclear) {
            phrases.ask(told, unclear);
        }
        return told.size();
    }

    private void checkMovement(List<Word> words) {
        if (place.isEmpty() || flewTo.isEmpty()) {
            return;
        }
        int way = flewTo.get().compareTo(place.get().chainage());
        boolean up = birds.groups().stream().anyMatch(group -> group.activities.contains(Activity.FLYING_UP));
        boolean down = birds.groups().stream().anyMatch(group -> group.activities.contains(Activity.FLYING_DOWN));
        if (!placeAsked && ((up && !down && way < 0) || (down && !up && way > 0))) {
            ask(words, "log.wrongWay", flewTo.get(), up ? Activity.FLYING_UP : Activity.FLYING_DOWN);
        }
    }

    Optional<LocalTime> time() {
        return time;
    }

    Optional<Place> place() {
        return place;
    }

    /** The sightings, one for each group; to be asked only if nothing was unclear. */
    List<Sighting> sightings(Optional<LocalTime> toldTime, Set<UUID> simultaneousWith, String note) {
        Place where = place.orElseThrow();
        Place exactly = new Place(
                where.riverId(),
                where.chainage(),
                bank.orElse(where.bank()),
                uncertainty.orElse(where.uncertaintyMetres()),
                where.lineVersion());
        return birds.groups().stream()
                .map(group -> new Sighting(
                        Keys.next(),
                        "",
                        context.visit().map(Visit::id),
                        context.date(),
                        toldTime,
                        exactly,
                        birds.species().orElse(context.species()),
                        group.birds(),
                        group.toldAge(),
                        group.sex.orElse(Sex.UNKNOWN),
                        group.activities,
                        code,
                        group.rings,
                        simultaneousWith,
                        flewTo,
                        turnedBack,
                        observer.orElse(context.observer()),
                        note))
                .toList();
    }
}
