package org.ouzelbook.tracker.store;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ouzelbook.tracker.domain.Entry;

/** Every table of a book that is written row by row. */
final class Schema {
    /** The kinds of record, each after those it points to. */
    static final List<EntryTable<?>> ENTRIES = List.of(
            ImportedFileStore.FILES,
            RiverStore.RIVERS,
            RiverStore.LINES,
            LandmarkStore.LANDMARKS,
            RiverStore.REACHES,
            VisitStore.VISITS,
            SightingStore.SIGHTINGS,
            NestStore.NESTS,
            NestStore.CHECKS,
            RingedBirdStore.BIRDS,
            KickSampleStore.SAMPLES,
            DecisionStore.DECISIONS,
            SealStore.SEALS);

    /** The tables of records, of links between them, and of what putting books together needs. */
    static final List<Table> TABLES = Stream.of(
                    ENTRIES.stream().map(EntryTable::table),
                    Stream.of(SimultaneousLinks.TABLE),
                    Together.TABLES.stream())
            .flatMap(tables -> tables)
            .toList();

    /** Every table that has a sum: those, and the history. */
    static final List<Table> SUMMED = Stream.concat(TABLES.stream(), Stream.of(Step.TABLE, RowChange.TABLE))
            .toList();

    private static final Map<Class<?>, EntryTable<?>> BY_TYPE =
            ENTRIES.stream().collect(Collectors.toMap(EntryTable::type, Function.identity()));

    private static final Map<String, Table> BY_NAME =
            SUMMED.stream().collect(Collectors.toMap(Table::name, Function.identity()));

    private Schema() {}

    /** {@return the table that keeps this kind of record} */
    static EntryTable<?> of(Entry entry) {
        return of(entry.getClass());
    }

    /** {@return the table that keeps this kind of record} */
    static EntryTable<?> of(Class<? extends Entry> type) {
        EntryTable<?> table = BY_TYPE.get(type);
        if (table == null) {
            throw new IllegalArgumentException("The book has no table for " + type);
        }
        return table;
    }

    /** {@return the records that this table keeps} */
    static EntryTable<?> entries(Table table) {
        return ENTRIES.stream()
                .filter(entries -> entries.table().equals(table))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("Table " + table + " keeps no records"));
    }

    /** {@return the table with this name} */
    static Table table(String name) {
        Table table = BY_NAME.get(name);
        if (table == null) {
            throw new IllegalArgumentException("The book has no table " + name);
        }
        return table;
    }
}
