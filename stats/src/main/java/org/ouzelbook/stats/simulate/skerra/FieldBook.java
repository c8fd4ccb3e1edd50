package org.ouzelbook.stats.simulate.skerra;

import static org.ouzelbook.stats.simulate.skerra.FieldTable.column;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;

/** How each of the people of Skerra kept visits and sightings, by the years in which they kept the book. */
final class FieldBook {
    private final SkerraRecords records;

    FieldBook(SkerraRecords records) {
        this.records = records;
    }

    /** E.T., 2017 to 2020: an old office program, km with decimal commas. */
    FieldTable<Visit> oldVisits() {
        Style style = Style.OLD_OFFICE;
        return new FieldTable<>(List.of(
                column("Visit No", Visit::label),
                column("Date", visit -> style.day(visit.date())),
                column("Started", visit -> time(style, visit.start())),
                column("Finish", visit -> time(style, visit.end())),
                column("Stream", FieldBook::river),
                column("From km", visit -> from(style, visit)),
                column("To km", visit -> to(style, visit)),
                column("Walked", visit -> visit.direction().map(Words::full).orElse("")),
                column("Who", FieldBook::observers),
                column("Water level", Visit::level),
                column("Weather", visit -> celsius(visit)),
                column("Valid", visit -> visit.effective() ? "y" : "n"),
                column("Looked for", FieldBook::codes),
                column("Remarks", Visit::note)));
    }

    FieldTable<Sighting> oldSightings() {
        Style style = Style.OLD_OFFICE;
        return new FieldTable<>(List.of(
                column("Sighting No", Sighting::label),
                column("Visit No", records::visit),
                column("Date", sighting -> style.day(sighting.date())),
                column("Time", sighting -> time(style, sighting.time())),
                column("Stream", FieldBook::river),
                column(
                        "River km",
                        sighting -> style.number(sighting.place().chainage().km(), 2)),
                column("Side", Words::bankLetters),
                column("Species", sighting -> sighting.species().code()),
                column("No of birds", sighting -> Integer.toString(sighting.count())),
                column("Age", Words::age),
                column("Doing", sighting -> Words.shortActivities(sighting, ", ")),
                column("Colour rings", Sighting::rings),
                column("Same time as", records::simultaneousWith),
                column("Flew to", sighting -> km(style, sighting.flewTo())),
                column("Turned back", sighting -> sighting.turnedBack() ? "y" : ""),
                column("Who", Sighting::observer),
                column("Remarks", Words::remark)));
    }

    /** M.O., 2021: a spreadsheet of today, with columns that only M.O. needs; landmarks and steps. */
    FieldTable<Visit> spreadsheetVisits() {
        Style style = Style.OFFICE;
        return new FieldTable<>(List.of(
                column("Visit", Visit::label),
                column("Survey date", visit -> style.day(visit.date())),
                column("Start time", visit -> time(style, visit.start())),
                column("End time", visit -> time(style, visit.end())),
                column("River", FieldBook::river),
                column("From (km)", visit -> from(style, visit)),
                column("To (km)", visit -> to(style, visit)),
                column("Direction", visit -> visit.direction().map(Words::full).orElse("")),
                column("Mode", visit -> visit.mode().map(Words::full).orElse("")),
                column("Surveyors", FieldBook::observers),
                column("River level", Visit::level),
                column("Weather", Visit::weather),
                column("Effective", visit -> visit.effective() ? "Yes" : "No"),
                column("Species looked for", FieldBook::names),
                column("Bus fare", visit -> visit.walked().isPresent() ? "3.40" : ""),
                column("Notes", Visit::note)));
    }

    FieldTable<Sighting> spreadsheetSightings() {
        Style style = Style.OFFICE;
        return new FieldTable<>(List.of(
                column("Record", Sighting::label),
                column("Visit", records::visit),
                column("Survey date", sighting -> style.day(sighting.date())),
                column("Time", sighting -> time(style, sighting.time())),
                column("River", FieldBook::river),
                column("Landmark", sighting -> landmark(sighting).scribbled()),
                column("Metres upstream", FieldBook::offset),
                column("Bank", Words::bank),
                column("Species", sighting -> sighting.species().englishName()),
                column("Number", sighting -> Integer.toString(sighting.count())),
                column("Age", Words::age),
                column("Activity", sighting -> Words.activities(sighting, "; ")),
                column("Rings", Sighting::rings),
                column("Simultaneous with", records::simultaneousWith),
                column("Flew to km", sighting -> km(style, sighting.flewTo())),
                column("Turned back", sighting -> Words.yes(sighting.turnedBack())),
                column("Photo", FieldBook::photo),
                column("Surveyor", Sighting::observer),
                column("Notes", Words::remark)));
    }

