package org.ouzelbook.stats.simulate.skerra;

import java.util.function.Function;
import org.ouzelbook.tracker.domain.Sighting;

/** What stands in the cells of a table of sightings, by the words that a {@link Layout} has for it. */
record SightingCells(Style style, SkerraRecords records) {
    Function<Sighting, String> cell(String kind) {
        return switch (kind) {
            case "label" -> Sighting::label;
            case "waypoint" -> sighting -> "wp" + number(sighting, 100_000);
            case "visit" -> records::visit;
            case "date" -> sighting -> style.day(sighting.date());
            case "time" -> sighting -> sighting.time().map(style::clock).orElse("");
            case "river" -> sighting -> Skerra.name(sighting.place().riverId());
            case "km" -> sighting -> style.number(sighting.place().chainage().km(), 2);
            case "landmark" -> sighting -> landmark(sighting).name();
            case "landmark in short" -> sighting -> landmark(sighting).scribbled();
            case "metres above it" -> SightingCells::offset;
            case "latitude" -> sighting -> style.number(records.fix(sighting).latitude(), 5);
            case "longitude" -> sighting -> style.number(records.fix(sighting).longitude(), 5);
            case "latitude from the phone" ->
                sighting -> style.number(records.fix(sighting).latitude(), 6);
            case "longitude from the phone" ->
                sighting -> style.number(records.fix(sighting).longitude(), 6);
            case "30 m" -> sighting -> "30";
            case "accuracy from the phone" -> sighting -> Integer.toString(5 + number(sighting, 9));
            case "bank" -> Words::bank;
            case "bank in letters" -> Words::bankLetters;
            case "code" -> sighting -> sighting.species().code();
            case "name" -> sighting -> sighting.species().englishName();
            case "scientific name" -> sighting -> sighting.species().scientificName();
            case "count" -> sighting -> Integer.toString(sighting.count());
            case "present" -> sighting -> "present";
            case "age" -> Words::age;
            case "activities by semicolon and blank" -> sighting -> Words.activities(sighting, "; ");
            case "activities by semicolon" -> sighting -> Words.activities(sighting, ";");
            case "activities by bar" -> sighting -> Words.activities(sighting, " | ");
            case "activities in short by comma" -> sighting -> Words.shortActivities(sighting, ", ");
            case "activities in short by plus" -> sighting -> Words.shortActivities(sighting, " + ");
            case "rings" -> Sighting::rings;
            case "simultaneous" -> records::simultaneousWith;
            case "flew to" ->
                sighting ->
                        sighting.flewTo().map(at -> style.number(at.km(), 2)).orElse("");
            case "turned back, yes" -> sighting -> Words.yes(sighting.turnedBack());
            case "turned back, y" -> sighting -> sighting.turnedBack() ? "y" : "";
            case "observer" -> Sighting::observer;
            case "photo" -> SightingCells::photo;
            case "remark" -> Words::remark;
            default -> throw new IllegalArgumentException("A sighting has no " + kind);
        };
    }

    private static KnownPlace landmark(Sighting sighting) {
        return KnownPlace.nearest(
                sighting.place().riverId(), sighting.place().chainage().km());
    }

    private static String offset(Sighting sighting) {
        double metres =
                sighting.place().chainage().metres() - landmark(sighting).km() * 1000;
        return Long.toString(Math.round(metres));
    }

    private static String photo(Sighting sighting) {
        int number = number(sighting, 4000);
        return number % 12 == 0 ? "IMG_" + (1000 + number) : "";
    }

    /** A number that looks like chance and is always the same for one sighting. */
    private static int number(Sighting sighting, int limit) {
        return Math.abs(sighting.label().hashCode() % limit);
    }
}
