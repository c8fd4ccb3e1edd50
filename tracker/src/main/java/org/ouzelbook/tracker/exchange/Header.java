package org.ouzelbook.tracker.exchange;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What the columns of one table mean.
 *
 * @param kind the kind of table
 * @param names the names of all columns, as the file has them
 * @param places where each known column stands, counted from 0, in the order of the file
 */
record Header(TableKind kind, List<String> names, Map<Column, Integer> places) {
    Header {
        names = List.copyOf(names);
        places = Collections.unmodifiableMap(new LinkedHashMap<>(places));
    }

    /** {@return what the columns mean in a table of this kind; of two with the same meaning the first counts} */
    static Header of(TableKind kind, List<String> names) {
        Map<Column, Integer> places = new LinkedHashMap<>();
        for (int i = 0; i < names.size(); i++) {
            for (Column column : Column.meanings(names.get(i))) {
                if (kind.has(column) && !places.containsKey(column)) {
                    places.put(column, i);
                    break;
                }
            }
        }
        return new Header(kind, names, places);
    }

    /** {@return how many cells of a row are names of columns of some table} */
    static int knownColumns(List<String> cells) {
        return (int)
                cells.stream().filter(cell -> !Column.meanings(cell).isEmpty()).count();
    }

    /**
     * {@return the kinds that a table with these columns can be: one if it is certain, none if it is none, several if in
     * doubt}
     */
    static List<TableKind> kinds(List<String> names) {
        List<TableKind> candidates = new ArrayList<>();
        for (TableKind kind : TableKind.values()) {
            Set<Column> present = of(kind, names).columns();
            if (kind.isSatisfiedBy(present) && !isExcluded(kind, names)) {
                candidates.add(kind);
            }
        }
        if (candidates.size() > 1) {
            List<TableKind> marked = candidates.stream()
                    .filter(kind -> hasOwnColumn(kind, candidates, names))
                    .toList();
            return marked.size() == 1 ? marked : List.copyOf(candidates);
        }
        return List.copyOf(candidates);
    }

    private static boolean isExcluded(TableKind kind, List<String> names) {
        Set<Column> all = EnumSet.noneOf(Column.class);
        names.forEach(name -> all.addAll(Column.meanings(name)));
        return switch (kind) {
            case VISITS -> TableKind.hasPlace(all) || all.contains(Column.NEST);
            case LANDMARKS -> all.contains(Column.DATE) || all.contains(Column.VISIT);
            case SIGHTINGS -> all.containsAll(EnumSet.of(Column.SAMPLE, Column.TAXON, Column.ABUNDANCE));
            case REACHES -> all.contains(Column.DATE);
            default -> false;
        };
    }

    /** {@return whether the table has a column, beside the necessary ones, that only this kind of the candidates knows} */
    private static boolean hasOwnColumn(TableKind kind, List<TableKind> candidates, List<String> names) {
        return of(kind, names).columns().stream()
                .filter(column -> !kind.required().contains(column))
                .anyMatch(column -> candidates.stream().noneMatch(other -> other != kind && other.has(column)));
    }

    Set<Column> columns() {
        return places.keySet();
    }

    boolean has(Column column) {
        return places.containsKey(column);
    }

    /** {@return the name that the file has for a column; our own if it has none} */
    String nameOf(Column column) {
        return Optional.ofNullable(places.get(column)).map(names::get).orElse(column.written());
    }

    /** {@return where the columns stand that mean nothing here but have a name, in order} */
    List<Integer> unknown() {
        List<Integer> unknown = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            if (!places.containsValue(i) && !names.get(i).isBlank()) {
                unknown.add(i);
            }
        }
        return List.copyOf(unknown);
    }
}
