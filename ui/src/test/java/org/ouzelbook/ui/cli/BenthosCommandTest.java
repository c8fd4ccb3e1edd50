package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BenthosCommandTest {
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

    private void imports(String... rows) throws IOException {
        Path table = folder.resolve("kick_samples.csv");
        Files.writeString(table, "sample,date,km,minutes,taxon,abundance\n" + String.join("\n", rows) + "\n");
        assertThat(CommandRun.of("import", book, table).exitCode()).isZero();
    }

    @Test
    void scoresSamplesAsThePublishedTableDoes() throws IOException {
        imports(
                "K1,2026-04-20,12.5,3,Baetidae,C",
                "K1,2026-04-20,12.5,3,Heptageniidae,12",
                "K1,2026-04-20,12.5,3,Glossosomatidae,2",
                "K1,2026-04-20,12.5,3,Rhyacophilidae,3",
                "K2,2026-04-20,13.5,3,Ceratopogonidae,4");

        CommandRun run = CommandRun.of("benthos", book, "--json");

        assertThat(run.exitCode()).isZero();
        JsonObject answer = JsonParser.parseString(run.out()).getAsJsonObject();
        JsonObject first = answer.getAsJsonArray("samples").get(0).getAsJsonObject();
        assertThat(first.get("bmwp").getAsInt()).isEqualTo(4 + 10 + 7);
        assertThat(first.get("taxa").getAsInt()).isEqualTo(3);
        assertThat(first.get("aspt").getAsDouble()).isCloseTo(7, within(1e-12));
        assertThat(first.get("eptFamilies").getAsInt()).isEqualTo(4);
        assertThat(first.get("table").getAsString()).isEqualTo("BMWP 1");
        JsonObject second = answer.getAsJsonArray("samples").get(1).getAsJsonObject();
        assertThat(second.get("aspt").isJsonNull()).isTrue();
        assertThat(second.get("why").getAsString()).contains("nothing scores");
        assertThat(answer.get("caution").getAsString()).contains("presence of a link is not a cause");
    }

    @Test
    void namesTheNearestFamilyOfASlipAndEndsWithProblems() throws IOException {
        imports("K1,2026-04-20,12.5,3,Heptagenidae,12", "K1,2026-04-20,12.5,3,Baetidae,12");

        CommandRun run = CommandRun.of("benthos", book);

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.err()).contains("K1: no score table knows “Heptagenidae”; was it Heptageniidae?");
        assertThat(run.out()).contains("≥4").contains("Few samples; one bank; one day.");
    }

    @Test
    void saysThatThereIsNoSample() {
        CommandRun run = CommandRun.of("benthos", book);

        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("The book has no kick sample");
    }
}
