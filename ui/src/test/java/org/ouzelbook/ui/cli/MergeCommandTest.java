package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Several people's books, put into one at the command line. */
class MergeCommandTest {
    private static final String RIVER = """
            {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
              [[-6.40,57.28],[-6.40,57.20]]}}
            """;

    @TempDir
    Path folder;

    private Path mine;
    private Path anna;

    @BeforeEach
    void makeTheBooks() throws IOException {
        mine = book("mine.mv.db");
        anna = book("anna.mv.db");
        take(mine, "name,km,kind\nKirk Bridge,4.1,bridge\n");
        take(anna, "name,km,kind\nKirk Bridge,4.1,bridge\nOtter Stone,2.2,rock\n");
        take(
                mine,
                "visit,date,start,end,from_km,to_km,species,observers\n1,2026-03-02,07:00,09:35,1.2,5.4,dipper,Ina\n");
        take(
                anna,
                "visit,date,start,end,from_km,to_km,species,observers\n1,2026-03-02,07:00,09:30,1.2,5.4,dipper,Anna\n");
        take(mine, "sighting,visit,km,time,species,count\nb1,1,3.42,07:12,dipper,2\n");
        take(anna, "sighting,visit,km,time,species,count\na1,1,3.40,07:10,dipper,2\na2,1,5.00,08:10,dipper,1\n");
    }

    private Path book(String name) throws IOException {
        Path made = folder.resolve(name);
        run("new", made, "--river", Files.writeString(folder.resolve("river.geojson"), RIVER));
        return made;
    }

    private void take(Path book, String table) throws IOException {
        run(
                "import",
                book,
                Files.writeString(folder.resolve("table" + Integer.toHexString(table.hashCode()) + ".csv"), table));
    }

