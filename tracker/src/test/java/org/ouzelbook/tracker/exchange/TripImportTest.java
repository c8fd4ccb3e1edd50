package org.ouzelbook.tracker.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.river.RiverAnswers;
import org.ouzelbook.tracker.store.SightingQuery;

/** Walks recorded by a receiver, in the form of the GPX 1.1 schema. */
class TripImportTest {
    @TempDir
    Path folder;

    private Notebooks notebooks;

    @BeforeEach
    void open() {
        notebooks = new Notebooks(folder);
        notebooks.answers = inZone(Optional.of(ZoneId.of("Europe/London")));
    }

    @AfterEach
    void close() {
        notebooks.close();
    }

    private static ImportAnswers inZone(Optional<ZoneId> zone) {
        return new ImportAnswers(
                Notebooks.TODAY,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                zone,
                Optional.empty(),
                Optional.of(Species.DIPPER),
                Optional.empty(),
                RiverAnswers.NONE,
                Optional.empty());
    }

    private static String gpx(String inside) {
        return "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\" creator=\"x\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n"
                + inside + "</gpx>\n";
    }

    /** A point beside the river, about 100 m of water from one number to the next. */
    private static String at(int number) {
        return String.format(
                Locale.ROOT,
                "lat=\"%.6f\" lon=\"%.6f\"",
                57 + number * 0.1 / 111.4,
                -3.4 + 0.002 * Math.sin(number / 9.0) + 0.0003);
    }

    private static String waypoint(int number, String time, String name) {
        return "<wpt %s><time>%s</time><name>%s</name><sym>Flag</sym></wpt>\n".formatted(at(number), time, name);
    }

    private static String track(String name, IntStream numbers) {
        StringBuilder points = new StringBuilder();
        numbers.forEach(number -> points.append("<trkpt %s><ele>80</ele><time>2026-03-29T%02d:%02d:00Z</time></trkpt>\n"
                .formatted(at(number), 6 + number / 60, number % 60)));
        return "<trk><name>" + name + "</name><trkseg>\n" + points + "</trkseg></trk>\n";
    }

    private List<Sighting> sightings() {
        return notebooks.book.read(view -> view.sightings(SightingQuery.ALL));
    }

    private List<Visit> visits() {
        return notebooks.book.read(view -> view.visits());
    }

    /** Summer time began in the United Kingdom on 29 March 2026 at 01:00 UTC (Summer Time Order 2002). */
    @Test
    void tellsLocalDaysAcrossTheChangeOfTheClocks() {
        notebooks
                .file(
                        "w.gpx",
                        gpx(waypoint(20, "2026-03-28T23:30:00Z", "WP001")
                                + waypoint(21, "2026-03-29T07:10:00Z", "WP002")
                                + waypoint(22, "2026-06-30T23:30:00Z", "WP003")))
                .add();

        assertThat(sightings())
                .extracting(Sighting::date)
                .containsExactly(LocalDate.of(2026, 3, 28), LocalDate.of(2026, 3, 29), LocalDate.of(2026, 7, 1));
        assertThat(sightings())
                .extracting(sighting -> sighting.time().orElseThrow())
                .containsExactly(LocalTime.of(23, 30), LocalTime.of(8, 10), LocalTime.of(0, 30));
    }

    @Test
    void asksWhereTimesInUtcWereTaken() {
        notebooks.answers = inZone(Optional.empty());

        ImportResult result = notebooks
                .file("w.gpx", gpx(waypoint(20, "2026-03-29T07:10:00Z", "WP001")))
                .add();

        assertThat(Notebooks.keys(result, Finding.QUESTION)).containsExactly("3 import.ask.zone");
    }

    @Test
    void understandsNamesOfWaypointsInTheWordsOfTheTradeAndKeepsTheOthers() {
        notebooks
                .file(
                        "w.gpx",
                        gpx(waypoint(20, "2026-03-29T07:10:00Z", "KF singing")
                                + waypoint(30, "2026-03-29T07:20:00Z", "by the fallen alder")))
                .add();

        assertThat(sightings()).extracting(Sighting::species).containsExactly(Species.KINGFISHER, Species.DIPPER);
        assertThat(sightings().get(0).activities()).isEqualTo(Set.of(Activity.SINGING));
        assertThat(sightings().get(1).note()).isEqualTo("by the fallen alder");
    }

