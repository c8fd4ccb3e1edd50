package org.ouzelbook.tracker.exchange;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/**
 * What a column can mean, and the names it may have. The first name is our own; names of Darwin Core terms are synonyms.
 *
 * <p>Source of the terms: Darwin Core quick reference guide, TDWG.
 */
enum Column {
    /** Label of a visit. */
    VISIT("visit", "eventID", "visit id", "visit no", "visit number", "survey", "survey id"),
    /** Day. */
    DATE("date", "eventDate", "day", "when", "visit date", "survey date", "date seen", "date of visit"),
    /** Time of day. */
    TIME("time", "eventTime", "time seen"),
    /** Time when a visit began. */
    START("start", "start time", "time start", "started", "from time"),
    /** Time when a visit ended. */
    END("end", "end time", "time end", "finish", "finish time", "ended", "to time"),
    /** Name of the river. */
    RIVER("river", "waterBody", "stream", "watercourse", "river name"),
    /** Distance from the mouth. */
    KM("km", "river km", "chainage km", "km from mouth", "rkm"),
    /** Name of a landmark. */
    LANDMARK("landmark", "near", "known place", "place", "where", "location", "spot"),
    /** Distance upstream of a landmark. */
    OFFSET_M("offset_m", "offset", "metres upstream", "meters upstream"),
    /** Degrees north. */
    LATITUDE("latitude", "decimalLatitude", "lat"),
    /** Degrees east. */
    LONGITUDE("longitude", "decimalLongitude", "lon", "long", "lng"),
    /** National grid reference. */
    GRID_REF("grid_ref", "gridref", "grid reference", "ngr", "os grid", "verbatimCoordinates"),
    /** How well a place is known. */
    UNCERTAINTY_M("uncertainty_m", "coordinateUncertaintyInMeters", "uncertainty", "accuracy_m", "accuracy"),
    /** Side of the river, looking downstream. */
    BANK("bank", "side"),
    /** Lower or first end of a stretch. */
    FROM_KM("from_km", "km from", "start km", "from"),
    /** Upper or last end of a stretch. */
    TO_KM("to_km", "km to", "end km", "to"),
    /** Way along the river. */
    DIRECTION("direction", "walked"),
    /** Way of travelling. */
    MODE("mode", "travel", "on foot or canoe"),
    /** Who was out. */
    OBSERVER(
            "observer",
            "observers",
            "recordedBy",
            "recorder",
            "recorders",
            "surveyor",
            "surveyors",
            "seen by",
            "who",
            "obs",
            "by"),
    /** What was seen, or looked for. */
    SPECIES("species", "scientificName", "vernacularName", "looked for", "species looked for", "bird species"),
    /** River level. */
    LEVEL("level", "river level", "water level"),
    /** Weather. */
    WEATHER("weather", "conditions"),
    /** Whether birds could have been found. */
    EFFECTIVE("effective", "valid", "effective visit"),
    /** Anything else. */
    NOTE("note", "notes", "remarks", "comment", "comments", "occurrenceRemarks", "eventRemarks"),
    /** Label of a sighting. */
    SIGHTING("sighting", "occurrenceID", "registration", "record", "record id", "sighting id", "sighting no"),
    /** Individuals. */
    COUNT("count", "individualCount", "number", "no", "no of birds", "birds", "how many", "qty"),
    /** Whether any were seen. */
    PRESENCE("occurrenceStatus", "presence"),
    /** Age. */
    AGE("age", "lifeStage"),
    /** Sex. */
    SEX("sex"),
    /** What the birds were doing. */
    ACTIVITY("activity", "behavior", "behaviour", "activities", "doing"),
    /** Breeding code 0 to 16. */
    BREEDING_CODE(
            "breeding_code", "breeding evidence", "breeding status", "code", "reproductiveCondition", "atlas code"),
    /** Colour rings as read. */
    RINGS("rings", "colour rings", "color rings", "ring reading"),
    /** Sightings of certainly different birds. */
    SIMULTANEOUS_WITH("simultaneous_with", "simultaneous", "same time as", "at the same time as"),
    /** Where a flushed bird flew to. */
    FLEW_TO_KM("flew_to_km", "flew to", "flown to km"),
    /** Whether it turned back there. */
    TURNED_BACK("turned_back", "turned back", "turn back"),
    /** Name of a landmark. */
    NAME("name", "landmark name", "place name"),
    /** Kind of landmark. */
    KIND("kind", "type", "landmark kind", "landmark type"),
    /** Other names. */
    ALIASES("aliases", "alias", "other names", "also known as", "aka"),
    /** Whether birds nest there. */
    NEST_SITE("nest_site", "nest here", "used for nesting"),
    /** Name of a reach. */
    REACH("reach", "section", "reach name", "stretch"),
    /** Calendar year of a season. */
    SEASON("season"),
    /** Label of a nest. */
    NEST("nest", "nest id", "nest no", "nest number"),
    /** What a nest is built on. */
    SITE("site", "nest on", "site type"),
    /** Height above the water. */
    HEIGHT_M("height_m", "height", "height above water"),
    /** When a nest was found. */
    FOUND("found", "date found", "found on"),
    /** What a check found. */
    STAGE("stage", "contents", "nest stage", "status"),
    /** Eggs. */
    EGGS("eggs", "no of eggs", "egg count"),
    /** Young. */
    YOUNG("young", "chicks", "nestlings", "pulli", "no of young"),
    /** Adults in attendance. */
    ADULTS("adults", "parents"),
    /** How the nest ended. */
    OUTCOME("outcome", "result", "fate"),
    /** Label of a ringed bird. */
    BIRD("bird", "bird id", "organismID", "individual"),
    /** Rings above the joint of the left leg. */
    LEFT_UPPER("left_upper", "lt", "left above", "left tibia"),
    /** Rings below the joint of the left leg. */
    LEFT_LOWER("left_lower", "lb", "left below", "left tarsus"),
    /** Rings above the joint of the right leg. */
    RIGHT_UPPER("right_upper", "rt", "right above", "right tibia"),
    /** Rings below the joint of the right leg. */
    RIGHT_LOWER("right_lower", "rb", "right below", "right tarsus"),
    /** Number of the metal ring. */
    RING("ring", "ring number", "ring no", "metal ring", "metal"),
    /** Year of hatching. */
    HATCHED("hatched", "year hatched", "hatch year"),
    /** Day of ringing. */
    RINGED("ringed", "date ringed", "ringing date", "ringed on"),
    /** Label of a kick sample. */
    SAMPLE("sample", "sample id", "sample no", "kick sample", "fieldNumber"),
    /** Family or other group. */
    TAXON("taxon", "family", "group", "taxa", "scientificName"),
    /** Count or class. */
    ABUNDANCE("abundance", "organismQuantity", "individualCount", "class", "abundance class", "count"),
    /** Minutes of kicking. */
    MINUTES("minutes", "min", "duration", "kick minutes", "sampleSizeValue"),
    /** How a sample was taken. */
    METHOD("method", "samplingProtocol", "protocol"),
    /** Who took a sample. */
    SAMPLER("sampler", "sampled by", "recordedBy", "recorder");

