package org.ouzelbook.tracker.store;

import static org.ouzelbook.tracker.store.Table.decimal;
import static org.ouzelbook.tracker.store.Table.key;
import static org.ouzelbook.tracker.store.Table.text;
import static org.ouzelbook.tracker.store.Table.whole;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Stretch;

/** Keeps rivers, the versions of their lines, and reaches. */
final class RiverStore {
    static final EntryTable<River> RIVERS = new EntryTable<>(
            River.class,
            Table.ofRecords("river", text("name"), key("mouth_river_id", "river"), decimal("mouth_chainage_m")),
            (river, row) -> row.set("name", river.name())
                    .set("mouth_river_id", river.mouth().map(River.Confluence::riverId))
                    .set(
                            "mouth_chainage_m",
                            river.mouth().map(mouth -> mouth.chainage().metres())),
            row -> new River(
                    row.id(),
                    row.text("name"),
                    row.optionalKey("mouth_river_id")
                            .map(id -> new River.Confluence(id, new Chainage(row.decimal("mouth_chainage_m"))))));

    static final EntryTable<RiverLine> LINES = new EntryTable<>(
            RiverLine.class,
            Table.ofRecords(
                    "river_line",
                    key("river_id", "river"),
                    whole("version"),
                    decimal("lower_end_m"),
                    text("points"),
                    text("source")),
            (line, row) -> row.set("river_id", line.riverId())
                    .set("version", line.version())
                    .set("lower_end_m", line.lowerEnd().metres())
                    .set(
                            "points",
                            line.points().stream().map(RiverStore::written).collect(Collectors.joining(", ")))
                    .set("source", line.source()),
            row -> new RiverLine(
                    row.key("river_id"),
                    row.whole("version"),
                    new Chainage(row.decimal("lower_end_m")),
                    Arrays.stream(row.text("points").split(", "))
                            .map(RiverStore::point)
                            .toList(),
                    row.text("source")));

    static final EntryTable<Reach> REACHES = new EntryTable<>(
            Reach.class,
            Table.ofRecords("reach", text("name"), key("river_id", "river"), decimal("lower_m"), decimal("upper_m")),
            (reach, row) -> row.set("name", reach.name())
                    .set("river_id", reach.riverId())
                    .set("lower_m", reach.stretch().lower().metres())
                    .set("upper_m", reach.stretch().upper().metres()),
            row -> new Reach(
                    row.id(),
                    row.text("name"),
                    row.key("river_id"),
                    new Stretch(new Chainage(row.decimal("lower_m")), new Chainage(row.decimal("upper_m")))));

    private RiverStore() {}

    private static String written(GeoPoint point) {
        return point.longitude() + " " + point.latitude();
    }

    private static GeoPoint point(String text) {
        int space = text.indexOf(' ');
        return new GeoPoint(
                Double.parseDouble(text.substring(space + 1)), Double.parseDouble(text.substring(0, space)));
    }

    /** {@return the rivers, each after the one that it joins} */
    static List<River> rivers(Database database) {
        return RIVERS.where(database, "ORDER BY mouth_river_id IS NOT NULL, name");
    }

    static Optional<River> named(Database database, String name) {
        return RIVERS.where(database, "WHERE LOWER(name) = LOWER(?)", name).stream()
                .findFirst();
    }

    static List<RiverLine> lines(Database database) {
        return LINES.all(database, "river_id, version");
    }

    static List<RiverLine> lines(Database database, UUID riverId) {
        return LINES.where(database, "WHERE river_id = ? ORDER BY version", riverId);
    }

    static List<Reach> reaches(Database database) {
        return REACHES.all(database, "river_id, lower_m, name");
    }
}
