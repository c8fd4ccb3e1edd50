package org.ouzelbook.stats.survey;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Predicate;
import org.ouzelbook.stats.survey.Admission.Aside;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;

/** Warns of records that are often wrong, or often read wrongly, each with the reason and the records. */
final class RecordWarnings {
    /** Fewer sightings than this show nothing about rounding. */
    private static final int ENOUGH_TO_SEE_ROUNDING = 8;

    private final Season season;
    private final Admission admission;
    private final List<Message> warnings = new ArrayList<>();

    private RecordWarnings(Season season, Admission admission) {
        this.season = season;
        this.admission = admission;
    }

    static List<Message> of(Season season, Admission admission) {
        RecordWarnings warnings = new RecordWarnings(season, admission);
        warnings.flushedBirds();
        warnings.ages();
        warnings.songTakenForSex();
        warnings.oldNests();
        warnings.dates();
        warnings.roundedPlaces();
        warnings.lineVersions();
        return warnings.warnings;
    }

    private void warn(String key, List<Object> names) {
        if (!names.isEmpty()) {
            warnings.add(Message.of(key, names.size(), names));
        }
    }

    private void flushedBirds() {
        warn("map.warning.flushedBird", aside(Admission.Reason.FLOWN_ON));
    }

    private void ages() {
        warn("map.warning.ageAsked", aside(Admission.Reason.AGE_IN_DOUBT));
        warn("map.warning.ageInDoubt", admitted(sighting -> BreedingSigns.ageInDoubt(sighting, season.settings())));
    }

    private void songTakenForSex() {
        warn(
                "map.warning.songTakenForSex",
                admitted(sighting -> sighting.sex() != Sex.UNKNOWN
                        && sighting.rings().isBlank()
                        && sighting.activities().contains(Activity.SINGING)));
    }

    private void oldNests() {
        warn(
                "map.warning.oldNests",
                season.nests().stream()
                        .filter(history -> history.signs().isEmpty())
                        .map(history -> Member.name(history.nest()))
                        .toList());
    }

    private void dates() {
        Map<UUID, LocalDate> visitDates = new HashMap<>();
        season.records().visits().forEach(visit -> visitDates.put(visit.id(), visit.date()));
        warn(
                "map.warning.notTheVisitsDate",
                names(season.sightings().stream()
                        .filter(sighting -> sighting.visitId()
                                .map(visitDates::get)
                                .filter(date -> !date.equals(sighting.date()))
                                .isPresent())
                        .toList()));
        warn(
                "map.warning.dayAndMonth",
                names(admission.aside().stream()
                        .filter(one -> one.reason() == Admission.Reason.OUT_OF_SEASON)
                        .map(Aside::sighting)
                        .filter(this::fitsAVisitWithDayAndMonthExchanged)
                        .toList()));
    }

    private boolean fitsAVisitWithDayAndMonthExchanged(Sighting sighting) {
        Optional<LocalDate> exchanged = exchanged(sighting.date());
        return exchanged.isPresent()
                && season.effort(sighting.place().riverId()).visits().stream()
                        .map(Visit::date)
                        .anyMatch(exchanged.get()::equals);
    }

    private static Optional<LocalDate> exchanged(LocalDate date) {
        try {
            return Optional.of(LocalDate.of(date.getYear(), date.getDayOfMonth(), date.getMonthValue()));
        } catch (DateTimeException notOnTheCalendar) {
            return Optional.empty();
        }
    }

    private void roundedPlaces() {
        List<Sighting> admitted = admission.admitted();
        List<Object> rounded =
                admitted(sighting -> isWhole(sighting.place().chainage().metres() / 500));
        if (admitted.size() >= ENOUGH_TO_SEE_ROUNDING && rounded.size() * 2 > admitted.size()) {
            warnings.add(Message.of("map.warning.roundedPlaces", rounded.size(), admitted.size()));
        }
    }

    private static boolean isWhole(double number) {
        return Math.abs(number - Math.rint(number)) < 1e-6;
    }

    private void lineVersions() {
        warn(
                "map.warning.lineVersions",
                admitted(sighting -> season.records()
                        .rivers()
                        .line(sighting.place().riverId())
                        .map(RiverLine::version)
                        .filter(version -> version != sighting.place().lineVersion())
                        .isPresent()));
    }

    private List<Object> aside(Admission.Reason reason) {
        return names(admission.aside().stream()
                .filter(one -> one.reason() == reason)
                .map(Aside::sighting)
                .toList());
    }

    private List<Object> admitted(Predicate<Sighting> wanted) {
        return names(admission.admitted().stream().filter(wanted).toList());
    }

    private List<Object> names(List<Sighting> sightings) {
        return sightings.stream()
                .filter(sighting -> season.water()
                        .contains(sighting.place().riverId(), sighting.place().chainage()))
                .map(Member::name)
                .toList();
    }
}
