package org.ouzelbook.tracker.exchange.export;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.river.MeasuredLine;
import org.ouzelbook.tracker.river.RiverNetwork;

/**
 * The one grid on which birds are told in public: whole kilometres of water from the mouth. What is left over at either end of a
 * line and is shorter than half a kilometre belongs to its neighbour, so that no cell is small enough to give a place away. A cell
 * depends on the river alone, so that two exports never narrow a place down between them.
 *
 * <p>Places are generalised to a grid and never shifted at random: A. D. Chapman (2020), Current Best Practices for Generalizing
 * Sensitive Species Occurrence Data, GBIF Secretariat. One kilometre is about its 0.01 degrees (category 3).
 */
public final class PublicGrid {
    /** The length of a cell, in metres. */
    public static final double CELL_METRES = 1000;

    private final RiverNetwork rivers;

    /**
     * Makes the grid of these rivers.
     *
     * @param rivers the rivers
     */
    public PublicGrid(RiverNetwork rivers) {
        this.rivers = rivers;
    }

    /**
     * {@return the cell that a place lies in}
     *
     * @param riverId key of a river
     * @param chainage a place on it
     */
    public Stretch cell(UUID riverId, Chainage chainage) {
        Optional<Stretch> extent = rivers.measuredLine(riverId).map(MeasuredLine::extent);
        double lower = Math.floor(chainage.metres() / CELL_METRES) * CELL_METRES;
        double upper = lower + CELL_METRES;
        if (extent.isEmpty()) {
            return new Stretch(new Chainage(lower), new Chainage(upper));
        }
        double start = extent.get().lower().metres();
        double end = extent.get().upper().metres();
        double first = firstLimit(start);
        double last = lastLimit(end);
        if (first > last) {
            return extent.get();
        }
        if (chainage.metres() < first) {
            return between(start, Math.min(first, start + 2 * CELL_METRES));
        }
        return chainage.metres() >= last ? between(last, end) : between(lower < first ? start : lower, upper);
    }

    private static Stretch between(double lower, double upper) {
        return new Stretch(new Chainage(lower), new Chainage(upper));
    }

    /** The upper limit of the first cell, which is at least half as long as the others. */
    private static double firstLimit(double start) {
        double limit = (Math.floor(start / CELL_METRES) + 1) * CELL_METRES;
        return limit - start < CELL_METRES / 2 ? limit + CELL_METRES : limit;
    }

    /** The lower limit of the last cell. */
    private static double lastLimit(double end) {
        double limit = Math.floor(end / CELL_METRES) * CELL_METRES;
        return end - limit < CELL_METRES / 2 ? limit - CELL_METRES : limit;
    }

    /**
     * {@return the cells that a stretch touches, going upstream; at least one}
     *
     * @param riverId key of a river
     * @param stretch a stretch of it
     */
    public List<Stretch> list(UUID riverId, Stretch stretch) {
        List<Stretch> cells = new ArrayList<>(List.of(cell(riverId, stretch.lower())));
        Stretch last = cell(riverId, stretch.upper());
        while (cells.get(cells.size() - 1).upper().compareTo(last.lower()) <= 0) {
            cells.add(cell(riverId, cells.get(cells.size() - 1).upper()));
        }
        return cells;
    }

    /**
     * {@return the cells that a stretch touches, as one}
     *
     * @param riverId key of a river
     * @param stretch a stretch of it
     */
    public Stretch cells(UUID riverId, Stretch stretch) {
        return new Stretch(
                cell(riverId, stretch.lower()).lower(),
                cell(riverId, stretch.upper()).upper());
    }

    /**
     * {@return the whole cells that hold a stretch, as one; a cell whose lower limit it only reaches is none of them}
     *
     * @param riverId key of a river
     * @param stretch a stretch of it, of some length
     */
    public Stretch holding(UUID riverId, Stretch stretch) {
        Stretch cells = cells(riverId, stretch);
        boolean endsThere = cell(riverId, stretch.upper()).lower().equals(stretch.upper());
        return endsThere && stretch.length() > 0 ? new Stretch(cells.lower(), stretch.upper()) : cells;
    }

    /**
     * {@return the cells that come nearest to a stretch, as one: each end goes to the nearer limit of its cell; those that it touches, if
     * nothing would be left}
     *
     * @param riverId key of a river
     * @param stretch a stretch of it
     */
    public Stretch nearest(UUID riverId, Stretch stretch) {
        Chainage lower = nearerLimit(riverId, stretch.lower());
        Chainage upper = nearerLimit(riverId, stretch.upper());
        return lower.compareTo(upper) < 0 ? new Stretch(lower, upper) : cells(riverId, stretch);
    }

    private Chainage nearerLimit(UUID riverId, Chainage place) {
        Stretch cell = cell(riverId, place);
        return place.compareTo(cell.middle()) < 0 ? cell.lower() : cell.upper();
    }

    /**
     * {@return the point on the river in the middle of a cell; empty if the river has no line there}
     *
     * @param riverId key of a river
     * @param cell a cell of it
     */
    public Optional<GeoPoint> middle(UUID riverId, Stretch cell) {
        return rivers.measuredLine(riverId).flatMap(line -> line.point(cell.middle()));
    }
}
