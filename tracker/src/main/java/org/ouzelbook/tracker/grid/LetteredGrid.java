package org.ouzelbook.tracker.grid;

import java.util.Optional;
import org.ouzelbook.tracker.grid.GridReading.Refused;

/**
 * References of the British and Irish grids, whose squares of 100 km have letters: two in Britain, one in Ireland. A letter
 * behind two figures names a square of 2 km within one of 10 km.
 *
 * <p>Source: Ordnance Survey (2020), A Guide to Coordinate Systems in Great Britain, section 7; the letters of squares of 2 km
 * are common practice among recorders, no source.
 */
final class LetteredGrid {
    private static final String LETTERS = "ABCDEFGHJKLMNOPQRSTUVWXYZ";
    private static final String LETTERS_OF_2_KM = "ABCDEFGHIJKLMNPQRSTUVWXYZ";
    private static final double KM_100 = 100_000;
    private static final int BRITISH_COLUMNS = 7;
    private static final int BRITISH_ROWS = 13;

    private LetteredGrid() {}

    static GridReading read(String letters, String figures, String behind) {
        Optional<GridPoint> square = letters.length() == 1 ? irish(letters) : british(letters);
        if (square.isEmpty()) {
            return Refused.of("place.grid.noSquare", letters);
        }
        Optional<Figures> read = Figures.of(figures);
        if (read.isEmpty()) {
            return Refused.of("place.grid.unequal", figures.strip());
        }
        GridPoint corner = plus(square.get(), read.get().corner());
        Grid grid = letters.length() == 1 ? Grid.IRISH : Grid.BRITISH;
        if (behind.isEmpty()) {
            return GridReference.read(grid, corner, read.get().side());
        }
        int place = LETTERS_OF_2_KM.indexOf(behind);
        if (place < 0 || read.get().side() != 10_000) {
            return Refused.of("place.grid.letterBehind", behind);
        }
        int column = place / 5;
        GridPoint within = new GridPoint(2000.0 * column, 2000.0 * (place % 5));
        return GridReference.read(grid, plus(corner, within), 2000);
    }

    private static GridPoint plus(GridPoint one, GridPoint other) {
        return new GridPoint(one.east() + other.east(), one.north() + other.north());
    }

    private static Optional<GridPoint> irish(String letter) {
        int place = LETTERS.indexOf(letter);
        return place < 0
                ? Optional.empty()
                : Optional.of(new GridPoint(KM_100 * (place % 5), KM_100 * (4 - place / 5)));
    }

    /** The first letter names a square of 500 km, S being the one with the false origin. */
    private static Optional<GridPoint> british(String letters) {
        int first = LETTERS.indexOf(letters.charAt(0));
        int second = LETTERS.indexOf(letters.charAt(1));
        if (first < 0 || second < 0) {
            return Optional.empty();
        }
        int column = (first % 5 - 2) * 5 + second % 5;
        int row = 15 - first / 5 * 5 + 4 - second / 5;
        boolean covered = column >= 0 && column < BRITISH_COLUMNS && row >= 0 && row < BRITISH_ROWS;
        return covered ? Optional.of(new GridPoint(KM_100 * column, KM_100 * row)) : Optional.empty();
    }
}
