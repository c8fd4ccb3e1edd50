package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code nests} and {@code survival}, through a book, against figures worked by hand and the estimators on bare tables. */
class NestsAndSurvivalCommandTest {
    private static final int FIRST_SEASON = 2021;

    @TempDir
    private Path folder;

    private Path book;

    @BeforeEach
    void makeTheBook() throws IOException {
        book = folder.resolve("keld");
        Path river = folder.resolve("keld-water.geojson");
        try (InputStream in = SeasonAtKeldWaterTest.class.getResourceAsStream("keld-water/keld-water.geojson")) {
            Files.copy(in, river);
        }
        CommandRun.of("new", book, "--river", river);
    }

    private void imports(String name, String text) throws IOException {
        Path table = Files.writeString(folder.resolve(name), text);
        CommandRun run = CommandRun.of("import", book, table);
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
    }

    private static JsonObject json(Object... arguments) {
        Object[] all = Arrays.copyOf(arguments, arguments.length + 1);
        all[arguments.length] = "--json";
        CommandRun run = CommandRun.of(all);
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        return JsonParser.parseString(run.out()).getAsJsonObject();
    }

    private static double number(JsonElement object, String name) {
        return object.getAsJsonObject().get(name).getAsDouble();
    }

    private void nests() throws IOException {
        imports("nests.csv", """
                nest,km,species,site,found
                N1,12.3,dipper,bridge,2026-04-01
                N2,13.4,dipper,rock,2026-04-01
                N3,14.1,dipper,wall,2026-04-05
                """);
        imports("nest_checks.csv", """
                nest,date,stage,eggs,young,outcome
                N1,2026-04-01,eggs,5,,
                N1,2026-04-11,eggs,5,,
                N2,2026-04-01,eggs,4,,
                N2,2026-04-11,empty,,,failed
                N3,2026-04-05,empty,,,
                """);
    }

    /** 10 days survived and half of 10 days lost: 15 exposure days and one loss, 1 − 1/15 a day. Mayfield (1961), by hand. */
    @Test
    void dailySurvivalIsThatOfExposureDaysWorkedByHand() throws IOException {
        nests();

        JsonObject answer = json("nests", book);

        assertThat(number(answer, "exposureDays")).isCloseTo(15, within(1e-12));
        assertThat(number(answer, "losses")).isEqualTo(1);
        assertThat(number(answer.get("dailySurvival"), "estimate")).isCloseTo(14 / 15.0, within(1e-12));
        assertThat(number(answer.get("success"), "estimate"))
                .isCloseTo(Math.pow(14 / 15.0, number(answer, "periodDays")), within(1e-12));
        assertThat(answer.get("warnings").toString()).contains("only one loss").contains("unknown end");
        assertThat(answer.getAsJsonArray("nests")).hasSize(3);
        assertThat(answer.getAsJsonObject("clutch").get("why").getAsString()).contains("is only one value");
    }

