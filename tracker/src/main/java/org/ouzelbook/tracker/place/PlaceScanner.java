package org.ouzelbook.tracker.place;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.grid.GridReference;
import org.ouzelbook.tracker.grid.GridSquare;
import org.ouzelbook.tracker.place.PlaceReading.Found;
import org.ouzelbook.tracker.place.PlaceReading.Unclear;
import org.ouzelbook.tracker.place.PlaceWords.Told;

/** Reads a place from words. */
final class PlaceScanner {
    private static final Pattern MARKED_KM =
            Pattern.compile("km(\\d{1,4}(?:[.,](\\d{1,3}))?)|(\\d{1,4}(?:[.,](\\d{1,3}))?)km");
    private static final Pattern KM = Pattern.compile("\\d{1,4}(?:[.,](\\d{1,3}))?");
    private static final Pattern BARE_KM = Pattern.compile("\\d{1,4}[.,](\\d{1,3})");
    private static final Pattern DEGREES =
            Pattern.compile("([NSEW])?([-+−]?\\d{1,3}(?:[.,]\\d+)?)°?([NSEW])?", Pattern.CASE_INSENSITIVE);
    private static final Pattern OFFSET = Pattern.compile("([-+−])(\\d{1,5})(m?)");

    private static final int MOST_GRID_WORDS = 4;

    private final Places places;

    PlaceScanner(Places places) {
        this.places = places;
    }

    PlaceReading whole(String text, Optional<UUID> riverId) {
        List<Word> words = Word.of(text);
        if (words.isEmpty()) {
            return Unclear.of("place.empty");
        }
        List<Word> rest = words;
        Optional<Told<Bank>> bank = PlaceWords.bank(rest);
        if (bank.isPresent()) {
            rest = after(rest, bank.get().words());
        }
        Optional<PlaceScan> scan = scan(rest, riverId, word -> false);
        if (scan.isEmpty()) {
            return places.unknown(text.strip());
        }
        PlaceReading reading = scan.get().reading();
        if (bank.isPresent()) {
            reading = reading.withBank(bank.get().value());
        }
        rest = after(rest, scan.get().words());
        while (!rest.isEmpty()) {
            Optional<Told<Bank>> laterBank = PlaceWords.bank(rest);
            Optional<Told<Double>> uncertainty = PlaceWords.uncertainty(rest);
            if (laterBank.isPresent()) {
                reading = reading.withBank(laterBank.get().value());
                rest = after(rest, laterBank.get().words());
            } else if (uncertainty.isPresent()) {
                reading = reading.withUncertainty(uncertainty.get().value());
                rest = after(rest, uncertainty.get().words());
            } else {
                return reading instanceof Found
                        ? Unclear.of("place.leftover", text.strip(), rest.get(0).text())
                        : places.unknown(text.strip());
            }
        }
        return reading;
    }

    private static List<Word> after(List<Word> words, int count) {
        return words.subList(count, words.size());
    }

    Optional<PlaceScan> scan(List<Word> words, Optional<UUID> riverId, Predicate<String> meansSomethingElse) {
        if (words.isEmpty()) {
            return Optional.empty();
        }
        return onNamedRiver(words)
                .or(() -> coordinates(words, riverId))
                .or(() -> gridReference(words, riverId))
                .or(() -> km(words, riverId))
                .or(() -> offsetFirst(words, riverId, meansSomethingElse))
                .or(() -> landmarkFirst(words, riverId, meansSomethingElse));
    }

    /** {@code Sorn Beck km 0.3}. */
    private Optional<PlaceScan> onNamedRiver(List<Word> words) {
        for (int count = words.size() - 1; count > 0; count--) {
            String name = Word.plain(Word.joined(words.subList(0, count)));
            for (River river : places.network().rivers()) {
                if (Word.plain(river.name()).equals(name)) {
                    int taken = count;
                    return km(after(words, count), Optional.of(river.id()))
                            .map(scan -> new PlaceScan(scan.words() + taken, scan.reading()));
                }
            }
        }
        return Optional.empty();
    }

