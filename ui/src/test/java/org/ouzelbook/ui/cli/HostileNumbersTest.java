package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers, days and sizes that no field notebook has. */
class HostileNumbersTest {
    @TempDir
    Path folder;

    private HostileFiles files;

    @BeforeEach
    void makeABook() {
        files = HostileFiles.in(folder);
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            2026-03-02,1e308,dipper,1
            2026-03-02,NaN,dipper,1
            2026-03-02,Infinity,dipper,1
            2026-03-02,-Infinity,dipper,1
            2026-03-02,-1,dipper,1
            2026-03-02,99999999999999999999,dipper,1
            2026-03-02,0x1p3,dipper,1
            9999-03-02,3.1,dipper,1
            +999999999-01-01,3.1,dipper,1
            0000-00-00,3.1,dipper,1
            2026-02-30,3.1,dipper,1
            2026-03-02,3.1,dipper,99999999999
            2026-03-02,3.1,dipper,1e9
            2026-03-02,3.1,dipper,-2
            2026-03-02,3.1,dipper,1.5
            """)
    void inARowAreRefusedWithTheirRow(String date, String km, String species, String count) {
        String row = String.join(",", date, km, species, count) + ",\n";

        files.refuses(files.file("a.csv", HostileFiles.HEADER + HostileFiles.ROW + row), "a.csv:3:");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"NaN,57.2", "-6.4,Infinity", "1e308,57.2", "-6.4,-91", "181,57.2", "[],57.2", "\"-6.4\",57.2"})
    void inARiverAreRefused(String position) {
        String river = HostileFiles.RIVER.replace("Arrel", "Other").replace("-6.40,57.20", position);

        files.refuses(files.file("a.geojson", river), "a.geojson");
    }

    @ParameterizedTest
    @ValueSource(strings = {"NaN", "Infinity", "1e308", "91", ""})
    void inAWalkAreRefused(String latitude) {
        String walk = "<gpx><wpt lat=\"" + latitude
                + "\" lon=\"-6.4\"><time>2026-03-02T07:00:00Z</time><name>DI</name></wpt></gpx>";

        files.refuses(files.file("a.gpx", walk), "a.gpx");
    }

    @ParameterizedTest
    @ValueSource(strings = {"[", "{\"a\":"})
    void deepNestingIsRefused(String opening) {
        String closing = opening.equals("[") ? "]" : "}";
        String deep = opening.repeat(100_000) + "1" + closing.repeat(100_000);
        CommandRun run = CommandRun.of("import", files.book(), files.file("a.geojson", deep));

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.out()).contains("a.geojson", "broken JSON").hasSizeLessThan(1000);
    }

    @Test
    void aLineOfAMillionCharactersIsTakenAndLongerOnesRefused() {
        String note = "x".repeat(1_000_000);

        files.takes(files.file("a.csv", HostileFiles.HEADER + "2026-03-02,3.1,dipper,1," + note + "\n"));
        files.refuses(
                files.file(
                        "b.csv",
                        HostileFiles.HEADER + HostileFiles.ROW + "2026-03-02,3.1,dipper,1," + note + note + "\n"),
                "Row 3 is too long");
    }

    @Test
    void twentyThousandColumnsAreNoHarm() {
        String wide = "date,km,species" + ",c".repeat(20_000) + "\n2026-03-02,3.1,dipper" + ",1".repeat(20_000) + "\n";

        CommandRun run = CommandRun.of("import", files.book(), files.file("a.csv", wide), "--dry-run");

        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).isIn(0, 1);
    }
}
