package org.ouzelbook.ui.app;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.MessageFormat;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.MonthDay;
import java.time.Year;
import java.time.format.DateTimeFormatter;
import java.util.Collection;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * The words for every message, from the one file of texts.
 *
 * <p>Facts are written the same way everywhere: a {@link Chainage} as km with two decimals, a {@link Stretch} as two of them,
 * a date as {@code 16 Mar 2026}, a day of the year as {@code 16 Mar}, a {@link Year} without grouping, an enum constant by
 * its text {@code term.Bank.LEFT}, a list with commas. Numbers keep {@link MessageFormat}'s own formats, and those of
 * {@link HouseNumber}.
 */
public final class Texts {
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final Properties TEXTS = load();

    private Texts() {}

    private static Properties load() {
        Properties texts = new Properties();
        try (InputStream in = Texts.class.getResourceAsStream("/org/ouzelbook/ui/messages.properties")) {
            if (in == null) {
                throw new IllegalStateException("messages.properties is missing from the program");
            }
            Reader reader = new InputStreamReader(in, StandardCharsets.UTF_8);
            texts.load(reader);
        } catch (IOException e) {
            throw new UncheckedIOException("messages.properties", e);
        }
        return texts;
    }

    /**
     * {@return the words of a message}
     *
     * @param message a message
     * @throws IllegalArgumentException if the file of texts has no such key
     */
    public static String of(Message message) {
        return of(message.key(), message.facts().toArray());
    }

    /**
     * {@return the text with this key, filled with these facts}
     *
     * @param key key of the text
     * @param facts what fills it
     * @throws IllegalArgumentException if the file of texts has no such key
     */
    public static String of(String key, Object... facts) {
        String text = text(key);
        Object[] written = new Object[facts.length];
        for (int i = 0; i < facts.length; i++) {
            written[i] = written(facts[i]);
        }
        return new MessageFormat(HouseNumber.places(text), Locale.ENGLISH).format(HouseNumber.written(text, written));
    }

    /** {@return the keys of all texts} */
    public static Set<String> keys() {
        return TEXTS.stringPropertyNames();
    }

    /**
     * {@return the text with this key, its facts still numbered}
     *
     * @param key key of the text
     * @throws IllegalArgumentException if the file of texts has no such key
     */
    static String pattern(String key) {
        return HouseNumber.places(text(key));
    }

    private static String text(String key) {
        String text = TEXTS.getProperty(key);
        if (text == null) {
            throw new IllegalArgumentException("No text has the key " + key);
        }
        return text;
    }

    private static Object written(Object fact) {
        if (fact instanceof Number) {
            return fact;
        }
        return word(fact);
    }

    /** {@return every text, as it stands in the file} */
    public static Collection<String> all() {
        return TEXTS.stringPropertyNames().stream().map(Texts::pattern).toList();
    }

    /**
     * {@return a fact as it is written everywhere}
     *
     * @param fact a message, chainage, stretch, date, time, year, species, enum constant, list of them, or anything with a name
     */
    public static String word(Object fact) {
        if (fact instanceof Message message) {
            return of(message);
        }
        if (fact instanceof Chainage chainage) {
            return String.format(Locale.ROOT, "%.2f", chainage.km());
        }
        if (fact instanceof Stretch stretch) {
            return word(stretch.lower()) + "–" + word(stretch.upper());
        }
        if (fact instanceof LocalDate date) {
            return DATE.format(date);
        }
        if (fact instanceof MonthDay day) {
            return DAY.format(day);
        }
        if (fact instanceof LocalTime time) {
            return TIME.format(time);
        }
        if (fact instanceof Species species) {
            return species.englishName();
        }
        if (fact instanceof Enum<?> constant) {
            return of("term." + constant.getDeclaringClass().getSimpleName() + "." + constant.name());
        }
        if (fact instanceof Collection<?> several) {
            return several.stream().map(Texts::word).collect(Collectors.joining(", "));
        }
        if (fact instanceof UUID) {
            throw new IllegalArgumentException("A key is no word; give the label of the record instead");
        }
        return fact.toString();
    }
}
