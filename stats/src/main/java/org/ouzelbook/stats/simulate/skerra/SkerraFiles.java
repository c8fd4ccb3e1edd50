package org.ouzelbook.stats.simulate.skerra;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;

/** The files of the demo, made from the simulation: rivers, ten seasons of field files, the truth, and a file of mistakes. */
public final class SkerraFiles {
    private final SkerraRecords records = new SkerraRecords();
    private final FieldBook book = new FieldBook(records);
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
            write("ET-2017-to-2020", season, Style.OLD_OFFICE, book.oldVisits(), book.oldSightings());
        }
        write("MO-2021", 2021, Style.OFFICE, book.spreadsheetVisits(), book.spreadsheetSightings());
        write("RH-2022-and-2023", 2022, Style.TABS, book.tabbedVisits(), book.tabbedSightings());
        write("RH-2022-and-2023", 2023, Style.TABS, book.tabbedVisits(), book.tabbedSightings());
        write("records-centre-2024", 2024, Style.SHEET, book.darwinCoreVisits(), book.darwinCoreSightings());
        write("JP-phone-2025", 2025, Style.SHEET, book.sheetVisits(), book.phoneSightings());
        write("field-sheets-2026", 2026, Style.SHEET, book.sheetVisits(), book.sheetSightings());
    }

    private void write(
            String folder, int season, Style style, FieldTable<Visit> visits, FieldTable<Sighting> sightings) {
        Draws draws = Draws.of(Skerra.SEED).branch("careless", season);
        String place = "field-files/" + folder + "/";
        String ending = style.separator() == '\t' ? ".tsv" : ".csv";
        files.put(
                place + "visits-" + season + ending,
                visits.careless(style, records.visits(season), draws.branch("visits")));
        files.put(
                place + "birds-" + season + ending,
                sightings.careless(style, records.sightings(season), draws.branch("birds")));
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
