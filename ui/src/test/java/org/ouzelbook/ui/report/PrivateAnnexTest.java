package org.ouzelbook.ui.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.ui.cli.CommandRun;

/** What the report keeps back: there only for those who ask, and marked on every page. */
class PrivateAnnexTest {
    @TempDir
    private Path folder;

    private Path book = Path.of("book");

    @BeforeEach
    void makeTheBook() throws IOException {
        book = RiverOfPaper.book(folder);
    }

    @Test
    void tellsNestsRingsAndExactPlaces() throws IOException {
        Path annex = folder.resolve("annex.html");

        RiverOfPaper.run("report", book, "--out", folder.resolve("report.html"), "--private-annex", annex);

        // 5.283 km up a meridian from 52° N: a degree of latitude there is 111.27 km on WGS84.
        assertThat(Files.readString(annex))
                .contains("hidden-nest", "5.283 ± ", "52.0474", "AB12345", "odd-label", "R/W", "licence")
                .doesNotContain("Quill");
    }

    @Test
    void isMarkedOnEveryPage() throws IOException {
        Path annex = folder.resolve("annex.pdf");

        RiverOfPaper.run("report", book, "--out", folder.resolve("report.html"), "--private-annex", annex);

        for (int page = 1; page <= RiverOfPaper.pages(annex); page++) {
            assertThat(RiverOfPaper.page(annex, page)).contains("Private: nests, rings and exact places");
        }
    }

    @Test
    void isNeverMadeUnasked() throws IOException {
        Path apart = Files.createDirectory(folder.resolve("apart"));

        RiverOfPaper.run("report", book, "--out", apart.resolve("report.html"), "--pdf", apart.resolve("report.pdf"));

        try (Stream<Path> files = Files.list(apart)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder("report.html", "report.pdf");
        }
        assertThat(Files.readString(apart.resolve("report.html"))).doesNotContain("hidden-nest", "AB12345", "5.28");
    }

    @Test
    void isNotWrittenOverTheReport() {
        Path one = folder.resolve("one.html");

        CommandRun run = CommandRun.of("report", book, "--out", one, "--private-annex", one);

        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("a file of its own");
        assertThat(one).doesNotExist();
    }
}