    @Test
    void aPersonReadsOfNestsWithTheLawBeside() throws IOException {
        nests();

        CommandRun run = CommandRun.of("nests", book, "--season", "2026");
        CommandRun none = CommandRun.of("nests", book, "--season", "2020");
        CommandRun days = CommandRun.of("nests", book, "--incubation", "16-14");

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out())
                .contains("15 exposure days with one loss")
                .contains("0.9333")
                .contains("the law protects nests")
                .doesNotContain("NaN")
                .doesNotContain("N1");
        assertThat(none.exitCode()).isEqualTo(ExitCode.WRONG_USAGE);
        assertThat(none.err()).contains("no checked nests");
        assertThat(days.exitCode()).isEqualTo(ExitCode.WRONG_USAGE);
    }

    private void ringedBirds() throws IOException {
        imports("ringed_birds.csv", """
                bird,left_upper,left_lower,right_upper,right_lower,sex
                A,O,W,m,R,f
                B,O,R,m,W,m
                C,W,O,m,R,f
                D,R,O,m,W,m
                """);
        String[][] seen = {
            {"OW/mR", "OR/mW", "WO/mR"}, {"OW/mR", "WO/mR", "RO/mW"}, {"OW/mR", "OR/mW", "RO/mW"}, {"OW/mR"}
        };
        StringBuilder visits = new StringBuilder("visit,date,from_km,to_km,species,effective\n");
        StringBuilder sightings = new StringBuilder("sighting,visit,km,species,count,rings\n");
        for (int i = 0; i < seen.length; i++) {
            int year = FIRST_SEASON + i;
            visits.append(String.format("V%d,%d-04-01,12,17,dipper,yes%n", year, year));
            for (int bird = 0; bird < seen[i].length; bird++) {
                sightings.append(
                        String.format("s%d-%d,V%d,%d.5,dipper,1,%s%n", year, bird, year, 12 + bird, seen[i][bird]));
            }
        }
        imports("visits.csv", visits.toString());
        imports("sightings.csv", sightings.toString());
    }

    /** The histories of the readings above, written down by hand: 1111, 1010, 1100, 0110. */
    @Test
    void survivalIsThatOfTheHistoriesWrittenDownByHand() throws IOException {
        ringedBirds();
        Path histories = Files.writeString(folder.resolve("histories.csv"), "history\n1111\n1010\n1100\n0110\n");

        JsonObject ofBook = json("survival", book);
        JsonObject ofTable = json("estimate", "survival", histories);

        assertThat(ofBook.get("birds").getAsInt()).isEqualTo(4);
        assertThat(ofBook.get("occasions").getAsInt()).isEqualTo(4);
        assertThat(number(ofBook, "logLikelihood")).isCloseTo(number(ofTable, "logLikelihood"), within(1e-9));
        assertThat(ofBook.get("parameters")).isEqualTo(ofTable.get("parameters"));
        assertThat(ofBook.getAsJsonObject("readings").get("identified").getAsInt())
                .isEqualTo(10);
    }

    /** A ringed bird is of the species that its rings were read with: E is a kingfisher, F was read as both, G as neither. */
    @Test
    void survivalIsThatOfOneSpecies() throws IOException {
        ringedBirds();
        imports("more_birds.csv", """
                bird,left_upper,left_lower,right_upper,right_lower,sex,ringed
                E,G,W,m,G,f,
                F,G,O,m,G,m,
                G,G,R,m,G,m,2023-04-01
                """);
        imports(
                "more_sightings.csv",
                String.format("""
                sighting,date,km,species,count,rings
                k1,%d-04-02,12.5,kingfisher,1,GW/mG
                k2,%d-04-02,12.5,kingfisher,1,GW/mG
                k3,%d-04-02,13.5,kingfisher,1,GO/mG
                d1,%d-04-02,13.5,dipper,1,GO/mG
                """, FIRST_SEASON, FIRST_SEASON + 1, FIRST_SEASON, FIRST_SEASON + 1));

        JsonObject dippers = json("survival", book);
        JsonObject kingfishers = json("survival", book, "--species", "kingfisher");

        assertThat(dippers.get("birds").getAsInt()).isEqualTo(4);
        assertThat(kingfishers.get("birds").getAsInt()).isEqualTo(1);
        for (JsonObject answer : List.of(dippers, kingfishers)) {
            assertThat(answer.get("warnings").toString())
                    .contains("F was read as dipper, kingfisher")
                    .contains("One ringed bird was never completely read");
        }
    }

    @Test
    void saysWhyThereIsNoSurvivalAndWhatCannotBeAsked() throws IOException {
        CommandRun none = CommandRun.of("survival", book);
        ringedBirds();
        CommandRun mood = CommandRun.of("survival", book, "--survival-by", "mood");
        CommandRun oneSeason = CommandRun.of("survival", book, "--from", "2024-01-01");
        CommandRun told = CommandRun.of("survival", book);

        assertThat(none.exitCode()).isEqualTo(ExitCode.WRONG_USAGE);
        assertThat(none.err()).contains("no ringed birds");
        assertThat(mood.exitCode()).isEqualTo(ExitCode.WRONG_USAGE);
        assertThat(mood.err()).contains("mood");
        assertThat(oneSeason.exitCode()).isZero();
        assertThat(oneSeason.out()).contains("Not estimable");
        assertThat(told.out())
                .contains("4 birds have a history over 4 seasons")
                .contains("Ring numbers and readings are private")
                .doesNotContain("OW/mR")
                .doesNotContain("NaN");
    }
}
