package org.ouzelbook.tracker.grid;

import java.util.Optional;
import org.ouzelbook.tracker.grid.GridReading.Refused;

/**
 * References of the Universal Transverse Mercator grid, by metres or by the letters of the Military Grid Reference System,
 * between 80° S and 84° N.
 *
 * <p>Source: NGA.SIG.0012_2.0.0_UTMUPS (2014), The Universal Grids and the Transverse Mercator and Polar Stereographic Map
 * Projections, and NGA.STND.0037_2.0.0_GRIDS (2014), Universal Grids and Grid Reference Systems.
 */
final class WorldGrid {
    private static final String BANDS = "CDEFGHJKLMNPQRSTUVWX";
    private static final String COLUMNS = "ABCDEFGHJKLMNPQRSTUVWXYZ";
    private static final String ROWS = "ABCDEFGHJKLMNPQRSTUV";
    private static final int ZONES = 60;
    private static final double KM_100 = 100_000;

    /** Letters of rows come again after this many metres. */
    private static final double CYCLE = 2_000_000;

    private static final double SOUTHERN_FALSE_NORTH = 10_000_000;

    private WorldGrid() {}

    /** A letter behind the zone is a band of latitude, or N or S for the half of the earth where the band does not fit. */
    static GridReading utm(int zone, char letter, GridPoint written) {
        if (zone < 1 || zone > ZONES) {
            return Refused.of("place.grid.noZone", zone);
        }
        GridPoint south = new GridPoint(written.east(), written.north() - SOUTHERN_FALSE_NORTH);
        for (GridPoint corner : new GridPoint[] {written, south}) {
            if (BANDS.indexOf(letter) >= 0 && isInBand(letter, utm(zone, corner, 1), 0.5)) {
                return GridReference.read(Grid.utm(zone), corner, 1);
            }
        }
        return switch (letter) {
            case 'N' -> GridReference.read(Grid.utm(zone), written, 1);
            case 'S' -> GridReference.read(Grid.utm(zone), south, 1);
            default -> Refused.of("place.grid.otherBand", String.valueOf(letter));
        };
    }

    private static GridSquare utm(int zone, GridPoint corner, double side) {
        return GridSquare.of(Grid.utm(zone), corner, side);
    }

    static GridReading mgrs(int zone, char band, char column, char row, String figures) {
        if (zone < 1 || zone > ZONES) {
            return Refused.of("place.grid.noZone", zone);
        }
        Optional<Figures> read = Figures.of(figures);
        if (read.isEmpty()) {
            return Refused.of("place.grid.unequal", figures.strip());
        }
        int columnPlace = COLUMNS.indexOf(column) - 8 * ((zone - 1) % 3);
        int rowPlace = Math.floorMod(ROWS.indexOf(row) - (zone % 2 == 0 ? 5 : 0), ROWS.length());
        boolean named = BANDS.indexOf(band) >= 0 && ROWS.indexOf(row) >= 0 && columnPlace >= 0 && columnPlace < 8;
        for (int cycle = -5; named && cycle < 5; cycle++) {
            GridPoint corner = new GridPoint(
                    KM_100 * (columnPlace + 1) + read.get().corner().east(),
                    KM_100 * rowPlace + CYCLE * cycle + read.get().corner().north());
            if (isInBand(band, utm(zone, corner, read.get().side()), 1)) {
                return GridReference.read(Grid.utm(zone), corner, read.get().side());
            }
        }
        return Refused.of("place.grid.noSquare", "" + zone + band + " " + column + row);
    }

    /** Bands are 8° wide from 80° S, the last one 12°; a square of 100 km may reach over the limit of its band. */
    private static boolean isInBand(char band, GridSquare square, double marginDegrees) {
        double bottom = -80 + 8.0 * BANDS.indexOf(band);
        double top = band == 'X' ? 84 : bottom + 8;
        double latitude = square.centre().latitude();
        return latitude >= bottom - marginDegrees && latitude <= top + marginDegrees;
    }
}