    /** R.H., 2022 and 2023: typed with tabs, dates in words, times without a colon. */
    FieldTable<Visit> tabbedVisits() {
        Style style = Style.TABS;
        return new FieldTable<>(List.of(
                column("VISIT", Visit::label),
                column("DATE", visit -> style.day(visit.date())),
                column("START", visit -> time(style, visit.start())),
                column("FINISH", visit -> time(style, visit.end())),
                column("WATERCOURSE", FieldBook::river),
                column("FROM KM", visit -> from(style, visit)),
                column("TO KM", visit -> to(style, visit)),
                column("DIRECTION", visit -> visit.direction().map(Words::full).orElse("")),
                column("OBSERVERS", FieldBook::observers),
                column("LEVEL", Visit::level),
                column("CONDITIONS", Visit::weather),
                column("EFFECTIVE", visit -> visit.effective() ? "yes" : "no"),
                column("SPECIES", FieldBook::codes),
                column("COMMENTS", Visit::note)));
    }

    FieldTable<Sighting> tabbedSightings() {
        Style style = Style.TABS;
        return new FieldTable<>(List.of(
                column("SIGHTING", Sighting::label),
                column("VISIT", records::visit),
                column("DATE", sighting -> style.day(sighting.date())),
                column("TIME", sighting -> time(style, sighting.time())),
                column("WATERCOURSE", FieldBook::river),
                column("LANDMARK", sighting -> landmark(sighting).name()),
                column("OFFSET", FieldBook::offset),
                column("SPECIES", sighting -> sighting.species().englishName()),
                column("COUNT", sighting -> Integer.toString(sighting.count())),
                column("AGE", Words::age),
                column("BEHAVIOUR", sighting -> Words.shortActivities(sighting, " + ")),
                column("COLOUR RINGS", Sighting::rings),
                column("AT THE SAME TIME AS", records::simultaneousWith),
                column("FLEW TO KM", sighting -> km(style, sighting.flewTo())),
                column("TURNED BACK", sighting -> Words.yes(sighting.turnedBack())),
                column("OBSERVER", Sighting::observer),
                column("COMMENTS", Words::remark)));
    }

    /** The records centre's terms, 2024. */
    FieldTable<Visit> darwinCoreVisits() {
        Style style = Style.SHEET;
        return new FieldTable<>(List.of(
                column("eventID", Visit::label),
                column("eventDate", FieldBook::interval),
                column("waterBody", FieldBook::river),
                column("from_km", visit -> from(style, visit)),
                column("to_km", visit -> to(style, visit)),
                column("direction", visit -> visit.direction().map(Words::full).orElse("")),
                column("recordedBy", FieldBook::observers),
                column("scientificName", visit -> list(visit, Species::scientificName, " | ")),
                column("level", Visit::level),
                column("effective", visit -> visit.effective() ? "yes" : "no"),
                column("eventRemarks", Visit::note)));
    }

    FieldTable<Sighting> darwinCoreSightings() {
        Style style = Style.SHEET;
        return new FieldTable<>(List.of(
                column("occurrenceID", Sighting::label),
                column("eventID", records::visit),
                column("eventDate", sighting -> style.day(sighting.date())),
                column("eventTime", sighting -> time(style, sighting.time())),
                column("waterBody", FieldBook::river),
                column(
                        "decimalLatitude",
                        sighting -> style.number(records.fix(sighting).latitude(), 5)),
                column(
                        "decimalLongitude",
                        sighting -> style.number(records.fix(sighting).longitude(), 5)),
                column("coordinateUncertaintyInMeters", sighting -> "30"),
                column("scientificName", sighting -> sighting.species().scientificName()),
                column("individualCount", sighting -> Integer.toString(sighting.count())),
                column("lifeStage", Words::age),
                column("behavior", sighting -> Words.activities(sighting, " | ")),
                column("occurrenceStatus", sighting -> "present"),
                column("rings", Sighting::rings),
                column("simultaneous_with", records::simultaneousWith),
                column("flew_to_km", sighting -> km(style, sighting.flewTo())),
                column("turned_back", sighting -> Words.yes(sighting.turnedBack())),
                column("recordedBy", Sighting::observer),
                column("occurrenceRemarks", Words::remark)));
    }

