package org.ouzelbook.tracker.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.NestStage;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.exchange.xlsx.PackedWorkbook;
import org.ouzelbook.tracker.store.SightingQuery;

class TableImportTest {
    @TempDir
    Path folder;

    @Test
    void takesEveryKindInTheOrderOfWhatRefersToWhat() {
        try (Notebooks notebooks = new Notebooks(folder)) {
            notebooks
                    .file("1.csv", "date,landmark,species,visit\n2026-03-16,Mill Bridge,dipper,V1\n")
                    .file(
                            "2.csv",
                            "nest,date,stage,eggs,young,outcome\nN1,2026-04-12,\"4 eggs, warm\",4,,\nN1,2026-05-14,,,3+,unknown\n")
                    .file("3.csv", "nest,landmark,species,site,height_m\nN1,Mill Bridge,dipper,bridge,1.5\n")
                    .file(
                            "4.csv",
                            "visit,date,from_km,to_km,species,observers\nV1,2026-03-16,8,12,all,\"A. Brook, C. Dell\"\n")
                    .file("5.csv", "name,km,kind,aliases\nMill Bridge,8.1,bridge,Mill Br.; the mill\n")
                    .file("6.csv", "bird,left_upper,left_lower,right_upper,right_lower,hatched\nB1,R/N,m,W,,2024\n")
                    .file(
                            "7.csv",
                            "sample,date,km,taxon,abundance,minutes\nK1,2026-04-20,8.1,Baetidae,B,3\nK1,2026-04-20,8.1,Heptageniidae,12,3\n")
                    .file("8.csv", "reach,from_km,to_km\nLower,0,9\n");

            ImportResult result = notebooks.add();

            assertThat(Notebooks.keys(result, Finding.PROBLEM)).isEmpty();
            assertThat(Notebooks.keys(result, Finding.QUESTION)).isEmpty();
            assertThat(result.added()).isEqualTo(10);
            notebooks.book.read(view -> {
                Visit visit = view.visits().get(0);
                assertThat(visit.observers()).containsExactly("A. Brook", "C. Dell");
                assertThat(visit.lookedFor()).isEqualTo(Species.all());
                KickSample sample = view.kickSamples().get(0);
                assertThat(sample.taxa()).hasSize(2);
                assertThat(view.nestChecks())
                        .extracting(NestCheck::stage)
                        .containsExactly(NestStage.EGGS, NestStage.YOUNG);
                assertThat(view.nestChecks().get(1).outcome()).contains(NestOutcome.UNKNOWN);
                assertThat(view.nestChecks().get(1).note()).isEqualTo("young: 3+");
                assertThat(view.sightings(SightingQuery.ALL).get(0).visitId()).contains(visit.id());
                return visit;
            });
            ImportResult again = notebooks.add();
            assertThat(again.added()).isZero();
            assertThat(again.isClean()).isTrue();
        }
    }

    @Test
    void saysThatEverySheetIsHidden() {
        try (Notebooks notebooks = new Notebooks(folder)) {
            notebooks.file("notes.xlsx", "");
            new PackedWorkbook()
                    .sheet("birds", "hidden", "</sheetData>")
                    .sheet("visits", "veryHidden", "</sheetData>")
                    .write(folder.resolve("notes.xlsx"));

            assertThat(Notebooks.keys(notebooks.add(), Finding.PROBLEM)).containsExactly("0 import.file.allHidden");
        }
    }

    /** Libraries that write spreadsheets leave formulas without a result; ECMA-376, 18.3.1.96: the value {@code v} may be missing. */
    @Test
    void saysWhichCellHoldsAFormulaWithoutAResult() {
        try (Notebooks notebooks = new Notebooks(folder)) {
            notebooks.file("notes.xlsx", "");
            new PackedWorkbook().sheet("birds", "visible", """
                            <row r="1"><c t="str"><v>date</v></c><c t="str"><v>km</v></c><c t="str"><v>species</v></c></row>
                            <row r="2"><c t="str"><v>2026-03-16</v></c><c><f>B1+1</f></c><c t="str"><v>dipper</v></c></row>
                            <row r="3"><c t="str"><v>2026-03-16</v></c><c><f>B1+1</f><v>8.2</v></c><c t="str"><v>dipper</v></c></row>
                            </sheetData>""").write(folder.resolve("notes.xlsx"));

            ImportResult result = notebooks.add();

            assertThat(Notebooks.keys(result, Finding.PROBLEM)).containsExactly("2 import.cell.noResult");
            assertThat(result.added()).isEqualTo(1);
        }
    }

