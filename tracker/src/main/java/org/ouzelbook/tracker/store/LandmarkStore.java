package org.ouzelbook.tracker.store;

import static org.ouzelbook.tracker.store.Table.text;
import static org.ouzelbook.tracker.store.Table.texts;
import static org.ouzelbook.tracker.store.Table.yesNo;

import java.util.List;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.LandmarkKind;

/** Keeps landmarks. */
final class LandmarkStore {
    static final EntryTable<Landmark> LANDMARKS = new EntryTable<>(
            Landmark.class,
            Table.ofRecords("landmark", Places.and(text("name"), text("kind"), texts("aliases"), yesNo("nest_site"))),
            (landmark, row) -> Places.write(landmark.place(), row)
                    .set("name", landmark.name())
                    .set("kind", landmark.kind())
                    .set("aliases", landmark.aliases())
                    .set("nest_site", landmark.nestSite()),
            row -> new Landmark(
                    row.id(),
                    row.text("name"),
                    row.constant("kind", LandmarkKind.class),
                    Places.read(row),
                    row.texts("aliases"),
                    row.yes("nest_site")));

    private LandmarkStore() {}

    static List<Landmark> landmarks(Database database) {
        return LANDMARKS.all(database, "river_id, chainage_m, name, id");
    }
}
