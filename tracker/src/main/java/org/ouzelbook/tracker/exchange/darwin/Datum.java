package org.ouzelbook.tracker.exchange.darwin;

import java.util.Locale;
import java.util.regex.Pattern;

/**
 * What coordinates are measured from, as {@code geodeticDatum} says it. WGS84 under any of its names may be taken as it is, and so may
 * ETRS89, which differs from it by less than a metre; the older ones of a country lie up to some hundred metres off.
 */
final class Datum {
    private static final Pattern TAKEN = Pattern.compile(
            "(EPSG:*)?(4326|4979|4258)|WGS(19)?84|WORLDGEODETICSYSTEM(19)?84|ETRS(19)?89|" + "NOTRECORDED|UNKNOWN|");

    private Datum() {}

    /**
     * {@return whether coordinates may be taken for those of WGS84, also where nobody said what they are}
     *
     * @param written what stands in the file
     */
    static boolean isWgs84(String written) {
        return TAKEN.matcher(written.toUpperCase(Locale.ROOT).replaceAll("[\\s()_.,-]", ""))
                .matches();
    }
}
