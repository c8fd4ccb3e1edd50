package org.ouzelbook.tracker.exchange;

import static org.ouzelbook.tracker.exchange.Column.*;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** The kinds of table that the book reads, in the order in which they go in: what others refer to comes first. */
public enum TableKind {
    /** Known rocks, bridges and other places. */
    LANDMARKS(EnumSet.of(NAME), true, EnumSet.of(RIVER, KIND, ALIASES, NEST_SITE, NOTE)),
    /** Named stretches. */
    REACHES(EnumSet.of(REACH, FROM_KM, TO_KM), false, EnumSet.of(RIVER, NOTE)),
    /** Visits. */
    VISITS(
            EnumSet.of(VISIT, DATE),
            false,
            EnumSet.of(
                    START, END, TIME, RIVER, FROM_KM, TO_KM, DIRECTION, MODE, OBSERVER, SPECIES, LEVEL, WEATHER,
                    EFFECTIVE, NOTE)),
    /** Sightings. */
    SIGHTINGS(
            EnumSet.noneOf(Column.class),
            true,
            EnumSet.of(
                    DATE,
                    VISIT,
                    SIGHTING,
                    TIME,
                    RIVER,
                    SPECIES,
                    COUNT,
                    PRESENCE,
                    AGE,
                    SEX,
                    ACTIVITY,
                    BREEDING_CODE,
                    RINGS,
                    SIMULTANEOUS_WITH,
                    FLEW_TO_KM,
                    TURNED_BACK,
                    OBSERVER,
                    NOTE)),
    /** Nests. */
    NESTS(EnumSet.of(NEST), true, EnumSet.of(RIVER, SPECIES, SITE, HEIGHT_M, FOUND, NOTE)),
    /** Looks at nests. */
    NEST_CHECKS(EnumSet.of(NEST, DATE), false, EnumSet.of(TIME, STAGE, EGGS, YOUNG, ADULTS, OUTCOME, NOTE)),
    /** Birds with colour rings. */
    RINGED_BIRDS(
            EnumSet.of(BIRD, LEFT_UPPER, LEFT_LOWER, RIGHT_UPPER, RIGHT_LOWER),
            false,
            EnumSet.of(RING, SEX, HATCHED, RINGED, NOTE)),
    /** Kick samples. */
    KICK_SAMPLES(EnumSet.of(SAMPLE, DATE, TAXON, ABUNDANCE), true, EnumSet.of(RIVER, MINUTES, METHOD, SAMPLER, NOTE)),
    /** What surveyors decided about territories. */
    DECISIONS(EnumSet.of(SEASON, KIND, FROM_KM, TO_KM), false, EnumSet.of(RIVER, SPECIES, NOTE, OBSERVER, DATE));

    @SuppressWarnings("ImmutableEnumChecker") // never changed after the constructor, copied on the way out
    private final Set<Column> required;

    private final boolean placed;

    @SuppressWarnings("ImmutableEnumChecker")
    private final Set<Column> columns;

    TableKind(Set<Column> required, boolean placed, Set<Column> others) {
        this.required = required;
        this.placed = placed;
        this.columns = EnumSet.copyOf(others);
        columns.addAll(required);
        if (placed) {
            columns.addAll(EnumSet.of(KM, LANDMARK, OFFSET_M, LATITUDE, LONGITUDE, GRID_REF, UNCERTAINTY_M, BANK));
        }
    }

    /** {@return the name that the command line knows it by} */
    public String written() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * {@return the kind with this name, in any case, with spaces, underscores and hyphens equal; empty if none}
     *
     * @param name a name
     */
    public static Optional<TableKind> named(String name) {
        String wanted = name.strip().toLowerCase(Locale.ROOT).replace(' ', '_').replace('-', '_');
        for (TableKind kind : values()) {
            if (kind.written().equals(wanted)) {
                return Optional.of(kind);
            }
        }
        return Optional.empty();
    }

    /** {@return whether the table may have this column} */
    boolean has(Column column) {
        return columns.contains(column);
    }

    /** {@return the columns without which the table says nothing, in the order of the columns; the place apart} */
    Set<Column> required() {
        return Set.copyOf(required);
    }

    /**
     * {@return whether these columns are enough for this kind}
     *
     * @param present the columns of a table
     */
    boolean isSatisfiedBy(Set<Column> present) {
        boolean dated = this != SIGHTINGS || present.contains(DATE) || present.contains(VISIT);
        return present.containsAll(required) && (!placed || hasPlace(present)) && dated;
    }

    /** {@return whether these columns tell a place} */
    static boolean hasPlace(Set<Column> present) {
        return present.contains(KM)
                || present.contains(LANDMARK)
                || present.contains(GRID_REF)
                || present.containsAll(EnumSet.of(LATITUDE, LONGITUDE));
    }

    /** {@return the names of the columns that a table of this kind still needs} */
    List<String> missing(Set<Column> present) {
        List<String> missing = new ArrayList<>();
        required.stream().filter(column -> !present.contains(column)).forEach(column -> missing.add(column.written()));
        if (placed && !hasPlace(present)) {
            missing.add("km");
        }
        if (this == SIGHTINGS && !present.contains(DATE) && !present.contains(VISIT)) {
            missing.add(DATE.written());
        }
        return missing;
    }
}
