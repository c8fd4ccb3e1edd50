package org.ouzelbook.stats.simulate.skerra;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class SkerraFilesTest {
    private static final Path SHIPPED = Path.of("../demo-territories");
    private static final SortedMap<String, byte[]> FILES = SkerraFiles.all();

    @Test
    void theShippedFilesAreByteForByteWhatTheSimulationWrites() {
        assertThat(FILES)
                .allSatisfy((path, bytes) -> assertThat(SHIPPED.resolve(path)).hasBinaryContent(bytes));
    }

    @Test
    void nothingElseIsShippedButTheStory() throws IOException {
        try (Stream<Path> shipped = Files.walk(SHIPPED)) {
            List<String> names = shipped.filter(Files::isRegularFile)
                    .map(path -> SHIPPED.relativize(path).toString().replace('\\', '/'))
                    .filter(name -> !name.equals("README.md"))
                    .toList();
            assertThat(names).containsExactlyInAnyOrderElementsOf(FILES.keySet());
        }
    }

    @Test
    void theFilesStaySmall() {
        assertThat(FILES.values().stream().mapToInt(bytes -> bytes.length).sum())
                .isLessThan(1_500_000);
    }

    @Test
    void theOldYearsAreNotUtf8() {
        byte[] old = file("field-files/ET-2017-to-2020/visits-2018.csv");

        assertThat(new String(old, Charset.forName("windows-1252")))
                .contains(" °C – ")
                .contains(";0,0;8,9;");
        assertThat(new String(old, StandardCharsets.UTF_8)).contains("\uFFFD");
    }

    @Test
    void theTruthTellsTheStory() {
        List<String> lines =
                new String(file("truth.csv"), StandardCharsets.UTF_8).lines().toList();

        assertThat(dippers(lines, 2021)).isBetween(16L, 20L);
        assertThat(dippers(lines, 2022)).isLessThanOrEqualTo(11);
        assertThat(dippers(lines, 2026)).isBetween(13L, 16L);
        assertThat(lines)
                .anySatisfy(line -> assertThat(line).startsWith("2026,dipper").contains("Sorn Beck 0.000 to"));
        assertThat(lines)
                .anySatisfy(line -> assertThat(line).startsWith("2025,dipper").contains("washed out"));
    }

    private static long dippers(List<String> lines, int season) {
        return lines.stream()
                .filter(line -> line.startsWith(season + ",dipper,"))
                .count();
    }

    private static byte[] file(String path) {
        return requireNonNull(FILES.get(path));
    }
}