    private Optional<PlaceScan> km(List<Word> words, Optional<UUID> riverId) {
        String first = words.get(0).lower();
        Matcher marked = MARKED_KM.matcher(first);
        if (marked.matches()) {
            int group = marked.group(1) != null ? 1 : 3;
            return Optional.of(km(1, words, marked.group(group), marked.group(group + 1), riverId));
        }
        Matcher bare = BARE_KM.matcher(first);
        boolean unitFollows = words.size() > 1 && words.get(1).lower().equals("km");
        Matcher number = KM.matcher(first);
        if (number.matches() && (unitFollows || bare.matches())) {
            return Optional.of(km(unitFollows ? 2 : 1, words, first, number.group(1), riverId));
        }
        if (first.equals("km") && words.size() > 1) {
            Matcher second = KM.matcher(words.get(1).lower());
            if (second.matches()) {
                return Optional.of(km(2, words, second.group(), second.group(1), riverId));
            }
        }
        return Optional.empty();
    }

    private PlaceScan km(
            int taken, List<Word> words, String number, @Nullable String fraction, Optional<UUID> riverId) {
        double km = Double.parseDouble(number.replace(',', '.'));
        int decimals = fraction == null ? 0 : fraction.length();
        List<River> rivers = places.network().rivers();
        if (riverId.isPresent() || rivers.size() == 1) {
            UUID river = riverId.orElseGet(() -> rivers.get(0).id());
            return new PlaceScan(taken, places.atKm(river, km, decimals));
        }
        List<Found> choices = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (River river : rivers) {
            if (places.atKm(river.id(), km, decimals) instanceof Found found) {
                choices.add(found);
                names.add(river.name());
            }
        }
        String text = Word.joined(words.subList(0, taken));
        Message question =
                choices.isEmpty() ? Message.of("place.kmOnNoRiver", text) : Message.of("place.whichRiver", text, names);
        return new PlaceScan(taken, new Unclear(question, choices));
    }

    /** {@code 52.104, -3.412}, {@code 52.104N 3.412W}: two numbers of three decimals or more, or with N, S, E or W. */
    private Optional<PlaceScan> coordinates(List<Word> words, Optional<UUID> riverId) {
        if (words.size() < 2) {
            return Optional.empty();
        }
        Matcher latitude = DEGREES.matcher(words.get(0).text());
        Matcher longitude = DEGREES.matcher(words.get(1).text());
        if (!latitude.matches() || !longitude.matches()) {
            return Optional.empty();
        }
        String north = letters(latitude);
        String east = letters(longitude);
        boolean lettered = north.matches("[NS]") && east.matches("[EW]");
        boolean bare = north.isEmpty() && east.isEmpty() && isFine(latitude) && isFine(longitude);
        if (!lettered && !bare) {
            return Optional.empty();
        }
        double degreesNorth = degrees(latitude) * (north.equals("S") ? -1 : 1);
        double degreesEast = degrees(longitude) * (east.equals("W") ? -1 : 1);
        if (Math.abs(degreesNorth) > 90 || Math.abs(degreesEast) > 180) {
            String text = Word.joined(words.subList(0, 2));
            return Optional.of(new PlaceScan(2, Unclear.of("place.noCoordinates", text)));
        }
        GeoPoint ground = new GeoPoint(degreesNorth, degreesEast);
        return Optional.of(new PlaceScan(2, places.atPoint(ground, OptionalDouble.empty(), riverId)));
    }

    /** {@code NY 215 072}, {@code ny215072}, {@code 30U VF 4500 4000}: up to four words, 100 m or better. */
    private Optional<PlaceScan> gridReference(List<Word> words, Optional<UUID> riverId) {
        for (int count = Math.min(MOST_GRID_WORDS, words.size()); count > 0; count--) {
            Optional<GridSquare> square = GridReference.amongWords(Word.joined(words.subList(0, count)));
            if (square.isPresent()) {
                return Optional.of(new PlaceScan(count, places.atSquare(square.get(), riverId)));
            }
        }
        return Optional.empty();
    }