    private static final Map<String, List<Column>> BY_NAME = byName();

    @SuppressWarnings("ImmutableEnumChecker") // List.of cannot be changed
    private final List<String> names;

    Column(String... names) {
        this.names = List.of(names);
    }

    private static Map<String, List<Column>> byName() {
        Map<String, List<Column>> byName = new HashMap<>();
        for (Column column : values()) {
            for (String name : column.names) {
                byName.merge(
                        key(name),
                        List.of(column),
                        (one, more) -> one.containsAll(more)
                                ? one
                                : Stream.concat(one.stream(), more.stream()).toList());
            }
        }
        return byName;
    }

    /** {@return our own name for it} */
    String written() {
        return names.get(0);
    }

    /** {@return whether its cells hold numbers that may have decimals} */
    boolean isNumber() {
        return switch (this) {
            case KM, OFFSET_M, LATITUDE, LONGITUDE, UNCERTAINTY_M, FROM_KM, TO_KM, FLEW_TO_KM, HEIGHT_M, MINUTES ->
                true;
            default -> false;
        };
    }

    /** {@return whether its numbers are below a thousand, so that a comma in 8,350 can only stand before decimals} */
    boolean isNeverThousands() {
        return switch (this) {
            case KM, LATITUDE, LONGITUDE, FROM_KM, TO_KM, FLEW_TO_KM -> true;
            default -> false;
        };
    }

    /** {@return whether its cells hold days} */
    boolean isDate() {
        return this == DATE || this == FOUND || this == RINGED;
    }

    /**
     * {@return what a column with this name can mean, in any table; empty if nothing}
     *
     * @param name the name of a column, in any case; spaces, underscores and hyphens make no difference, nor do
     *     words in brackets
     */
    static List<Column> meanings(String name) {
        List<Column> whole = BY_NAME.getOrDefault(key(name), List.of());
        return whole.isEmpty()
                ? BY_NAME.getOrDefault(key(name.replaceAll("\\([^)]*\\)|\\[[^]]*]", "")), List.of())
                : whole;
    }

    private static String key(String name) {
        String plain = name.replaceFirst("^(dwc|dcterms):", "").toLowerCase(Locale.ROOT);
        StringBuilder key = new StringBuilder();
        plain.codePoints().filter(Character::isLetterOrDigit).forEach(key::appendCodePoint);
        return key.toString();
    }
}
