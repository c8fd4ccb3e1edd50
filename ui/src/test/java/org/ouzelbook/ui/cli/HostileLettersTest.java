package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Letters in other forms, or broken. */
class HostileLettersTest {
    private static final String TABLE = HostileFiles.HEADER + "2026-03-02,3.1,dipper,1,café – naïve\n";

    @TempDir
    Path folder;

    private HostileFiles files;

    @BeforeEach
    void makeABook() {
        files = HostileFiles.in(folder);
    }

    @ParameterizedTest
    @CsvSource({"UTF-8", "UTF-16", "windows-1252"})
    void ofOtherFormsAreRead(String letters) {
        files.takes(files.file("a.csv", TABLE.getBytes(Charset.forName(letters))));

        assertThat(files.sightings()).contains("café – naïve");
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-16LE", "UTF-16BE", "UTF-32"})
    void thatNobodyMarkedAreRefused(String letters) {
        files.refuses(files.file("a.csv", TABLE.getBytes(Charset.forName(letters))), "not a text table");
    }

    @Test
    void thatAreNoneAreRefused() {
        files.refuses(files.file("a.csv", TABLE.replace("café", "a\0b")), "not a text table");
    }

    /** Half of a pair of UTF-16, in the bytes that some programs write for it; not well-formed by RFC 3629. */
    @Test
    void halvesOfPairsAreMadeHarmless() throws IOException {
        byte[] table = (HostileFiles.HEADER + "2026-03-02,3.1,dipper,1,a?b\n").getBytes(StandardCharsets.ISO_8859_1);
        byte[] half = {(byte) 0xED, (byte) 0xA0, (byte) 0x80};
        byte[] broken = new byte[table.length + 2];
        int at = new String(table, StandardCharsets.ISO_8859_1).indexOf('?');
        System.arraycopy(table, 0, broken, 0, at);
        System.arraycopy(half, 0, broken, at, half.length);
        System.arraycopy(table, at + 1, broken, at + half.length, table.length - at - 1);
        files.takes(files.file("a.csv", broken));
        files.takes(files.file("b.geojson", HostileFiles.RIVER.replace("Arrel", "B\\ud800b")));

        for (String form : new String[] {"csv", "geojson", "kml", "gpx", "xlsx"}) {
            Path out = folder.resolve("out-" + form);
            CommandRun run = CommandRun.of("export", files.book(), "--as", form, "--private", "--out", out);
            assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
            assertThat(new String(Files.readAllBytes(out), StandardCharsets.ISO_8859_1))
                    .doesNotContain("\u00ED\u00A0");
        }
        assertThat(CommandRun.of("show", files.book(), "rivers", "--json").out())
                .doesNotContain("\\ud800", "\ud800");
    }

    @ParameterizedTest
    @ValueSource(strings = {"a.csv", "a.txt", "a.gpx", "a.kml", "a.geojson", "a.xlsx", "a.zip"})
    void ofNoFileAtAllAreRefused(String name) {
        files.refuses(files.file(name, new byte[0]), "");
    }

    @Test
    void anOpenQuotationMarkIsToldWithItsRow() {
        files.refuses(
                files.file(
                        "a.csv",
                        HostileFiles.HEADER + HostileFiles.ROW + "2026-03-02,3.1,dipper,1,\"open\n" + HostileFiles.ROW),
                "a.csv:3",
                "A quotation mark opens here");
    }

    @Test
    void aFolderThatIsCalledLikeAFileIsAFolder() throws IOException {
        Path called = Files.createDirectory(folder.resolve("x.csv"));
        String before = files.sightings();

        CommandRun empty = CommandRun.of("import", files.book(), called);
        Files.writeString(called.resolve("s.csv"), HostileFiles.HEADER + HostileFiles.ROW);

        assertThat(empty.out() + empty.err()).doesNotContain("Exception");
        assertThat(files.sightings()).isEqualTo(before);
        files.takes(called);
        assertThat(files.sightings()).isNotEqualTo(before);
    }
}