    @Test
    void makesAVisitOfATrackAndGivesItTheBirdsOfItsWaypoints() {
        notebooks.file("r.csv", "reach,from_km,to_km\nLower,1,5\n").add();
        ImportResult result = notebooks
                .file(
                        "w.gpx",
                        gpx(waypoint(30, "2026-03-29T06:30:00Z", "DI")
                                + track("Morning", IntStream.rangeClosed(20, 60))))
                .add();

        assertThat(Notebooks.keys(result, Finding.WARNING)).isEmpty();
        Visit visit = visits().get(0);
        assertThat(visit.label()).isEqualTo("Morning 2026-03-29");
        assertThat(visit.date()).isEqualTo(LocalDate.of(2026, 3, 29));
        assertThat(visit.start()).contains(LocalTime.of(7, 20));
        assertThat(visit.end()).contains(LocalTime.of(8, 0));
        assertThat(visit.direction()).contains(Direction.UPSTREAM);
        assertThat(visit.walked().orElseThrow().lower().km()).isCloseTo(2.0, within(0.05));
        assertThat(visit.walked().orElseThrow().length()).isCloseTo(4000, within(60.0));
        assertThat(visit.note()).matches("covered: 100%; covered Lower: 7\\d?%");
        assertThat(sightings().get(0).visitId()).contains(visit.id());
        assertThat(notebooks.add().added()).isZero();
    }

    @Test
    void tellsWhatATrackLeavesOut() {
        IntStream withGap = IntStream.concat(IntStream.rangeClosed(20, 40), IntStream.rangeClosed(50, 60));

        ImportResult result =
                notebooks.file("w.gpx", gpx(track("Walk", withGap))).add();

        assertThat(Notebooks.keys(result, Finding.WARNING)).containsExactly("3 import.track.gaps");
        assertThat(visits().get(0).note()).startsWith("covered: 75%");
    }

    @Test
    void leavesOutATrackThatIsNowhereNearARiver() {
        String drive =
                "<trk><name>Drive</name><trkseg><trkpt lat=\"56\" lon=\"-3\"><time>2026-03-29T06:00:00Z</time></trkpt>"
                        + "<trkpt lat=\"56.1\" lon=\"-3\"><time>2026-03-29T06:10:00Z</time></trkpt></trkseg></trk>\n";

        ImportResult result = notebooks.file("w.gpx", gpx(drive)).add();

        assertThat(Notebooks.keys(result, Finding.WARNING)).containsExactly("3 import.track.far");
        assertThat(visits()).isEmpty();
    }

    @Test
    void takesATrackWithoutTimesForTheLineOfARiver() {
        ImportResult result = notebooks
                .file(
                        "beck.gpx",
                        gpx(
                                "<trk><name>New Beck</name><trkseg><trkpt lat=\"57.3\" lon=\"-3\"/><trkpt lat=\"57.31\" lon=\"-3\"/>"
                                        + "</trkseg></trk>"))
                .add();

        assertThat(visits()).isEmpty();
        assertThat(Notebooks.keys(result, Finding.PROBLEM)).containsExactly("0 import.river.walked");
    }

    @Test
    void refusesEntitiesAndBrokenFilesOnce() {
        ImportResult result = notebooks
                .file("e.gpx", "<!DOCTYPE gpx [<!ENTITY x SYSTEM \"file:///etc/passwd\">]><gpx><wpt>&x;</wpt></gpx>")
                .file("b.gpx", gpx("<wpt lat=\"57\" lon=\"-3.4\"><name>x</wpt>"))
                .add();

        assertThat(Notebooks.keys(result, Finding.PROBLEM))
                .containsExactlyInAnyOrder("0 import.file.doctype", "0 import.file.brokenXml");
    }

    @Test
    void takesNoCoordinatesOutOfRange() {
        ImportResult result = notebooks
                .file("w.gpx", gpx("<wpt lat=\"1e308\" lon=\"NaN\"><time>2026-03-29T07:10:00Z</time></wpt>\n"))
                .add();

        assertThat(result.findings().count(Finding.PROBLEM)).isPositive();
        assertThat(sightings()).isEmpty();
    }
}
