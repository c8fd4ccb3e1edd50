package org.ouzelbook.tracker.store;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.river.MeasuredLine;
import org.ouzelbook.tracker.river.Snap;

/**
 * Takes places from the lines of another book to those of this one. Where both lines are the same, a place keeps its chainage;
 * where they differ, it goes over the point on the ground, to the nearest place of this book's newest line.
 */
final class RiverLines {
    /** A point farther from the line than this is no place on it. */
    private static final double FARTHEST_METRES = 250;

    /** Columns that hold metres from the mouth. */
    private static final List<String> PLACES =
            List.of("chainage_m", "flew_to_m", "walked_lower_m", "walked_upper_m", "lower_m", "upper_m");

    /** How places of one version of one river get here. */
    private record Way(int version, Optional<MeasuredLine> there, Optional<MeasuredLine> here) {}

    private final Map<UUID, Map<Integer, Way>> ways = new HashMap<>();

    /** Takes up that a version of a river's line there is this version here. */
    void same(UUID riverThere, int versionThere, int versionHere) {
        ways.computeIfAbsent(riverThere, key -> new HashMap<>())
                .put(versionThere, new Way(versionHere, Optional.empty(), Optional.empty()));
    }

    /** Takes up that places on a version there are measured anew on a line here. */
    void anew(UUID riverThere, RiverLine there, RiverLine here) {
        ways.computeIfAbsent(riverThere, key -> new HashMap<>())
                .put(
                        there.version(),
                        new Way(
                                here.version(),
                                Optional.of(MeasuredLine.of(there)),
                                Optional.of(MeasuredLine.of(here))));
    }

    /**
     * Rewrites the places of a row.
     *
     * @param row a row whose river is still that of the other book
     * @return whether every place could be put on the line here
     */
    boolean translate(Row row) {
        if (row.table().has("mouth_chainage_m")
                && row.optionalKey("mouth_river_id").isPresent()) {
            return put(row, "mouth_chainage_m", newest(row.key("mouth_river_id")));
        }
        if (!row.table().has("river_id") || !ways.containsKey(row.key("river_id"))) {
            return true;
        }
        UUID river = row.key("river_id");
        boolean versioned = row.table().has("line_version");
        Optional<Way> way = versioned
                ? Optional.ofNullable(ways.getOrDefault(river, Map.of()).get(row.whole("line_version")))
                : newest(river);
        if (versioned && way.isPresent()) {
            row.set("line_version", way.get().version());
        }
        for (String column : PLACES) {
            if (row.table().has(column) && !put(row, column, way)) {
                return false;
            }
        }
        return inOrder(row, "lower_m", "upper_m") && inOrder(row, "walked_lower_m", "walked_upper_m");
    }

    private Optional<Way> newest(UUID riverThere) {
        return ways.getOrDefault(riverThere, Map.of()).entrySet().stream()
                .max(Map.Entry.comparingByKey())
                .map(Map.Entry::getValue);
    }

    private static boolean put(Row row, String column, Optional<Way> way) {
        Optional<Double> there = row.optional(column, Double.class);
        if (there.isEmpty() || way.isEmpty() || way.get().there().isEmpty()) {
            return true;
        }
        Optional<Snap> snap = way.get()
                .there()
                .flatMap(line -> line.point(within(line, there.get())))
                .map(point -> way.get().here().orElseThrow().nearest(point))
                .filter(found -> found.offsetMetres() <= FARTHEST_METRES);
        snap.ifPresent(found -> row.set(column, Math.round(found.chainage().metres() * 10) / 10.0));
        return snap.isPresent();
    }

    /** Places may lie a few metres beyond the end of their line. */
    private static Chainage within(MeasuredLine line, double metres) {
        double lower = line.extent().lower().metres();
        double upper = line.extent().upper().metres();
        return new Chainage(Math.min(Math.max(metres, lower), upper));
    }

    private static boolean inOrder(Row row, String lower, String upper) {
        return !row.table().has(lower)
                || row.optional(lower, Double.class).isEmpty()
                || row.decimal(lower) <= row.decimal(upper);
    }
}
