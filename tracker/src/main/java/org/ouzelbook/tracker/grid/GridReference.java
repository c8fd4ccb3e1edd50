package org.ouzelbook.tracker.grid;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.ouzelbook.tracker.domain.GeoPoint;

/**
 * Reads grid references: the National Grid of Great Britain ({@code NY 215 072}), the Irish Grid ({@code O 159 343}), Irish
 * Transverse Mercator ({@code ITM 715830 734697}), UTM ({@code 30U 445000 6040000}) and MGRS ({@code 30U VF 4500 4000}).
 */
public final class GridReference {
    private static final Pattern ANNOUNCED =
            Pattern.compile("^(NGR|OSGR|OSGB|OS|GR|GRID REF(ERENCE)?|IG|MGRS|UTM):? +");
    private static final Pattern LETTERED = Pattern.compile("([A-Z]{1,2}) ?(\\d[\\d ]*)([A-Z]?)");
    private static final Pattern MGRS = Pattern.compile("(\\d{1,2}) ?([A-Z]) ?([A-Z])([A-Z])([\\d ]*)");
    private static final Pattern UTM =
            Pattern.compile("(\\d{1,2}) ?([A-Z]) (\\d{6})(?:\\.\\d+)? ?M?E? (\\d{1,7}|10000000)(?:\\.\\d+)? ?M?N?");
    private static final Pattern ITM = Pattern.compile("ITM:? (\\d{6}) ?E? (\\d{6}) ?N?");
    private static final Pattern RUNNING_TEXT =
            Pattern.compile("[A-HJ-Z]{1,2} ?(\\d{3} ?\\d{3}|\\d{4} ?\\d{4}|\\d{5} ?\\d{5})|" + MGRS.pattern() + "|"
                    + UTM.pattern() + "|" + ITM.pattern());

    private GridReference() {}

    /**
     * {@return what a cell or a line says, if it looks like a grid reference of 100 m or better and like nothing else; empty
     * otherwise}
     *
     * @param text some words
     */
    public static Optional<GridSquare> amongWords(String text) {
        String plain = plain(text);
        boolean fine = RUNNING_TEXT.matcher(plain).matches()
                && plain.replaceAll("\\D", "").length() >= 6;
        return fine
                        && of(plain) instanceof GridReading.Read read
                        && read.square().sideMetres() <= 100
                ? Optional.of(read.square())
                : Optional.empty();
    }

    /**
     * {@return the square that a grid reference names, or why it names none}
     *
     * @param text a grid reference, in any case and with any spaces
     */
    public static GridReading of(String text) {
        String plain = ANNOUNCED.matcher(plain(text)).replaceFirst("");
        Matcher itm = ITM.matcher(plain);
        if (itm.matches()) {
            return read(Grid.IRISH_TRANSVERSE_MERCATOR, new GridPoint(metres(itm.group(1)), metres(itm.group(2))), 1);
        }
        Matcher utm = UTM.matcher(plain);
        if (utm.matches()) {
            return WorldGrid.utm(
                    Integer.parseInt(utm.group(1)),
                    utm.group(2).charAt(0),
                    new GridPoint(metres(utm.group(3)), metres(utm.group(4))));
        }
        Matcher mgrs = MGRS.matcher(plain);
        if (mgrs.matches()) {
            return WorldGrid.mgrs(
                    Integer.parseInt(mgrs.group(1)),
                    mgrs.group(2).charAt(0),
                    mgrs.group(3).charAt(0),
                    mgrs.group(4).charAt(0),
                    mgrs.group(5));
        }
        Matcher lettered = LETTERED.matcher(plain);
        if (lettered.matches()) {
            return LetteredGrid.read(lettered.group(1), lettered.group(2), lettered.group(3));
        }
        return plain.matches("[\\d ]{4,12}")
                ? GridReading.Refused.of("place.grid.noLetters", text.strip())
                : GridReading.Refused.of("place.grid.unknown", text.strip());
    }

    /**
     * {@return every point that eastings and northings without a grid may mean: of the British and Irish grids, of the UTM zones of some
     * longitudes, and of the Web Mercator projection}
     *
     * <p>Source of the last one: EPSG method 1024, Popular Visualisation Pseudo Mercator.
     *
     * @param east metres
     * @param north metres
     * @param longitudes where points are expected, in degrees
     */
    public static List<GeoPoint> points(double east, double north, Collection<Double> longitudes) {
        GridPoint there = new GridPoint(east, north);
        List<GeoPoint> points = new ArrayList<>();
        if (east >= 0 && east <= 1_000_000 && north >= 0 && north <= 10_000_000) {
            if (north <= 1_400_000) {
                points.addAll(Stream.of(Grid.BRITISH, Grid.IRISH, Grid.IRISH_TRANSVERSE_MERCATOR)
                        .map(grid -> grid.point(there))
                        .toList());
            }
            longitudes.stream()
                    .map(longitude -> (int) Math.floor((longitude + 180) / 6) + 1)
                    .distinct()
                    .forEach(zone -> {
                        points.add(Grid.utm(zone).point(there));
                        points.add(Grid.utm(zone).point(new GridPoint(east, north - 10_000_000)));
                    });
        }
        double longitude = Math.toDegrees(east / Ellipsoid.WGS_84.equatorMetres());
        double latitude = Math.toDegrees(Math.atan(Math.sinh(north / Ellipsoid.WGS_84.equatorMetres())));
        if (Math.abs(longitude) <= 180 && Math.abs(latitude) <= 85) {
            points.add(new GeoPoint(latitude, longitude));
        }
        return points;
    }

    static GridReading read(Grid grid, GridPoint corner, double side) {
        return new GridReading.Read(GridSquare.of(grid, corner, side));
    }

    private static String plain(String text) {
        return text.strip()
                .toUpperCase(Locale.ROOT)
                .replaceAll("[\\s\\p{Z},;/-]+", " ")
                .strip();
    }

    private static double metres(String digits) {
        return Integer.parseInt(digits);
    }
}
