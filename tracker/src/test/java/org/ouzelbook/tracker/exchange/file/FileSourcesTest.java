package org.ouzelbook.tracker.exchange.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FileSourcesTest {
    @TempDir
    Path folder;

    @Test
    void takesTheTablesOfAFolderAndSaysWhatItLeft() throws IOException {
        Files.writeString(folder.resolve("b.csv"), "x");
        Files.writeString(folder.resolve("a.tsv"), "x");
        Files.writeString(folder.resolve("photo.jpg"), "x");
        Files.writeString(folder.resolve("old.xls"), "x");
        Files.writeString(folder.resolve("b-rejected.csv"), "x");
        Files.writeString(folder.resolve(".hidden.csv"), "x");

        FileSources sources = FileSources.of(List.of(folder));

        assertThat(sources.files()).extracting(FileSource::plainName).containsExactly("a.tsv", "b.csv");
        assertThat(sources.skipped())
                .extracting(message -> message.key())
                .containsExactly("import.skipped.rejectedRows", "import.skipped.notReadYet", "import.skipped.noTable");
    }

    @Test
    void readsInsideAZip() throws IOException {
        Path zip = zip("season/sightings.csv", "date,km\n");

        FileSource source = FileSources.of(List.of(zip)).files().get(0);

        try (InputStream in = source.open()) {
            assertThat(new String(in.readAllBytes(), StandardCharsets.UTF_8)).isEqualTo("date,km\n");
        }
    }

    @Test
    void refusesAZipThatLeadsOutOfItself() throws IOException {
        for (String name :
                List.of("../evil.csv", "/etc/evil.csv", "a/../../evil.csv", "C:\\evil.csv", "..\\evil.csv")) {
            Path zip = zip(name, "x");
            assertThatThrownBy(() -> FileSources.of(List.of(zip))).hasMessage("import.file.zipLeadsOut");
        }
    }

    @Test
    void refusesAZipThatUnpacksToAnAbsurdSize() throws IOException {
        Path zip = zip("zeros.csv", "0".repeat(60 << 20));

        assertThatThrownBy(() -> FileSources.of(List.of(zip))).hasMessage("import.file.zipBomb");
    }

    @Test
    void saysWhatCannotBeRead() throws IOException {
        Path broken = folder.resolve("broken.zip");
        Files.writeString(broken, "no zip at all");
        Path sheet = folder.resolve("river.ods");
        Files.writeString(sheet, "x");

        assertThatThrownBy(() -> FileSources.of(List.of(broken))).hasMessage("import.file.brokenZip");
        assertThatThrownBy(() -> FileSources.of(List.of(sheet))).hasMessage("import.file.notReadYet");
        assertThatThrownBy(() -> FileSources.of(List.of(folder.resolve("none.csv"))))
                .hasMessage("import.file.missing");
    }

    private Path zip(String entry, String text) throws IOException {
        Path zip = folder.resolve("season.zip");
        try (OutputStream out = Files.newOutputStream(zip);
                ZipOutputStream packed = new ZipOutputStream(out)) {
            packed.putNextEntry(new ZipEntry(entry));
            packed.write(text.getBytes(StandardCharsets.UTF_8));
            packed.closeEntry();
        }
        return zip;
    }
}
