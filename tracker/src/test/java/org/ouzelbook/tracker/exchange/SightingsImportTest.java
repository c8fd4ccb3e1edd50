package org.ouzelbook.tracker.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.exchange.cell.DateOrder;
import org.ouzelbook.tracker.exchange.cell.DecimalSign;
import org.ouzelbook.tracker.store.SightingQuery;

class SightingsImportTest {
    private static final String VISITS = """
            visit,date,start,end,from_km,to_km,species
            V1,2026-03-16,07:00,10:00,8.0,12.6,dipper
            V2,2026-03-16,08:00,09:30,12.0,15.0,dipper
            V3,2026-03-30,,,8.0,10.0,
            """;

    @TempDir
    Path folder;

    private Notebooks notebooks;

    @BeforeEach
    void open() {
        notebooks = new Notebooks(folder);
    }

    @AfterEach
    void close() {
        notebooks.close();
    }

    private List<Sighting> sightings() {
        return notebooks.book.read(view -> view.sightings(SightingQuery.ALL));
    }

    @Test
    void takesEveryColumn() {
        notebooks.file("visits.csv", VISITS).file("sightings.csv", """
                        sighting;visit;time;km;bank;uncertainty_m;species;count;age;sex;activity;breeding_code;rings;flew_to_km;turned_back;observer;note;hat
                        b3;V1;0712;9,2;LB;15;DI;;ad;pair;song + food;FF;R/N;9,55;yes;AB;by the wall;red
                        """).add();

        Sighting sighting = sightings().get(0);
        assertThat(sighting.label()).isEqualTo("b3");
        assertThat(sighting.visitId()).isPresent();
        assertThat(sighting.date()).isEqualTo(LocalDate.of(2026, 3, 16));
        assertThat(sighting.time()).contains(LocalTime.of(7, 12));
        assertThat(sighting.place().chainage().km()).isEqualTo(9.2);
        assertThat(sighting.place().uncertaintyMetres()).isEqualTo(15);
        assertThat(sighting.count()).isEqualTo(2);
        assertThat(sighting.activities()).containsExactlyInAnyOrder(Activity.SINGING, Activity.CARRYING_FOOD);
        assertThat(sighting.breedingCode().orElseThrow().number()).isEqualTo(14);
        assertThat(sighting.flewTo().orElseThrow().km()).isEqualTo(9.55);
        assertThat(sighting.turnedBack()).isTrue();
        assertThat(sighting.note()).isEqualTo("by the wall; hat: red");
    }

    @Test
    void theSameFileTwiceAddsNothingEvenIfItWasSavedAgainOrHasGrown() {
        String first = "date,km,species,count,observer\n16/03/2026,8.40,dipper,1,AB\n17/03/2026,9.1,dipper,2,AB\n";
        notebooks.file("birds.csv", first).add();

        ImportResult again = notebooks.add();
        assertThat(again.added()).isZero();
        assertThat(again.tables().get(0).duplicates()).isEqualTo(2);
        assertThat(again.tables().get(0).importedBefore()).isTrue();

        String savedAgain =
                "Date;River km;Species;No.;Observer\r\n2026-03-16;8,4;Dipper;1.0;AB\r\n2026-03-17;9,1;DI;2;AB\r\n2026-03-18;9,3;DI;1;AB\r\n";
        ImportResult grown = notebooks
                .file("birds.csv", savedAgain, Charset.forName("windows-1252"))
                .add();
        assertThat(grown.added()).isEqualTo(1);
        assertThat(grown.tables().get(0).duplicates()).isEqualTo(2);
        assertThat(sightings()).hasSize(3);
    }

    @Test
    void theSameFileTwiceAddsNothingEvenIfABirdWasEditedSince() {
        notebooks.file("birds.csv", "date,km,species\n2026-03-16,8.40,dipper\n").add();
        Sighting bird = sightings().get(0);
        notebooks.book.change(Message.of("history.import", "edit"), "A. Brook", edit -> {
            edit.replace(new Sighting(
                    bird.id(),
                    bird.label(),
                    bird.visitId(),
                    bird.date(),
                    bird.time(),
                    bird.place(),
                    Species.KINGFISHER,
                    bird.count(),
                    bird.age(),
                    bird.sex(),
                    bird.activities(),
                    bird.breedingCode(),
                    bird.rings(),
                    bird.simultaneousWith(),
                    bird.flewTo(),
                    bird.turnedBack(),
                    bird.observer(),
                    bird.note()));
            return bird;
        });

        assertThat(notebooks.add().added()).isZero();
        assertThat(sightings()).extracting(Sighting::species).containsExactly(Species.KINGFISHER);
    }

