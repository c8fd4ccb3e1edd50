package org.ouzelbook.tracker.exchange;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.ouzelbook.tracker.domain.Place;

/** Tells in what two records with the same label differ, their keys and notes apart. */
final class Differences {
    private static final Set<String> IGNORED = Set.of("id", "label", "name", "note");

    private Differences() {}

    /** {@return what differs, in words; empty if they say the same} */
    static <T extends Record> List<String> between(T one, T other) {
        List<String> differences = new ArrayList<>();
        for (RecordComponent component : one.getClass().getRecordComponents()) {
            if (!IGNORED.contains(component.getName()) && !same(value(component, one), value(component, other))) {
                differences.add(component.getName().replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT));
            }
        }
        return differences;
    }

    /** Places are the same within half a metre, on whatever version of the line. */
    private static boolean same(Object one, Object other) {
        if (one instanceof Place here && other instanceof Place there) {
            return here.riverId().equals(there.riverId())
                    && here.bank() == there.bank()
                    && here.chainage().distanceTo(there.chainage()) < 0.5;
        }
        return one.equals(other);
    }

    private static Object value(RecordComponent component, Record record) {
        try {
            return component.getAccessor().invoke(record);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("Records can be read: " + component, e);
        }
    }
}