    @Test
    void namesARiverFileOnceWhereItIsBroken() {
        try (Notebooks notebooks = new Notebooks(folder)) {
            ImportResult result = notebooks
                    .file("a.geojson", "{")
                    .file("b.gpx", "<gpx><trk><trkseg><trkpt lat=\"1\"/></trkseg></trk></gpx>")
                    .add();

            assertThat(result.findings().reasons(Finding.PROBLEM))
                    .flatExtracting(Findings.Reason::first)
                    .extracting(Problem::file, problem -> problem.message().key())
                    .containsExactlyInAnyOrder(
                            tuple(folder.resolve("a.geojson").toString(), "river.file.brokenJson"),
                            tuple(folder.resolve("b.gpx").toString(), "river.file.noLatLon"));
        }
    }

    @Test
    void overwritesNothing() {
        try (Notebooks notebooks = new Notebooks(folder)) {
            notebooks
                    .file("v.csv", "visit,date,from_km,to_km\nV1,2026-03-16,8,12\n")
                    .add();
            ImportResult result = notebooks
                    .file("v.csv", "visit,date,from_km,to_km\nV1,2026-03-17,8,12\n")
                    .add();

            assertThat(Notebooks.keys(result, Finding.PROBLEM)).containsExactly("2 import.label.other");
        }
    }

    @Test
    void asksWhichRiverWhereThereAreSeveral() {
        try (Notebooks notebooks = new Notebooks(folder, "Other Water")) {
            ImportResult result = notebooks
                    .file(
                            "b.csv",
                            "date,km,river,species\n2026-03-16,8,,dipper\n2026-03-16,8,arrel water,dipper\n2026-03-16,8,Nile,dipper\n")
                    .add();

            assertThat(Notebooks.keys(result, Finding.QUESTION)).containsExactly("2 import.ask.river");
            assertThat(Notebooks.keys(result, Finding.PROBLEM)).containsExactly("4 import.river.unknown");
            assertThat(result.added()).isEqualTo(1);
        }
    }

    @Test
    void takesTheRiverOfTheVisitThatARowNames() {
        try (Notebooks notebooks = new Notebooks(folder, "Other Water")) {
            ImportResult result = notebooks
                    .file(
                            "visits.csv",
                            "visit,date,river,from_km,to_km,species\nA1,2026-03-16,Arrel Water,2,12,dipper\nO1,2026-03-16,Other Water,2,12,dipper\n")
                    .file(
                            "marks.csv",
                            "name,river,km,kind\nMill Bridge,Arrel Water,8.1,bridge\nMill Bridge,Other Water,4.1,bridge\n")
                    .file(
                            "birds.csv",
                            "visit,km,landmark,latitude,longitude,species,count\nO1,8.4,,,,dipper,1\nA1,8.4,,,,dipper,1\nO1,,Mill Bridge,,,dipper,1\nA1,,,57.02538,-3.0,dipper,1\n")
                    .add();

            assertThat(Notebooks.keys(result, Finding.QUESTION)).isEmpty();
            assertThat(Notebooks.keys(result, Finding.PROBLEM)).containsExactly("5 import.sighting.otherRiver");
            notebooks.book.read(view -> {
                UUID other = view.river("Other Water").orElseThrow().id();
                UUID arrel = view.river("Arrel Water").orElseThrow().id();
                assertThat(view.sightings(SightingQuery.ALL))
                        .extracting(
                                one -> one.place().riverId(),
                                one -> one.place().chainage().km())
                        .containsExactlyInAnyOrder(tuple(other, 8.4), tuple(arrel, 8.4), tuple(other, 4.1));
                return other;
            });
        }
    }

    @Test
    void countsNoneSeenOnTheOneVisitOfADayWhateverItsRiver() {
        try (Notebooks notebooks = new Notebooks(folder, "Other Water")) {
            ImportResult result = notebooks
                    .file(
                            "visits.csv",
                            "visit,date,river,from_km,to_km,species\nA1,2026-03-16,Arrel Water,2,12,dipper\nA2,2026-03-17,Arrel Water,2,12,dipper\nO2,2026-03-17,Other Water,2,12,dipper\n")
                    .file("none.csv", "date,km,species,count\n2026-03-16,,dipper,0\n2026-03-17,,dipper,0\n")
                    .add();

            assertThat(Notebooks.keys(result, Finding.PROBLEM)).containsExactly("3 import.none.noVisit");
        }
    }

