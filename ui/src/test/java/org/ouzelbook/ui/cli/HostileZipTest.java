package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Zips that swell, lead out of themselves, lie or are damaged. Source of the tricks: MITRE, CWE-409 and CWE-22. */
class HostileZipTest {
    private static final int CENTRAL_HEADER = 0x02014b50;
    private static final int SIZE_IN_HEADER = 24;
    private static final int NAME_IN_HEADER = 46;

    @TempDir
    Path folder;

    private HostileFiles files;

    @BeforeEach
    void makeABook() {
        files = HostileFiles.in(folder);
    }

    @ParameterizedTest
    @CsvSource({"a.zip,s.csv", "a.kmz,doc.kml"})
    void thatSwellsIsRefused(String name, String part) throws IOException {
        Path zip = folder.resolve(name);
        byte[] zeros = new byte[1 << 20];
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(zip))) {
            out.putNextEntry(new ZipEntry(part));
            for (int i = 0; i < 60; i++) {
                out.write(zeros);
            }
        }

        files.refuses(zip, "times its size");
    }

    @ParameterizedTest
    @ValueSource(strings = {"../s.csv", "a/../../s.csv", "/etc/s.csv", "..\\s.csv", "C:\\s.csv"})
    void thatLeadsOutIsRefused(String name) throws IOException {
        files.refuses(files.zip("a.zip", Map.of(name, HostileFiles.HEADER + HostileFiles.ROW)), "leads out");
        files.refuses(files.zip("a.kmz", Map.of(name, HostileFiles.HEADER + HostileFiles.ROW)), "leads out");
    }

    @Test
    void thatSaysItIsSmallerThanItIsIsRefused() throws IOException {
        Path zip = files.zip("a.zip", Map.of("s.csv", HostileFiles.HEADER + HostileFiles.ROW.repeat(10_000)));
        ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(zip)).order(ByteOrder.LITTLE_ENDIAN);
        bytes.putInt(centralHeader(bytes, 0) + SIZE_IN_HEADER, 100);
        Files.write(zip, bytes.array());

        files.refuses(zip, "more than it says");
    }

    /** Which of two parts of one name is read depends on the program: a mail filter may see one and we the other. */
    @Test
    void withTwoPartsOfOneNameIsRefused() throws IOException {
        Map<String, String> parts = new HashMap<>();
        parts.put("s.csv", HostileFiles.HEADER + HostileFiles.ROW);
        parts.put("t.csv", HostileFiles.HEADER + HostileFiles.ROW.replace("3.1", "3.2"));
        Path zip = files.zip("a.zip", parts);
        ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(zip)).order(ByteOrder.LITTLE_ENDIAN);
        int first = centralHeader(bytes, 0);
        bytes.put(first + NAME_IN_HEADER, (byte) 's');
        bytes.put(centralHeader(bytes, first + 1) + NAME_IN_HEADER, (byte) 's');
        Files.write(zip, bytes.array());

        files.refuses(zip, "s.csv");
    }

    private static int centralHeader(ByteBuffer bytes, int from) {
        for (int i = from; i < bytes.limit() - Integer.BYTES; i++) {
            if (bytes.getInt(i) == CENTRAL_HEADER) {
                return i;
            }
        }
        throw new AssertionError("no central header");
    }

    @Test
    void withTooManyPartsIsRefused() {
        Map<String, String> parts = new HashMap<>();
        for (int i = 0; i < 1001; i++) {
            parts.put("f" + i + ".csv", HostileFiles.HEADER);
        }

        files.refuses(files.zip("a.zip", parts), "more than 1000 files");
    }

    @ParameterizedTest
    @ValueSource(strings = {"a.zip", "a.kmz", "a.xlsx"})
    void thatBreaksOffIsRefused(String name) throws IOException {
        Path whole = files.zip("whole.zip", Map.of("s.csv", HostileFiles.HEADER + HostileFiles.ROW));
        byte[] bytes = Files.readAllBytes(whole);

        files.refuses(files.file(name, Arrays.copyOf(bytes, bytes.length / 2)), "");
        files.refuses(files.file("x" + name, new byte[0]), "");
    }

    @Test
    void withinAZipIsPassedOver() throws IOException {
        Path inner = files.zip("inner.zip", Map.of("s.csv", HostileFiles.HEADER + HostileFiles.ROW));
        Path outer = folder.resolve("outer.zip");
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(outer))) {
            out.putNextEntry(new ZipEntry("inner.zip"));
            copy(inner, out);
        }
        String before = files.sightings();

        assertThat(files.takes(outer)).contains("inner.zip", "passed over");
        assertThat(files.sightings()).isEqualTo(before);
    }

    private static void copy(Path file, OutputStream out) throws IOException {
        Files.copy(file, out);
    }
}
