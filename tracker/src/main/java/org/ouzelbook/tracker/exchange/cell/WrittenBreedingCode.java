package org.ouzelbook.tracker.exchange.cell;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.BreedingCode;

/**
 * Breeding codes as numbers 0 to 16, or as the letters that a national list prints beside them.
 *
 * <p>Source of the letters: BTO categories of breeding evidence, in the order of the sixteen codes of Hagemeijer and Blair (1997),
 * The EBCC Atlas of European Breeding Birds.
 */
public final class WrittenBreedingCode {
    private static final Pattern NUMBER = Pattern.compile("(?:(?:breeding )?code )?0?(\\d{1,2})(?:[.,]0)?");
    private static final Map<String, Integer> LETTERS = letters();

    private WrittenBreedingCode() {}

    private static Map<String, Integer> letters() {
        Map<String, Integer> letters = new HashMap<>(Map.of("u", 0, "m", 0, "f", 0));
        String[] inOrder = {"h", "s", "p", "t", "d", "n", "a", "i", "b", "dd", "un", "fl", "on", "ff", "ne", "ny"};
        for (int i = 0; i < inOrder.length; i++) {
            letters.put(inOrder[i], i + 1);
        }
        return Map.copyOf(letters);
    }

    /**
     * {@return the code; empty if it is none}
     *
     * @param text a cell
     */
    public static Optional<BreedingCode> of(String text) {
        String plain = Blank.plainSpaces(text).toLowerCase(Locale.ROOT);
        Matcher number = NUMBER.matcher(plain);
        if (number.matches()) {
            int code = Integer.parseInt(number.group(1));
            return code <= 16 ? Optional.of(new BreedingCode(code)) : Optional.empty();
        }
        return Optional.ofNullable(LETTERS.get(plain)).map(BreedingCode::new);
    }
}