    private static String letters(Matcher degrees) {
        String before = degrees.group(1) == null ? "" : degrees.group(1);
        String after = degrees.group(3) == null ? "" : degrees.group(3);
        return (before + after).toUpperCase(Locale.ROOT);
    }

    private static boolean isFine(Matcher degrees) {
        return degrees.group(2).matches("[-+−]?\\d+[.,]\\d{3,}");
    }

    private static double degrees(Matcher degrees) {
        return Double.parseDouble(degrees.group(2).replace(',', '.').replace('−', '-'));
    }

    /** {@code 150 m below Mill Bridge}, {@code below Mill Bridge}. */
    private Optional<PlaceScan> offsetFirst(
            List<Word> words, Optional<UUID> riverId, Predicate<String> meansSomethingElse) {
        Optional<Told<Double>> metres = PlaceWords.metres(words);
        int taken = metres.map(Told::words).orElse(0);
        if (taken >= words.size() || PlaceWords.side(words.get(taken)).isEmpty()) {
            return Optional.empty();
        }
        double side = PlaceWords.side(words.get(taken)).getAsDouble();
        taken++;
        while (taken < words.size() && PlaceWords.isOf(words.get(taken))) {
            taken++;
        }
        List<Word> rest = after(words, taken);
        LandmarkNames.Match match = landmark(rest, meansSomethingElse);
        if (match.words() == 0) {
            return Optional.empty();
        }
        int all = taken + match.words();
        String name = Word.joined(rest.subList(0, match.words()));
        return Optional.of(new PlaceScan(
                all,
                metres.isPresent()
                        ? places.among(
                                name, match.landmarks(), side * metres.get().value(), riverId)
                        : Unclear.of("place.howFar", Word.joined(words.subList(0, all)))));
    }

    /** {@code otter stone}, {@code otter stone +50}, {@code otter stone 50 m above}. */
    private Optional<PlaceScan> landmarkFirst(
            List<Word> words, Optional<UUID> riverId, Predicate<String> meansSomethingElse) {
        LandmarkNames.Match match = landmark(words, meansSomethingElse);
        if (match.words() == 0) {
            return Optional.empty();
        }
        Told<Double> offset = offset(after(words, match.words()));
        List<Landmark> named = match.landmarks();
        String name = Word.joined(words.subList(0, match.words()));
        return Optional.of(
                new PlaceScan(match.words() + offset.words(), places.among(name, named, offset.value(), riverId)));
    }

    private LandmarkNames.Match landmark(List<Word> words, Predicate<String> meansSomethingElse) {
        LandmarkNames.Match whole = places.landmarkNames().whole(words);
        return whole.words() > 0 ? whole : places.landmarkNames().beginning(words, meansSomethingElse);
    }

    private static Told<Double> offset(List<Word> words) {
        if (words.isEmpty()) {
            return new Told<>(0, 0.0);
        }
        Matcher signed = OFFSET.matcher(words.get(0).lower());
        if (signed.matches()) {
            double metres =
                    Double.parseDouble(signed.group(2)) * (signed.group(1).equals("+") ? 1 : -1);
            boolean unitFollows = signed.group(3).isEmpty()
                    && words.size() > 1
                    && words.get(1).lower().equals("m");
            return new Told<>(unitFollows ? 2 : 1, metres);
        }
        Optional<Told<Double>> apart = PlaceWords.signed(words);
        if (apart.isPresent()) {
            return apart.get();
        }
        Optional<Told<Double>> metres = PlaceWords.metres(words);
        if (metres.isPresent() && metres.get().words() < words.size()) {
            OptionalDouble side = PlaceWords.side(words.get(metres.get().words()));
            if (side.isPresent()) {
                return new Told<>(metres.get().words() + 1, metres.get().value() * side.getAsDouble());
            }
        }
        return new Told<>(0, 0.0);
    }
}