    @Test
    void aSampleGoesInWholeOrNotAtAll() {
        try (Notebooks notebooks = new Notebooks(folder)) {
            ImportResult result = notebooks
                    .file(
                            "k.csv",
                            "sample,date,km,taxon,abundance\nK1,2026-04-20,8.1,Baetidae,B\nK1,2026-04-21,8.1,Heptageniidae,many\n")
                    .add();

            assertThat(result.added()).isZero();
            assertThat(Notebooks.keys(result, Finding.PROBLEM))
                    .contains("2 import.sample.heldBack", "3 import.sample.abundance", "3 import.sample.otherDay");
        }
    }

    @Test
    void saysWhichTableItTakesAFileForOrWhatItLacks() {
        try (Notebooks notebooks = new Notebooks(folder)) {
            ImportResult result = notebooks
                    .file("a.csv", "date,species,count\n2026-04-20,dipper,1\n")
                    .file("b.csv", "nest,date,km\nN1,2026-04-20,8.1\n")
                    .file("c.csv", "colour,shape\nred,round\n")
                    .add();

            assertThat(Notebooks.keys(result, Finding.PROBLEM))
                    .containsExactlyInAnyOrder(
                            "0 import.kind.nearest", "0 import.kind.doubt", "0 import.file.noHeader");
        }
    }

    @Test
    void stopsWhenAskedAndLeavesNothing() {
        try (Notebooks notebooks = new Notebooks(folder)) {
            StringBuilder text = new StringBuilder("sighting,date,km,species\n");
            for (int i = 0; i < 3000; i++) {
                text.append(i).append(",2026-03-16,8.4,dipper\n");
            }
            TableImport tables = notebooks.file("b.csv", text.toString()).tables();

            assertThatThrownBy(() -> notebooks.book.change(
                            Message.of("history.import", "b.csv"),
                            "A. Brook",
                            edit -> tables.into(edit, (done, total) -> done < 2000)))
                    .isInstanceOf(ImportStopped.class);
            List<?> left = notebooks.book.read(view -> view.sightings(SightingQuery.ALL));
            assertThat(left).isEmpty();
        }
    }

    /** Seeded, so that a failure can be seen again. */
    @Test
    void noCellTextEverThrows() {
        String[] headers = {
            "sighting,visit,date,time,km,landmark,offset_m,latitude,longitude,bank,uncertainty_m,species,count,age,sex,activity,breeding_code,rings,simultaneous_with,flew_to_km,turned_back,observer,note,odd",
            "visit,date,start,end,from_km,to_km,direction,mode,observers,species,level,weather,effective",
            "name,km,kind,aliases,nest_site",
            "reach,from_km,to_km,river",
            "nest,km,species,site,height_m,found",
            "nest,date,time,stage,eggs,young,adults,outcome",
            "bird,left_upper,left_lower,right_upper,right_lower,ring,sex,hatched,ringed",
            "sample,date,km,taxon,abundance,minutes"
        };
        Random random = new Random(20261125);
        try (Notebooks notebooks = new Notebooks(folder)) {
            for (int file = 0; file < headers.length; file++) {
                int columns = headers[file].split(",", -1).length;
                StringBuilder text = new StringBuilder(headers[file]).append('\n');
                for (int row = 0; row < 400; row++) {
                    for (int column = 0; column < columns; column++) {
                        text.append(column == 0 ? "" : ",").append(NastyCells.cell(random));
                    }
                    text.append('\n');
                }
                notebooks.file("fuzz" + file + ".csv", text.toString());
            }
            ImportResult result = notebooks.add();

            assertThat(result.tables()).hasSize(headers.length);
        }
    }

    @Test
    void takesTheSheetsOfASpreadsheetThatAreTables() {
        try (Notebooks notebooks = new Notebooks(folder)) {
            notebooks.file("notes.xlsx", "");
            new PackedWorkbook()
                    .sheet("Read me", "visible", "<row><c t=\"str\"><v>My notes</v></c></row></sheetData>")
                    .sheet("Birds", "visible", """
                            <row r="1"><c t="str"><v>date</v></c><c t="str"><v>km</v></c><c t="str"><v>species</v></c></row>
                            <row r="2"><c t="str"><v>2026-03-16</v></c><c><v>8.35</v></c><c t="str"><v>dipper</v></c></row>
                            <row r="5"><c t="str"><v>2026-03-17</v></c><c><v>99</v></c><c t="str"><v>dipper</v></c></row>
                            </sheetData>""")
                    .write(folder.resolve("notes.xlsx"));

            ImportResult result = notebooks.add();

            assertThat(notebooks.tables().skipped()).extracting(Message::key).containsExactly("import.skipped.noTable");
            assertThat(result.added()).isEqualTo(1);
            assertThat(Notebooks.keys(result, Finding.PROBLEM)).containsExactly("5 place.beyondLine");
            assertThat(notebooks.add().tables().get(0).importedBefore()).isTrue();
        }
    }
}
