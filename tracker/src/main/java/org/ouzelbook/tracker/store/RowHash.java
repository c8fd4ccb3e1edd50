package org.ouzelbook.tracker.store;

import java.util.List;
import java.util.UUID;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * Sixty-four bits that change when a value of a row changes.
 *
 * <p>Each value is hashed together with the name of its column, and the results are added; a column without a value adds
 * nothing, so a new column leaves the hashes of older rows as they were. It guards against accidents, not against malice.
 * The mixing step is the finalizer of SplitMix64: G. L. Steele, D. Lea and C. H. Flood (2014), Fast splittable pseudorandom
 * number generators, OOPSLA.
 */
final class RowHash {
    private static final long PRIME = 0x100000001b3L;

    private RowHash() {}

    /** {@return the hash of every value of the row} */
    static long of(Row row) {
        return of(row, column -> true);
    }

    /** {@return the hash of what the row says of the field: two records with the same content have the same one} */
    static long fingerprint(Row row) {
        return of(row, Table.Column::isContent);
    }

    /** {@return the hash of a text} */
    static long of(String text) {
        return hash(text);
    }

    private static long of(Row row, Predicate<Table.Column> counts) {
        List<Table.Column> columns = row.table().columns();
        List<@Nullable Object> values = row.values();
        long sum = 0;
        for (int i = 0; i < columns.size(); i++) {
            Object value = values.get(i);
            if (value != null && counts.test(columns.get(i))) {
                sum += mix(mix(hash(columns.get(i).name())) + hash(value));
            }
        }
        return mix(sum);
    }

    private static long hash(Object value) {
        if (value instanceof UUID id) {
            return mix(mix(id.getMostSignificantBits()) + id.getLeastSignificantBits());
        }
        if (value instanceof Double number) {
            return mix(Double.doubleToLongBits(number));
        }
        if (value instanceof Long || value instanceof Integer) {
            return mix(((Number) value).longValue());
        }
        if (value instanceof List<?> several) {
            long hash = several.size();
            for (Object one : several) {
                hash = mix(hash) + hash(one);
            }
            return hash;
        }
        String text = value.toString();
        long hash = text.length();
        for (int i = 0; i < text.length(); i++) {
            hash = (hash ^ text.charAt(i)) * PRIME;
        }
        return mix(hash);
    }

    private static long mix(long bits) {
        long mixed = (bits ^ (bits >>> 30)) * 0xbf58476d1ce4e5b9L;
        mixed = (mixed ^ (mixed >>> 27)) * 0x94d049bb133111ebL;
        return mixed ^ (mixed >>> 31);
    }
}