    @Test
    void aRowRepeatedInItsFileIsTakenOnceAndTold() {
        ImportResult result = notebooks
                .file("birds.csv", "date,km,species\n2026-03-16,8.4,dipper\n2026-03-16,8.4,dipper\n")
                .add();

        assertThat(result.added()).isEqualTo(1);
        assertThat(Notebooks.keys(result, Finding.WARNING)).containsExactly("3 import.row.repeated");
    }

    @Test
    void aCorrectedRowWithTheSameLabelIsNoSecondBird() {
        notebooks
                .file("birds.csv", "sighting,date,km,species\na1,2026-03-16,8.4,dipper\n")
                .add();
        ImportResult result = notebooks
                .file("birds.csv", "sighting,date,km,species\na1,2026-03-16,8.6,dipper\n")
                .add();

        assertThat(Notebooks.keys(result, Finding.PROBLEM)).containsExactly("2 import.sighting.changed");
        assertThat(sightings()).hasSize(1);
    }

    @Test
    void asksForTheOrderOfDatesOnlyWhereNoCellShowsIt() {
        ImportResult open = notebooks
                .file("birds.csv", "date,km,species\n03/04/2025,8.4,dipper\n05/06/2025,8.5,dipper\n")
                .add();
        assertThat(Notebooks.keys(open, Finding.QUESTION))
                .containsExactly("2 import.ask.dateOrder", "3 import.ask.dateOrder");
        assertThat(open.tables().get(0).open()).isEqualTo(2);

        ImportResult shown = notebooks
                .file("birds.csv", "date,km,species\n03/04/2025,8.4,dipper\n25/04/2025,8.5,dipper\n")
                .add();
        assertThat(shown.isClean()).isTrue();
        assertThat(shown.tables().get(0).understood().dateCell().orElseThrow().row())
                .isEqualTo(3);
        assertThat(sightings()).extracting(Sighting::date).contains(LocalDate.of(2025, 4, 3));
    }

    @Test
    void aFileThatContradictsItselfIsAProblem() {
        ImportResult result = notebooks
                .file("birds.csv", "date,km,species\n25/04/2025,8.4,dipper\n04/25/2025,8.5,dipper\n3/4/2025,9,dipper\n")
                .add();

        assertThat(Notebooks.keys(result, Finding.PROBLEM)).containsExactly("3 import.date.contradiction");
        assertThat(Notebooks.keys(result, Finding.QUESTION)).containsExactly("4 import.ask.dateOrder");
    }

    @Test
    void answersSettleWhatIsOpen() {
        ImportAnswers none = ImportAnswers.none(Notebooks.TODAY);
        notebooks.answers = new ImportAnswers(
                none.today(),
                none.kind(),
                Optional.of(DateOrder.MONTH_FIRST),
                none.serials(),
                none.year(),
                none.zone(),
                Optional.of(DecimalSign.EITHER),
                Optional.of(Species.DIPPER),
                none.river(),
                none.rivers(),
                none.offRiverMetres());

        ImportResult result = notebooks
                .file("birds.csv", "date;km\n03/04/2025;8.4\n03/04/2025;8,5\n")
                .add();

        assertThat(result.isClean()).isTrue();
        assertThat(sightings()).extracting(Sighting::date).containsOnly(LocalDate.of(2025, 3, 4));
    }

    @Test
    void mixedDecimalSignsAreAskedAbout() {
        ImportResult result = notebooks
                .file("birds.csv", "date;km;species\n2025-04-03;8.4;DI\n2025-04-03;8,5;DI\n2025-04-03;8.6;DI\n")
                .add();

        assertThat(Notebooks.keys(result, Finding.QUESTION)).containsExactly("3 import.number.otherSign");
    }

    @Test
    void noneSeenMakesNoSightingAndNeedsAVisitThatLooked() {
        ImportResult result =
                notebooks.file("visits.csv", VISITS).file("birds.csv", """
                        visit,date,km,species,count
                        V1,,,dipper,0
                        V1,,,kingfisher,none
                        ,2026-04-13,8.4,dipper,nil
                        V1,,8.4,dipper,
                        """).add();

        assertThat(result.tables().get(1).noneSeen()).isEqualTo(1);
        assertThat(Notebooks.keys(result, Finding.PROBLEM))
                .containsExactly("3 import.none.notLookedFor", "4 import.none.noVisit");
        assertThat(sightings()).hasSize(1);
    }

