package org.ouzelbook.ui.app.leak;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Finds the river km of a nest: a number, written to 10 m or finer, that stands behind “km” or under a name that means a place along
 * the water. Lengths and densities are no places.
 */
final class KmSearch {
    private static final String KM = "(?:km|kilomet(?:re|er)s?)";
    private static final String PLACE = "(\\d{1,3}(?:[.,]\\d{2,6}|\\+\\d{3}))";
    private static final Pattern BEHIND_KM = Pattern.compile(
            "(?i)(?<![\\p{L}\\d])(?:r|river[\\s-]?)?" + KM + "\\s*" + PLACE + "(?:\\s*(?:[–-]|to)\\s*" + PLACE + ")?");

    private static final String FROM_THE_MOUTH =
            "\\s+(?:(?:up(?:stream)?|away)\\s+(?:of|from)|from|above|off)\\s+(?:the\\s+)?mouth";
    private static final Pattern KM_FROM_THE_MOUTH =
            Pattern.compile("(?i)(?<![\\d.,])" + PLACE + "\\s*" + KM + FROM_THE_MOUTH);
    private static final Pattern METRES_FROM_THE_MOUTH =
            Pattern.compile("(?i)(?<![\\d.])(?:chainage\\s*(?<chainage>\\d{1,3},\\d{3}|\\d{3,6})"
                    + "|(?<metres>\\d{1,3},\\d{3}|\\d{3,6})\\s*m(?:et(?:re|er)s)?" + FROM_THE_MOUTH + ")");

    private static final Pattern NAMED = Pattern.compile(
            "(?i)(?<![a-z])([a-z][a-z_-]*+)[\"’]?\\s*[:=>]+\\s*(?=[\"<a-z>]{0,40}?(\\d{1,6}(?:[.,]\\d{1,6})?))");

    private static final Pattern NUMBER = Pattern.compile("\\d{1,6}(\\.\\d{1,9})?");

    /** Names that hold a place along the water, parts of words run together. */
    static final Set<String> PLACES = Set.of(
            "km", "riverkm", "fromkm", "tokm", "atkm", "centrekm", "flewtokm", "chainage", "chainagem", "chainagekm");

    private static final double METRES_PER_KM = 1000;
    private static final double FINEST_KM = 0.0005;
    private static final int FEWEST_DECIMALS = 2;

    private final NestPlaces places;

    KmSearch(NestPlaces places) {
        this.places = places;
    }

    /** {@return a name without signs between its parts, in small letters} */
    static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[^a-z]", "");
    }

    void inText(CharSequence text, BiConsumer<Integer, NestPlaces.Nest> hit) {
        Matcher behind = BEHIND_KM.matcher(text);
        while (behind.find()) {
            int at = behind.start();
            nest(behind.group(1), false).ifPresent(nest -> hit.accept(at, nest));
            if (behind.group(2) != null) {
                nest(behind.group(2), false).ifPresent(nest -> hit.accept(at, nest));
            }
        }
        Matcher km = KM_FROM_THE_MOUTH.matcher(text);
        while (km.find()) {
            int at = km.start();
            nest(km.group(1), false).ifPresent(nest -> hit.accept(at, nest));
        }
        Matcher metres = METRES_FROM_THE_MOUTH.matcher(text);
        while (metres.find()) {
            int at = metres.start();
            String written = metres.group("chainage") == null ? metres.group("metres") : metres.group("chainage");
            nest(written.replace(",", ""), true).ifPresent(nest -> hit.accept(at, nest));
        }
        Matcher named = NAMED.matcher(text);
        while (named.find()) {
            String name = plain(named.group(1)).replaceFirst("^data", "");
            int at = named.start();
            if (PLACES.contains(name)) {
                nest(named.group(2), !name.endsWith("km")).ifPresent(nest -> hit.accept(at, nest));
            }
        }
    }

    /** Looks through the cells of a row that stand under a name, made {@link #plain}, for a place along the water. */
    void inTable(List<String> header, List<String> row, BiConsumer<Integer, NestPlaces.Nest> hit) {
        for (int i = 0; i < Math.min(header.size(), row.size()); i++) {
            String name = header.get(i);
            if (PLACES.contains(name)) {
                int column = i;
                nest(row.get(i), !name.endsWith("km")).ifPresent(nest -> hit.accept(column, nest));
            }
        }
    }

    /** {@return the nest that lies where a number says, as far as it was written out} */
    private Optional<NestPlaces.Nest> nest(String written, boolean metres) {
        String number = written.strip().replace(',', '.').replace('+', '.');
        if (!NUMBER.matcher(number).matches()) {
            return Optional.empty();
        }
        int decimals = number.indexOf('.') < 0 ? 0 : number.length() - number.indexOf('.') - 1;
        int kmDecimals = metres ? decimals + 3 : decimals;
        double km = Double.parseDouble(number) / (metres ? METRES_PER_KM : 1);
        if (kmDecimals < FEWEST_DECIMALS) {
            return Optional.empty();
        }
        double tolerance = Math.max(FINEST_KM, 0.5 * Math.pow(10, -kmDecimals)) + 1e-9;
        if (places.isPublicKm(km, tolerance)) {
            return Optional.empty();
        }
        return places.atKm(km, tolerance);
    }
}