    /** J.P., 2025: what a phone hands out. */
    FieldTable<Sighting> phoneSightings() {
        Style style = Style.SHEET;
        return new FieldTable<>(List.of(
                column("id", sighting -> "wp" + Math.abs(sighting.label().hashCode() % 100_000)),
                column("sighting", Sighting::label),
                column("visit", records::visit),
                column("date", sighting -> style.day(sighting.date())),
                column("time", sighting -> time(style, sighting.time())),
                column("river", FieldBook::river),
                column("lat", sighting -> style.number(records.fix(sighting).latitude(), 6)),
                column("lon", sighting -> style.number(records.fix(sighting).longitude(), 6)),
                column(
                        "accuracy_m",
                        sighting ->
                                Integer.toString(5 + Math.abs(sighting.label().hashCode() % 9))),
                column("species", sighting -> sighting.species().englishName()),
                column("count", sighting -> Integer.toString(sighting.count())),
                column("age", Words::age),
                column("activity", sighting -> Words.activities(sighting, ";")),
                column("rings", Sighting::rings),
                column("simultaneous_with", records::simultaneousWith),
                column("flew_to_km", sighting -> km(style, sighting.flewTo())),
                column("turned_back", sighting -> Words.yes(sighting.turnedBack())),
                column("observer", Sighting::observer),
                column("note", Words::remark)));
    }

    /** The field sheet of 2025 and 2026. */
    FieldTable<Visit> sheetVisits() {
        Style style = Style.SHEET;
        return new FieldTable<>(List.of(
                column("visit", Visit::label),
                column("date", visit -> style.day(visit.date())),
                column("start", visit -> time(style, visit.start())),
                column("end", visit -> time(style, visit.end())),
                column("river", FieldBook::river),
                column("from_km", visit -> from(style, visit)),
                column("to_km", visit -> to(style, visit)),
                column("direction", visit -> visit.direction().map(Words::full).orElse("")),
                column("mode", visit -> visit.mode().map(Words::full).orElse("")),
                column("observers", FieldBook::observers),
                column("species", FieldBook::names),
                column("level", Visit::level),
                column("weather", Visit::weather),
                column("effective", visit -> visit.effective() ? "yes" : "no"),
                column("note", Visit::note)));
    }

    FieldTable<Sighting> sheetSightings() {
        Style style = Style.SHEET;
        return new FieldTable<>(List.of(
                column("sighting", Sighting::label),
                column("visit", records::visit),
                column("date", sighting -> style.day(sighting.date())),
                column("time", sighting -> time(style, sighting.time())),
                column("river", FieldBook::river),
                column(
                        "km",
                        sighting -> style.number(sighting.place().chainage().km(), 2)),
                column("bank", Words::bank),
                column("species", sighting -> sighting.species().englishName()),
                column("count", sighting -> Integer.toString(sighting.count())),
                column("age", Words::age),
                column("activity", sighting -> Words.activities(sighting, "; ")),
                column("rings", Sighting::rings),
                column("simultaneous_with", records::simultaneousWith),
                column("flew_to_km", sighting -> km(style, sighting.flewTo())),
                column("turned_back", sighting -> Words.yes(sighting.turnedBack())),
                column("observer", Sighting::observer),
                column("note", Words::remark)));
    }

    private static String time(Style style, Optional<LocalTime> time) {
        return time.map(style::clock).orElse("");
    }

    private static String km(Style style, Optional<Chainage> chainage) {
        return chainage.map(at -> style.number(at.km(), 2)).orElse("");
    }

    private static String from(Style style, Visit visit) {
        return visit.walked()
                .map(walked -> style.number(walked.lower().km(), 1))
                .orElse("");
    }

    private static String to(Style style, Visit visit) {
        return visit.walked()
                .map(walked -> style.number(walked.upper().km(), 1))
                .orElse("");
    }

    private static String river(Visit visit) {
        return Skerra.name(visit.riverId());
    }

    private static String river(Sighting sighting) {
        return Skerra.name(sighting.place().riverId());
    }

    private static String observers(Visit visit) {
        return String.join(", ", visit.observers());
    }

    private static String codes(Visit visit) {
        return list(visit, Species::code, ", ");
    }

    private static String names(Visit visit) {
        return list(visit, Species::englishName, "; ");
    }

    private static String list(Visit visit, Function<Species, String> name, String between) {
        return visit.lookedFor().stream().map(name).collect(Collectors.joining(between));
    }

    private static String celsius(Visit visit) {
        LocalDate day = visit.date();
        return visit.weather().isEmpty() ? "" : (day.getDayOfYear() / 14) + " °C – " + visit.weather();
    }

    private static String interval(Visit visit) {
        Style style = Style.SHEET;
        String day = style.day(visit.date());
        return visit.start().isPresent() && visit.end().isPresent()
                ? day + "T" + style.clock(visit.start().get()) + "/" + day + "T"
                        + style.clock(visit.end().get())
                : day;
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
        int number = Math.abs(sighting.label().hashCode() % 4000);
        return number % 12 == 0 ? "IMG_" + (1000 + number) : "";
    }
}