    @Test
    void belongsToTheOneVisitThatPassed() {
        ImportResult result =
                notebooks.file("visits.csv", VISITS).file("birds.csv", """
                        date,time,km,species
                        2026-03-16,,9.0,dipper
                        2026-03-16,,12.3,dipper
                        2026-03-16,07:30,12.4,dipper
                        2026-03-17,,9.0,dipper
                        """).add();

        assertThat(result.tables().get(1).attached()).isEqualTo(2);
        assertThat(Notebooks.keys(result, Finding.WARNING)).contains("3 import.sighting.severalVisits");
        assertThat(sightings().stream().filter(sighting -> sighting.visitId().isPresent()))
                .hasSize(2);
    }

    @Test
    void checksASightingAgainstItsVisit() {
        ImportResult result =
                notebooks.file("visits.csv", VISITS).file("birds.csv", """
                        visit,date,km,species
                        V1,2026-03-17,9.0,dipper
                        V9,2026-03-16,9.0,dipper
                        V3,,10.5,dipper
                        """).add();

        assertThat(Notebooks.keys(result, Finding.PROBLEM))
                .containsExactly("2 import.sighting.otherDay", "3 import.visit.unknown.similar");
        assertThat(Notebooks.keys(result, Finding.WARNING)).contains("4 import.sighting.outside");
    }

    /** A phone that knows its place to 8 m begins a walk and notes a bird a step behind it. */
    @Test
    void aPlaceAsNearToItsWalkAsItMayBeWrongIsNothingToLookAt() {
        ImportResult result =
                notebooks.file("visits.csv", VISITS).file("birds.csv", """
                        visit,date,km,uncertainty_m,species
                        V3,,10.007,8,dipper
                        V3,,10.012,8,dipper
                        """).add();

        assertThat(Notebooks.keys(result, Finding.WARNING))
                .containsOnlyOnce("3 import.sighting.outside")
                .doesNotContain("2 import.sighting.outside");
    }

    @Test
    void simultaneousSightingsAreMutualAndGoInTogetherOrNotAtAll() {
        ImportResult result = notebooks.file("birds.csv", """
                        sighting,date,km,species,simultaneous_with
                        b2,2026-03-16,8.0,dipper,c1
                        c1,2026-03-16,8.9,dipper,
                        d1,2026-03-16,99,dipper,e1
                        e1,2026-03-16,9.9,dipper,
                        f1,2026-03-17,9.9,dipper,c1
                        g1,2026-03-17,9.0,dipper,zz
                        """).add();

        assertThat(Notebooks.keys(result, Finding.PROBLEM))
                .contains(
                        "5 import.simultaneous.heldBack",
                        "6 import.simultaneous.otherDay",
                        "7 import.simultaneous.unknown");
        List<Sighting> added = sightings();
        assertThat(added).extracting(Sighting::label).containsExactly("b2", "c1");
        assertThat(added.get(0).simultaneousWith()).containsExactly(added.get(1).id());
        assertThat(added.get(1).simultaneousWith()).containsExactly(added.get(0).id());
    }

    @Test
    void reportsBirdsThatMayBeTheSameAndKeepsBoth() {
        ImportResult result = notebooks.file("birds.csv", """
                        date,time,km,species,observer
                        2026-03-16,07:10,8.40,dipper,AB
                        2026-03-16,07:18,8.45,dipper,CD
                        2026-03-16,07:30,8.45,dipper,EF
                        2026-03-16,07:10,8.45,kingfisher,CD
                        """).add();

        assertThat(Notebooks.keys(result, Finding.WARNING)).containsExactly("3 import.sighting.sameAsRow");
        assertThat(result.added()).isEqualTo(4);
    }

    @Test
    void placesThatDisagreeLieFarOffOrAreNoPlaceAreRefused() {
        ImportResult result = notebooks
                .file("landmarks.csv", "name,km\nMill Bridge,8.1\n")
                .file("birds.csv", """
                        date,km,landmark,offset_m,latitude,longitude,grid_ref,species
                        2026-03-16,9.5,Mill Bridge,,,,,dipper
                        2026-03-16,8.2,Mill Bridge,50,,,,dipper
                        2026-03-16,,Mull Bridge,,,,,dipper
                        2026-03-16,,,,57.05,-3.3985,,dipper
                        2026-03-16,,,,57.05,-3.3,,dipper
                        2026-03-16,,,,-3.3985,57.05,,dipper
                        2026-03-16,,,,57.05,,,dipper
                        2026-03-16,,,,,,SO 123 456,dipper
                        2026-03-16,,,,,,,dipper
                        2026-03-16,-2,,,,,,dipper
                        """)
                .add();

        assertThat(Notebooks.keys(result, Finding.PROBLEM))
                .containsExactlyInAnyOrder(
                        "2 import.place.disagree",
                        "4 place.unknown.similar",
                        "6 place.held",
                        "7 import.coordinates.exchanged",
                        "8 import.coordinates.half",
                        "9 place.held",
                        "10 import.place.missing",
                        "11 import.km.negative");
    }

