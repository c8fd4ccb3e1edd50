package org.ouzelbook.stats.simulate.skerra;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/** The files of the demo, made from the simulation: rivers, ten seasons of field files, the truth, and a file of mistakes. */
public final class SkerraFiles {
    private final SkerraRecords records = new SkerraRecords();
    private final SortedMap<String, byte[]> files = new TreeMap<>();

    private SkerraFiles() {}

    /**
     * Writes the files into a folder; what stands there under the same names is overwritten.
     *
     * @param arguments the folder
     * @throws IOException if they cannot be written
     * @throws IllegalArgumentException if no folder is named
     */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 1) {
            throw new IllegalArgumentException("Name the folder to write to");
        }
        for (Map.Entry<String, byte[]> file : all().entrySet()) {
            Path path = Path.of(arguments[0]).resolve(file.getKey());
            Files.createDirectories(path.resolveSibling("."));
            Files.write(path, file.getValue());
        }
    }

    /** {@return the bytes of every file by its path within the folder of the demo; each call makes the same ones} */
    public static SortedMap<String, byte[]> all() {
        SkerraFiles made = new SkerraFiles();
        made.rivers();
        made.fieldBooks();
        made.others();
        made.mistakes();
        made.files.put("truth.csv", TruthTable.of(made.records));
        return made.files;
    }

    private void rivers() {
        files.put("rivers.geojson", utf8(DrawnRivers.geoJson(records.skerra)));
        files.put("with-problems/rivers-with-a-gap.geojson", utf8(DrawnRivers.withGap(records.skerra)));
    }

    private void fieldBooks() {
        for (int season = 2017; season <= 2020; season++) {
            keep(FieldBook.OLD_OFFICE, season);
        }
        keep(FieldBook.SPREADSHEET, 2021);
        keep(FieldBook.TYPED, 2022);
        keep(FieldBook.TYPED, 2023);
        keep(FieldBook.RECORDS_CENTRE, 2024);
        keep(FieldBook.PHONE, 2025);
        keep(FieldBook.SHEET, 2026);
    }

    private void keep(FieldBook book, int season) {
        String folder = "field-files/" + book.folder() + "/";
        String ending = season + (book.visits().style().separator() == '\t' ? ".tsv" : ".csv");
        files.put(folder + "visits-" + ending, book.visits(season, records));
        files.put(folder + "birds-" + ending, book.birds(season, records));
    }

    private void others() {
        OtherTables tables = new OtherTables(records);
        files.put("field-files/landmarks-PRIVATE.csv", tables.landmarks());
        files.put("field-files/nests-PRIVATE/nests.csv", tables.nests());
        files.put("field-files/nests-PRIVATE/nest-checks.csv", tables.nestChecks());
        files.put("field-files/nests-PRIVATE/ringed-birds.csv", tables.ringedBirds());
        files.put("field-files/kick-samples.csv", tables.kickSamples());
    }

    private void mistakes() {
        files.put("with-problems/birds-with-problems.csv", utf8(Mistakes.CSV));
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
