package org.ouzelbook.tracker.store;

import static org.ouzelbook.tracker.store.Table.decimal;
import static org.ouzelbook.tracker.store.Table.key;
import static org.ouzelbook.tracker.store.Table.text;
import static org.ouzelbook.tracker.store.Table.whole;

import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.store.Table.Column;

/** The five columns of a place, which several tables have. */
final class Places {
    private static final List<Column> COLUMNS = List.of(
            key("river_id", "river"),
            decimal("chainage_m"),
            text("bank"),
            decimal("uncertainty_m"),
            whole("line_version"));

    private Places() {}

    /** {@return the columns of a place and these} */
    static Column[] and(Column... others) {
        List<Column> all = new ArrayList<>(COLUMNS);
        all.addAll(List.of(others));
        return all.toArray(Column[]::new);
    }

    static Row write(Place place, Row row) {
        return row.set("river_id", place.riverId())
                .set("chainage_m", place.chainage().metres())
                .set("bank", place.bank())
                .set("uncertainty_m", place.uncertaintyMetres())
                .set("line_version", place.lineVersion());
    }

    static Place read(Row row) {
        return new Place(
                row.key("river_id"),
                new Chainage(row.decimal("chainage_m")),
                row.constant("bank", Bank.class),
                row.decimal("uncertainty_m"),
                row.whole("line_version"));
    }
}
