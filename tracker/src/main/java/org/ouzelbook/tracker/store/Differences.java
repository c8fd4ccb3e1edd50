package org.ouzelbook.tracker.store;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Message;

/** Tells in what two states of a record differ, column by column. */
final class Differences {
    private static final int LONGEST = 60;

    private Differences() {}

    /** {@return what differs, with the state here before that of the other book} */
    static List<Message> between(Row here, Row there) {
        List<Message> found = new ArrayList<>();
        for (int i = 0; i < here.table().columns().size(); i++) {
            Table.Column column = here.table().columns().get(i);
            @Nullable Object mine = here.values().get(i);
            @Nullable Object theirs = there.values().get(i);
            if (column.isContent() && !java.util.Objects.equals(mine, theirs)) {
                Message name = Message.of("book.column." + column.name());
                found.add(
                        column.type() == ColumnType.KEY
                                ? Message.of("merge.differs.key", name)
                                : Message.of(
                                        "merge.differs", name, told(column.name(), mine), told(column.name(), theirs)));
            }
        }
        return List.copyOf(found);
    }

    private static Object told(String column, @Nullable Object value) {
        if (value == null || value.toString().isBlank() || value.equals(List.of())) {
            return Message.of("merge.differs.nothing");
        }
        if (value instanceof Double metres
                && (column.endsWith("chainage_m")
                        || column.endsWith("_to_m")
                        || column.endsWith("lower_m")
                        || column.endsWith("upper_m"))) {
            return new Chainage(Math.max(0, metres));
        }
        if (value instanceof Boolean yes) {
            return Message.of(yes ? "merge.differs.yes" : "merge.differs.no");
        }
        if (value instanceof Number) {
            return value;
        }
        String text = value instanceof List<?> several
                ? String.join(", ", several.stream().map(Object::toString).toList())
                : value.toString();
        return value instanceof java.time.temporal.Temporal || text.length() <= LONGEST
                ? value instanceof List<?> ? text : value
                : text.substring(0, LONGEST) + "…";
    }
}
