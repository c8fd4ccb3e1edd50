package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EstimateTerritoriesCommandTest {
    private static final String VISITS = """
            season,river,visit,day,from_km,to_km
            2020,North,1,60,0,5
            2020,North,2,90,0,5
            2021,North,1,60,0,5
            """;

    /** Two birds at once at km 1.2 and 1.4, each met again a month later, and a bird far off met once. */
    private static final String SIGHTINGS = """
            Season;River;Sighting;Visit;KM;simultaneous with
            2020;North;a;1;1,2;b
            2020;North;b;1;1,4;
            2020;North;c;2;1,15;
            2020;North;d;2;1,45;
            2020;North;e;2;4,0;
            """;

    @TempDir
    private Path folder;

    private CommandRun run(String sightings, String visits, String... options) throws IOException {
        Path birds = Files.writeString(folder.resolve("birds.csv"), sightings);
        Path walks = Files.writeString(folder.resolve("walks.csv"), visits);
        Object[] arguments = new Object[options.length + 5];
        arguments[0] = "estimate";
        arguments[1] = "territories";
        arguments[2] = birds;
        arguments[3] = "--visits";
        arguments[4] = walks;
        System.arraycopy(options, 0, arguments, 5, options.length);
        return CommandRun.of(arguments);
    }

    @Test
    void mapsEachSeasonAndRiverOfTheVisits() throws IOException {
        CommandRun run = run(SIGHTINGS, VISITS, "--json");
        JsonArray maps = JsonParser.parseString(run.out()).getAsJsonArray();
        JsonObject first = maps.get(0).getAsJsonObject();
        JsonObject river = first.getAsJsonArray("rivers").get(0).getAsJsonObject();

        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).isZero();
        assertThat(maps).hasSize(2);
        assertThat(first.get("season").getAsInt()).isEqualTo(2020);
        assertThat(river.get("river").getAsString()).isEqualTo("North");
        assertThat(river.get("effectiveVisits").getAsInt()).isEqualTo(2);
        assertThat(river.getAsJsonObject("byRule").get("count").getAsInt()).isEqualTo(2);
        assertThat(maps.get(1)
                        .getAsJsonObject()
                        .getAsJsonArray("rivers")
                        .get(0)
                        .getAsJsonObject()
                        .getAsJsonObject("byRule")
                        .get("count")
                        .getAsInt())
                .isZero();
    }

    @Test
    void countsDaysFromTheFirstWhereTheyAreNoDaysOfAYear() throws IOException {
        CommandRun run = run(
                "sighting,visit,km\na,0,1.2\nb,1,1.3\n",
                "visit,day,from_km,to_km\n0,0,0,5\n1,14,0,5\n2,28,0,5\n",
                "--json");
        JsonObject map =
                JsonParser.parseString(run.out()).getAsJsonArray().get(0).getAsJsonObject();
        JsonObject river = map.getAsJsonArray("rivers").get(0).getAsJsonObject();

        assertThat(map.get("season").getAsInt()).isEqualTo(1);
        assertThat(river.get("effectiveVisits").getAsInt()).isEqualTo(3);
        assertThat(river.getAsJsonObject("byRule").get("count").getAsInt()).isEqualTo(1);
    }

    @Test
    void takesTheSeasonFromADate() throws IOException {
        CommandRun run = run("sighting,visit,km\n", "visit,day,from_km,to_km\n1,2023-03-04,0,5\n", "--json");

        assertThat(JsonParser.parseString(run.out())
                        .getAsJsonArray()
                        .get(0)
                        .getAsJsonObject()
                        .get("season")
                        .getAsInt())
                .isEqualTo(2023);
    }

    @Test
    void showsAPersonOneRowASeasonAndRiver() throws IOException {
        assertThat(run(SIGHTINGS, VISITS).out().lines().filter(line -> line.contains("North  5.0")))
                .hasSize(2);
    }

    /** A pair met in turn just below a confluence and just up the tributary is one, told on one of the two rivers. */
    @Test
    void joinsATributaryToItsRiver() throws IOException {
        StringBuilder visits = new StringBuilder("visit,day,from_km,to_km,river,joins,joins_km\n");
        StringBuilder sightings = new StringBuilder("sighting,visit,km,river\n");
        for (int i = 0; i < 6; i++) {
            int day = 60 + 14 * i;
            visits.append("v%d,%d,0,6,North,,\nw%d,%d,0,3,Beck,North,3.0\n".formatted(i, day, i, day));
            sightings.append("a%d,v%d,1.0,North\n".formatted(i, i));
            sightings.append(i % 2 == 0 ? "b%d,v%d,2.9,North\n".formatted(i, i) : "b%d,w%d,0.1,Beck\n".formatted(i, i));
        }
        CommandRun run = run(sightings.toString(), visits.toString(), "--json");

        assertThat(run.err()).isEmpty();
        assertThat(run.out()).containsPattern("\"arm\":\\s*\\{\\s*\"river\":");
    }

    @Test
    void tellsWhatIsWrongWithConfluences() throws IOException {
        CommandRun run = run("sighting,visit,km,river\n", """
                visit,day,from_km,to_km,river,joins,joins_km
                1,60,0,5,North,North,1
                2,60,0,5,South,Nowhere,1
                3,60,0,5,West,South,1
                4,70,0,5,West,South,2
                """);

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.err())
                .contains("North would join itself")
                .contains("no visit to “Nowhere”")
                .contains("West joins South at km 1.000");
    }

    @Test
    void tellsEverythingThatIsWrongByRowAndColumn() throws IOException {
        CommandRun birds = run(
                "sighting,visit,km,simultaneous_with\na,1,-2,\nb,9,1.2,\na,1,1.4,zz\nc,1,1,a\nd,2,1,a\n",
                "visit,day,from_km,to_km\n1,60,0,5\n2,61,0,5\n");
        CommandRun walks = run("sighting,visit,km\n", "visit,day,from_km,to_km\n1,x,0,5\n2,61,5,5\n2,,0,5\n");

        assertThat(birds.exitCode()).isEqualTo(ExitCode.PROBLEMS);
        assertThat(birds.out()).isEmpty();
        assertThat(birds.err())
                .contains("birds.csv:2:km: “-2”")
                .contains("birds.csv:3:visit: “9”")
                .contains("birds.csv:4:sighting: “a”")
                .contains("birds.csv:4:simultaneous_with: “zz”")
                .contains("birds.csv:6:simultaneous_with: “a”")
                .doesNotContain("birds.csv:5");
        assertThat(walks.exitCode()).isEqualTo(ExitCode.PROBLEMS);
        assertThat(walks.err())
                .contains("walks.csv:2:day: “x”")
                .contains("walks.csv:3:to_km: “5”")
                .contains("walks.csv:4:visit: “2”")
                .contains("walks.csv:4:day");
    }

    @Test
    void asksForSeasonsOfVisitsWhereSightingsHaveThem() throws IOException {
        CommandRun run = run("season,sighting,visit,km\n2020,a,1,2\n", "visit,day,from_km,to_km\n1,60,0,5\n");

        assertThat(run.exitCode()).isEqualTo(ExitCode.PROBLEMS);
        assertThat(run.err()).contains("walks.csv: The table of sightings has a column season");
    }
}
