package org.ouzelbook.tracker.exchange.cell;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Species;

/** Species as people write them: English or scientific names, two-letter codes, plurals, longer English names. */
public final class WrittenSpecies {
    private static final Map<String, Species> OTHER_NAMES = Map.of(
            "white throated dipper", Species.DIPPER,
            "eurasian dipper", Species.DIPPER,
            "european dipper", Species.DIPPER,
            "gray wagtail", Species.GREY_WAGTAIL,
            "common kingfisher", Species.KINGFISHER,
            "eurasian kingfisher", Species.KINGFISHER);

    private WrittenSpecies() {}

    /**
     * {@return the species; empty if the book knows none of that name}
     *
     * @param text a cell
     */
    public static Optional<Species> of(String text) {
        String key = Words.key(text);
        String singular = key.endsWith("s") ? key.substring(0, key.length() - 1) : key;
        return Species.named(key)
                .or(() -> Optional.ofNullable(OTHER_NAMES.get(key)))
                .or(() -> Species.named(singular))
                .or(() -> Optional.ofNullable(OTHER_NAMES.get(singular)))
                .or(() -> scientific(key));
    }

    /** A scientific name with subspecies, author or year behind it. */
    private static Optional<Species> scientific(String key) {
        return Species.all().stream()
                .filter(species -> key.startsWith(species.scientificName().toLowerCase(Locale.ROOT) + " "))
                .findFirst();
    }

    /**
     * {@return the pieces of a list of species, by {@code ;} {@code ,} {@code |} {@code +} {@code /} or "and", as written}
     *
     * @param text a cell
     */
    public static List<String> pieces(String text) {
        List<String> pieces = new ArrayList<>();
        for (String piece : text.split("[;,|+/&\\n]|\\b[aA][nN][dD]\\b", -1)) {
            if (!piece.isBlank()) {
                pieces.add(piece.strip());
            }
        }
        return pieces;
    }
}
