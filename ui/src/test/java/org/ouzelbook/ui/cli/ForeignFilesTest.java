package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files as other programs and receivers write them, right and wrong: each gives records, or a sentence that says what to do. */
class ForeignFilesTest {
    private static final String RIVER = """
            {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
              [[-6.40,57.28],[-6.40,57.20]]}}
            """;

    @TempDir
    Path folder;

    private Path book;

    @BeforeEach
    void makeABook() throws IOException {
        book = folder.resolve("arrel.mv.db");
        CommandRun.of("new", book, "--river", Files.writeString(folder.resolve("river.geojson"), RIVER));
    }

    private static String walk(String encoding, String root, String name) {
        StringBuilder text = new StringBuilder("<?xml version=\"1.0\" encoding=\"" + encoding + "\"?>\n<gpx" + root
                + ">\n<trk><name>" + name + "</name><trkseg>\n");
        for (int i = 0; i < 10; i++) {
            text.append("<trkpt lat=\"57.2" + (10 + i) + "\" lon=\"-6.40\"><time>2026-03-02T07:0" + i
                    + ":00Z</time><extensions><x:hr xmlns:x=\"http://example.org/x\">90</x:hr></extensions></trkpt>\n");
        }
        return text + "</trkseg></trk></gpx>\n";
    }

    private CommandRun bring(String name, byte[] bytes) throws IOException {
        return CommandRun.of(
                "import", book, Files.write(folder.resolve(name), bytes), "--species", "dipper", "--zone", "UTC");
    }

    /** GPX of both versions, in the letters that it says, with and without a mark and a name space. */
    @ParameterizedTest
    @CsvSource({
        "UTF-8, UTF-8, ' version=\"1.1\" creator=\"a receiver\" xmlns=\"http://www.topografix.com/GPX/1/1\"', ''",
        "UTF-8, UTF-8, ' version=\"1.0\" creator=\"a receiver\" xmlns=\"http://www.topografix.com/GPX/1/0\"', '\uFEFF'",
        "ISO-8859-1, ISO-8859-1, '', ''",
        "windows-1252, windows-1252, '', ''",
        "UTF-16, UTF-16, ' version=\"1.1\"', ''"
    })
    void readsAWalkInItsLetters(String says, String letters, String root, String mark) throws IOException {
        CommandRun run = bring("walk.gpx", (mark + walk(says, root, "Wälk")).getBytes(Charset.forName(letters)));

        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        assertThat(CommandRun.of("show", book, "visits").out()).contains("Wälk");
    }

    /** Nothing may come past the command's own output: a parser of the JDK tells of such bytes on the error stream of the machine. */
    @Test
    void tellsOfLettersThatAreNotWhatTheFileSays() throws IOException {
        PrintStream before = System.err;
        ByteArrayOutputStream past = new ByteArrayOutputStream();
        System.setErr(new PrintStream(past, true, StandardCharsets.UTF_8));
        CommandRun run;
        try {
            run = bring("walk.gpx", walk("UTF-8", "", "Wälk").getBytes(StandardCharsets.ISO_8859_1));
        } finally {
            System.setErr(before);
        }

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.out()).contains("walk.gpx", "letters that are not UTF-8", "Save it again as UTF-8");
        assertThat(past.toString(StandardCharsets.UTF_8)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"'57,21', '-6,40'", "NaN, NaN", "99, -6.4", "'', ''"})
    void tellsOfATrackWithoutPlaces(String latitude, String longitude) throws IOException {
        String text = walk("UTF-8", "", "Walk")
                .replaceAll("lat=\"[^\"]*\" lon=\"[^\"]*\"", "lat=\"" + latitude + "\" lon=\"" + longitude + "\"");

        CommandRun run = bring("walk.gpx", text.getBytes(StandardCharsets.UTF_8));

        assertThat(run.out()).contains("No point of this track has a latitude and longitude in degrees");
        assertThat(run.out()).doesNotContain("the book has all of this");
    }

    @Test
    void tellsOfAnArchiveOfNamesAlone() throws IOException {
        Path archive = folder.resolve("names.zip");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(archive))) {
            zip.putNextEntry(new ZipEntry("meta.xml"));
            zip.write("""
                    <archive xmlns="http://rs.tdwg.org/dwc/text/"><core rowType="http://rs.tdwg.org/dwc/terms/Taxon">
                    <files><location>names.csv</location></files><id index="0"/>
                    <field index="1" term="http://rs.tdwg.org/dwc/terms/scientificName"/></core></archive>
                    """.getBytes(StandardCharsets.UTF_8));
            zip.putNextEntry(new ZipEntry("names.csv"));
            zip.write("1,Cinclus cinclus\n".getBytes(StandardCharsets.UTF_8));
        }

        assertThat(CommandRun.of("import", book, archive).out())
                .contains("holds neither events nor occurrences", "nothing in it can be added");
    }

    @Test
    void aTableOfAHeaderAloneHasNothing() throws IOException {
        CommandRun run = bring("s.csv", "sighting,date,km,species\n".getBytes(StandardCharsets.UTF_8));

        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("nothing in it can be added");
    }
}