    @Test
    void warnsOfABirdInAnOddYear() {
        StringBuilder text = new StringBuilder("date,km,species\n");
        for (int i = 1; i <= 20; i++) {
            text.append("2026-03-").append(i < 10 ? "0" : "").append(i).append(",8.4,dipper\n");
        }
        ImportResult result =
                notebooks.file("birds.csv", text + "2025-03-16,8.4,dipper\n").add();

        assertThat(Notebooks.keys(result, Finding.WARNING)).containsExactly("22 import.date.oddYear");
    }

    @Test
    void countsRowsAsTheFileDoesAndPassesOverSums() {
        ImportResult result = notebooks.file("birds.csv", """
                        date,km,species,note
                        2026-03-16,8.4,dipper,"two
                        lines"

                        2026-03-32,8.4,dipper,
                        Total,,2,
                        """).add();

        assertThat(Notebooks.keys(result, Finding.PROBLEM)).containsExactly("4 import.date.monthTooShort");
        assertThat(result.tables().get(0).totals()).isEqualTo(1);
        assertThat(result.added()).isEqualTo(1);
    }

    @Test
    void aRowThatBreaksItsColumnsIsRefused() {
        ImportResult result = notebooks
                .file("birds.csv", "date,km,species\n2026-03-16,8,4,dipper\n2026-03-16,8.4,dipper,,,\n")
                .add();

        assertThat(Notebooks.keys(result, Finding.PROBLEM)).contains("2 import.row.tooWide");
        assertThat(result.added()).isEqualTo(1);
    }

    @Test
    void aStrayQuotationMarkIsToldWhereItOpens() {
        ImportResult result = notebooks.file("birds.csv", """
                        date,km,species,note
                        "2026-03-16,8.4,dipper,by the wall"
                        2026-03-16,8.4,dipper,"open
                        2026-03-17,8.5,dipper,lost
                        """).add();

        assertThat(Notebooks.keys(result, Finding.PROBLEM))
                .contains("2 import.row.openQuote", "3 import.row.openQuote");
        assertThat(result.added()).isZero();
    }

    @Test
    void rejectedRowsComeBackInTheirOwnLayout() throws Exception {
        notebooks.file(
                "birds.csv",
                "\uFEFFdate;km;species;note\r\n2026-03-16;8,4;dipper;\r\nmid Apr;8,9;dipper;\"a; b\"\r\n",
                StandardCharsets.UTF_16LE);
        TableImport tables = notebooks.tables();
        notebooks.book.rehearse(edit -> tables.into(edit, Progress.NONE));
        Path rejected = folder.resolve("rejected.csv");

        tables.writeLeftOut(name -> rejected);

        assertThat(rejected)
                .content(StandardCharsets.UTF_16LE)
                .isEqualTo("\uFEFFdate;km;species;note\r\nmid Apr;8,9;dipper;\"a; b\"\r\n");
    }

    /** 57.05 N 3.40 W, beside km 5.57, is NO 1516 9630 by PROJ 9.1.1, EPSG 27700 with transformation 1314. */
    @Test
    void takesGridReferencesAndKeepsThemAsWritten() {
        ImportResult result = notebooks.file("a.csv", """
                        date,grid_ref,km,species
                        2026-03-16,NO 1516 9630,,dipper
                        2026-03-17,NO 15 96,,dipper
                        2026-03-18,NO 1516 963,,dipper
                        2026-03-19,NO 1516 9630,9.0,dipper
                        """).add();

        assertThat(Notebooks.keys(result, Finding.PROBLEM))
                .containsExactlyInAnyOrder("4 place.grid.unequal", "5 import.place.disagree");
        List<Sighting> sightings = sightings();
        assertThat(sightings)
                .extracting(Sighting::note)
                .containsExactly("grid_ref: NO 1516 9630", "grid_ref: NO 15 96");
        assertThat(sightings.get(0).place().chainage().km()).isCloseTo(5.57, within(0.05));
        assertThat(sightings.get(0).place().uncertaintyMetres()).isCloseTo(7.07, within(0.01));
        assertThat(sightings.get(1).place().uncertaintyMetres()).isCloseTo(707, within(0.5));
    }
}
