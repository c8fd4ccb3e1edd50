package org.ouzelbook.tracker.exchange.river;

import java.util.Locale;

/** Names for rivers that their file leaves without one. */
final class RiverNames {
    private RiverNames() {}

    /** {@return the name of a file without its ending, in words: {@code arrel_water.geojson} is Arrel water} */
    static String fromFile(String file) {
        String bare = file.replaceFirst("\\.[A-Za-z]+$", "")
                .replaceAll("[_\\-\\s]+", " ")
                .strip();
        return bare.isEmpty() ? "River" : bare.substring(0, 1).toUpperCase(Locale.ROOT) + bare.substring(1);
    }
}