    private static String run(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).as(run.out()).isZero();
        return run.out();
    }

    private static JsonObject json(Object... arguments) {
        return JsonParser.parseString(run(arguments)).getAsJsonObject();
    }

    private Path bundle(Path book, String name) {
        Path zip = folder.resolve(name + ".zip");
        run("export", book, "--as", "bundle", "--by", name, "--out", zip, "--replace");
        return zip;
    }

    @Test
    void saysThatABundleIsPrivateOnTheScreenAndInTheFile() throws IOException {
        Path zip = folder.resolve("anna.zip");

        assertThat(run("export", anna, "--as", "bundle", "--by", "Anna", "--out", zip))
                .contains("sightings: 2", "Private");

        try (ZipFile file = new ZipFile(zip.toFile());
                InputStream notice = file.getInputStream(file.getEntry("PRIVATE.txt"));
                InputStream header = file.getInputStream(file.getEntry("bundle.json"))) {
            assertThat(new String(notice.readAllBytes(), StandardCharsets.UTF_8))
                    .startsWith("PRIVATE. ");
            assertThat(new String(header.readAllBytes(), StandardCharsets.UTF_8))
                    .contains("\"private\":true");
        }
        assertThat(CommandRun.of("export", anna, "--as", "bundle", "--by", " ").exitCode())
                .isEqualTo(ExitCode.WRONG_USAGE);
    }

    @Test
    void rehearsesMergesAndIsUndoneInOneStep() {
        Path zip = bundle(anna, "Anna");

        JsonObject dry = json("merge", mine, zip, "--dry-run", "--json");
        assertThat(dry.get("rehearsal").getAsBoolean()).isTrue();
        assertThat(dry.get("merged").getAsBoolean()).isFalse();
        assertThat(run("show", mine, "sightings")).doesNotContain("08:10");

        JsonObject done = json("merge", mine, zip, "--json");
        JsonObject bundle = done.getAsJsonArray("bundles").get(0).getAsJsonObject();
        assertThat(bundle.get("from").getAsString()).isEqualTo("Anna");
        assertThat(bundle.getAsJsonObject("added").get("sighting").getAsInt()).isEqualTo(2);
        assertThat(bundle.getAsJsonObject("added").get("landmark").getAsInt()).isEqualTo(1);
        assertThat(bundle.get("duplicates").getAsInt()).isEqualTo(1);
        assertThat(done.getAsJsonArray("pairs")).hasSize(2);
        assertThat(run("show", mine, "visits")).contains("1 (Anna)");
        assertThat(run("show", mine, "sightings")).contains("whose", "  Anna");
        assertThat(run("show", mine, "sightings", "--json")).contains("\"owner\": \"Anna\"");
        assertThat(run("show", anna, "sightings")).doesNotContain("whose");
        assertThat(run("merge", mine, zip)).contains("There was nothing new");

        assertThat(run("undo", mine)).contains("Merged Anna’s book");
        assertThat(run("show", mine, "sightings")).doesNotContain("08:10");
        assertThat(run("check", mine)).contains("is sound");
    }

    @Test
    void countsOneBirdAndOneVisitOnceWhereAPersonSaysSo() {
        run("merge", mine, bundle(anna, "Anna"));
        assertThat(registrations()).isEqualTo(3);
        assertThat(json("merge", mine, "--json").getAsJsonArray("pairs")).hasSize(2);

        String said = run("merge", mine, "--answer", "all=same");

        assertThat(said).contains("2 pairs decided");
        assertThat(json("merge", mine, "--json").getAsJsonArray("pairs")).isEmpty();
        assertThat(registrations()).isEqualTo(2);
        JsonObject river = map();
        assertThat(river.get("visits").getAsInt()).isEqualTo(1);
        assertThat(run("show", mine, "sightings")).contains("07:10", "07:12", "08:10");
        run("undo", mine);
        assertThat(registrations()).isEqualTo(3);
    }

    @Test
    void countsOnePersonOnceWhereAPersonSaysSoAndLeavesWhatWasWritten() throws IOException {
        take(mine, "visit,date,from_km,to_km,species,observers\n2,2026-03-20,1.2,5.4,dipper,Jo Marl; Ina\n");
        take(mine, "sighting,visit,km,time,species,count,observer\nb2,2,3.42,07:12,dipper,2,Jo Marl\n");
        take(anna, "visit,date,from_km,to_km,species,observers\n2,2026-03-20,1.2,5.4,dipper,J. Marl; JM\n");
        take(anna, "sighting,visit,km,time,species,count,observer\na3,2,2.20,07:40,dipper,1,J. Marl\n");

        String merged = run("merge", mine, bundle(anna, "Anna"));

        assertThat(merged)
                .contains(
                        "Perhaps one person, spelt in two ways",
                        "“Jo Marl” (yours; 2 records) and “J. Marl” (Anna; 2 records) [same, different]",
                        "“Jo Marl” (yours; 2 records) and “JM” (Anna; 1 record)");
        JsonObject asked = json("merge", mine, "--json");
        assertThat(asked.getAsJsonArray("pairs")
                        .get(0)
                        .getAsJsonObject()
                        .get("table")
                        .getAsString())
                .isEqualTo("person");
        assertThat(run("merge", mine, "--answer", "all=same")).contains("5 pairs decided");
        assertThat(json("merge", mine, "--json").getAsJsonArray("pairs")).isEmpty();
        assertThat(run("show", mine, "visits")).contains("J. Marl, JM");

        Path tables = folder.resolve("tables.zip");
        run("export", mine, "--as", "csv", "--private", "--out", tables);
        assertThat(text(tables, "visits.csv")).contains("Jo Marl").doesNotContain("J. Marl", "JM");
        assertThat(text(tables, "sightings.csv")).contains("Jo Marl").doesNotContain("J. Marl");
        String before = run("show", mine, "sightings");
        run("import", mine, Files.writeString(folder.resolve("again.csv"), text(tables, "sightings.csv")));
        assertThat(run("show", mine, "sightings")).isEqualTo(before);
        Path open = folder.resolve("open.zip");
        run("export", mine, "--as", "csv", "--out", open);
        assertThat(text(open, "visits.csv") + text(open, "sightings.csv")).doesNotContain("Marl", "JM");

        run("undo", mine);
        assertThat(json("merge", mine, "--dry-run", "--json").getAsJsonArray("pairs"))
                .hasSize(5);
    }

    private static String text(Path zip, String name) throws IOException {
        try (ZipFile file = new ZipFile(zip.toFile());
                InputStream in = file.getInputStream(file.getEntry(name))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private JsonObject map() {
        return json("map", mine, "--json").getAsJsonArray("rivers").get(0).getAsJsonObject();
    }

    private int registrations() {
        int count = map().getAsJsonArray("setAside").size();
        for (var territory : map().getAsJsonArray("territories")) {
            count += territory.getAsJsonObject().getAsJsonArray("sightings").size();
        }
        return count;
    }

    @Test
    void mergesNothingWhileSomethingIsOpenUnlessThatIsAccepted() throws IOException {
        Path team = folder.resolve("team.mv.db");
        Files.copy(mine, team);
        run("decide", team, "note at 3.1: new pair", "--season", "2026");
        run("merge", mine, bundle(team, "Team"));
        run("decide", team, "remove 1");
        take(team, "name,km,kind\nWeir,3.3,weir\n");
        Path zip = bundle(team, "Team");

        CommandRun asked = CommandRun.of("merge", mine, zip);
        assertThat(asked.exitCode()).isEqualTo(ExitCode.PROBLEMS);
        assertThat(asked.out()).contains("Team removed", "Nothing was merged", "--answer");
        assertThat(run("show", mine, "landmarks")).doesNotContain("Weir");
        String code = asked.out().replaceAll("(?s).*\\n {2}([0-9a-f]{6}) .*", "$1");

        assertThat(run("merge", mine, zip, "--accept")).contains("landmarks: 1", "Still open");
        assertThat(run("show", mine, "landmarks")).contains("Weir");
        assertThat(CommandRun.of("merge", mine, zip, "--answer", code + "=same").err())
                .contains("mine, theirs");
        assertThat(CommandRun.of("merge", mine, zip, "--answer", "ffffff=mine").exitCode())
                .isEqualTo(ExitCode.WRONG_USAGE);
        assertThat(CommandRun.of("merge", mine, zip, "--answer", "yes").exitCode())
                .isEqualTo(ExitCode.WRONG_USAGE);
        assertThat(run("merge", mine, zip, "--answer", code + "=theirs")).contains("removed: ");
        assertThat(run("show", mine, "decisions")).doesNotContain("new pair");
        assertThat(run("merge", mine, zip)).contains("There was nothing new");
    }

    @ParameterizedTest
    @ValueSource(strings = {"../evil.jsonl", "/etc/sighting.jsonl", "C:\\visit.jsonl", "run.sh", "sighting.jsonl/x"})
    void refusesABundleWithAnythingStrangeInIt(String name) throws IOException {
        Path zip = with(bundle(anna, "Anna"), name, new byte[] {'x'});

        CommandRun run = CommandRun.of("merge", mine, zip);

        assertThat(run.exitCode()).isNotZero();
        assertThat(run.err()).contains("does not belong in a bundle");
        assertThat(run("show", mine, "sightings")).doesNotContain("08:10");
    }

    @Test
    void refusesABundleThatUnpacksToAnAbsurdSize() throws IOException {
        Path zip = with(bundle(anna, "Anna"), "kick_sample.jsonl", new byte[80 << 20]);

        assertThat(CommandRun.of("merge", mine, zip).err()).contains("absurd size");
    }

    /** The zip with one more file in it, or another one under a name that is there. */
    private Path with(Path zip, String name, byte[] content) throws IOException {
        Path changed = folder.resolve("changed.zip");
        try (ZipFile in = new ZipFile(zip.toFile());
                OutputStream bytes = Files.newOutputStream(changed);
                ZipOutputStream out = new ZipOutputStream(bytes)) {
            List<? extends ZipEntry> entries = Collections.list(in.entries());
            for (ZipEntry entry : entries) {
                if (!entry.getName().equals(name)) {
                    out.putNextEntry(new ZipEntry(entry.getName()));
                    in.getInputStream(entry).transferTo(out);
                }
            }
            out.putNextEntry(new ZipEntry(name));
            out.write(content);
        }
        return changed;
    }

    @Test
    void refusesWhatIsNoBundle() throws IOException {
        assertThat(CommandRun.of("merge", mine, anna).err()).contains("is a book, not a bundle", "--as bundle");
        Path text = Files.writeString(folder.resolve("x.zip"), "hello");
        assertThat(CommandRun.of("merge", mine, text).err()).contains("cannot be read as a bundle");
        Path cut = Files.write(
                folder.resolve("cut.zip"), java.util.Arrays.copyOf(Files.readAllBytes(bundle(anna, "Anna")), 900));
        assertThat(CommandRun.of("merge", mine, cut).err()).contains("cannot be read as a bundle");
        assertThat(CommandRun.of("merge", mine, folder.resolve("none.zip")).exitCode())
                .isNotZero();
        Path csv = folder.resolve("csv.zip");
        run("export", anna, "--as", "csv", "--out", csv, "--private");
        assertThat(CommandRun.of("merge", mine, csv).err()).contains("is not a bundle");
        assertThat(run("check", mine)).contains("is sound");
    }
}
