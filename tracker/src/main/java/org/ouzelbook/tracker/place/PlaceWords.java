package org.ouzelbook.tracker.place;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.Bank;

/** Words that go with a place: banks, plus or minus, metres, upstream and downstream. */
public final class PlaceWords {
    private static final Map<String, Bank> BANKS = Map.ofEntries(
            Map.entry("lb", Bank.LEFT),
            Map.entry("left bank", Bank.LEFT),
            Map.entry("left", Bank.LEFT),
            Map.entry("true left", Bank.LEFT),
            Map.entry("rb", Bank.RIGHT),
            Map.entry("right bank", Bank.RIGHT),
            Map.entry("right", Bank.RIGHT),
            Map.entry("true right", Bank.RIGHT),
            Map.entry("channel", Bank.CHANNEL),
            Map.entry("in channel", Bank.CHANNEL),
            Map.entry("midstream", Bank.CHANNEL),
            Map.entry("mid stream", Bank.CHANNEL),
            Map.entry("mid", Bank.CHANNEL));
    private static final List<String> UPSTREAM = List.of("above", "upstream", "u/s", "up");
    private static final List<String> DOWNSTREAM = List.of("below", "downstream", "d/s", "down");
    private static final Pattern METRES = Pattern.compile("(\\d{1,5}(?:[.,]\\d+)?)(m|metres?|meters?)?");
    private static final Pattern PLUS_MINUS = Pattern.compile("(?:±|\\+-|\\+/-|\\+/−)(.*)");

    private PlaceWords() {}

    /**
     * Something told by the first words.
     *
     * @param <T> what it is
     * @param words how many words told it
     * @param value what they mean
     */
    public record Told<T>(int words, T value) {}

    /**
     * {@return the bank that the first words name: {@code LB}, {@code right bank}, {@code true left}, {@code mid-stream}}
     *
     * @param words the words, from the bank on
     */
    public static Optional<Told<Bank>> bank(List<Word> words) {
        for (int count = Math.min(2, words.size()); count > 0; count--) {
            Bank bank = BANKS.get(Word.plain(Word.joined(words.subList(0, count))));
            if (bank != null) {
                return Optional.of(new Told<>(count, bank));
            }
        }
        return Optional.empty();
    }

    /**
     * {@return the uncertainty in metres that the first words give: {@code ± 50 m}, {@code +-50m}; positive}
     *
     * @param words the words, from the sign on
     */
    public static Optional<Told<Double>> uncertainty(List<Word> words) {
        if (words.isEmpty()) {
            return Optional.empty();
        }
        Matcher sign = PLUS_MINUS.matcher(words.get(0).lower());
        if (!sign.matches()) {
            return Optional.empty();
        }
        boolean apart = sign.group(1).isEmpty();
        List<Word> rest = words.subList(1, words.size());
        Optional<Told<Double>> metres = apart ? metres(rest) : metres(glued(sign.group(1), words.get(0), rest));
        return metres.filter(told -> told.value > 0).map(told -> new Told<>(told.words + (apart ? 1 : 0), told.value));
    }

    private static List<Word> glued(String text, Word source, List<Word> rest) {
        Word[] all = new Word[rest.size() + 1];
        all[0] = new Word(text, source.from(), source.to());
        for (int i = 0; i < rest.size(); i++) {
            all[i + 1] = rest.get(i);
        }
        return Arrays.asList(all);
    }

    /** {@return the metres that the first words give, with or without the unit: {@code 150 m}, {@code 150m}, {@code 150}} */
    static Optional<Told<Double>> metres(List<Word> words) {
        if (words.isEmpty()) {
            return Optional.empty();
        }
        Matcher number = METRES.matcher(words.get(0).lower());
        if (!number.matches()) {
            return Optional.empty();
        }
        double metres = Double.parseDouble(number.group(1).replace(',', '.'));
        boolean unitFollows = number.group(2) == null
                && words.size() > 1
                && isMetres(words.get(1).lower());
        return Optional.of(new Told<>(unitFollows ? 2 : 1, metres));
    }

    /** {@return metres upstream with the sign apart and the unit written, {@code + 50 m}: without it, {@code + 3} counts birds} */
    static Optional<Told<Double>> signed(List<Word> words) {
        boolean sign = words.size() > 1 && words.get(0).text().matches("[-+−]");
        Optional<Told<Double>> metres = sign ? metres(words.subList(1, words.size())) : Optional.empty();
        return metres.filter(told -> words.get(told.words).lower().matches("\\d*[.,]?\\d*m|metres?|meters?"))
                .map(told -> new Told<>(told.words + 1, words.get(0).text().equals("+") ? told.value : -told.value));
    }

    private static boolean isMetres(String word) {
        return word.matches("m|metres?|meters?");
    }

    /** {@return +1 or −1 for the first words that say above or below, with the {@code of} or {@code from} after them} */
    static OptionalDouble side(Word word) {
        if (UPSTREAM.contains(word.lower())) {
            return OptionalDouble.of(1);
        }
        return DOWNSTREAM.contains(word.lower()) ? OptionalDouble.of(-1) : OptionalDouble.empty();
    }

    static boolean isOf(Word word) {
        return List.of("of", "from", "the").contains(word.lower());
    }
}
