package org.ouzelbook.ui.app.leak;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.exchange.export.Feature;
import org.ouzelbook.tracker.exchange.geopackage.GeoPackageFile;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.BookView;
import org.ouzelbook.tracker.store.SightingQuery;
import org.ouzelbook.ui.cli.CommandRun;

/** Every way of telling too much that is looked for is planted here and found; what is harmless is not. */
class LeakCheckTest {
    private static final String RIVER = """
            {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
              [[-6.43,57.28],[-6.42,57.25],[-6.40,57.20]]}}
            """;

    private static final String VISITS = """
            visit,date,start,end,from_km,to_km,species,observers,note
            IB-1,2026-03-02,07:00,09:35,1.2,5.4,dipper,Ina Brekke;Brook;Al,"old Hendry let us through, as always, by his barn"
            """;
    private static final String SIGHTINGS = """
            sighting,visit,km,time,species,count,rings,note
            b1,IB-1,3.42,07:12,dipper,2,R/N m/W,seen well
            """;
    private static final String NESTS = """
            nest,km,species,site,note
            KX7,3.413,dipper,bridge,second arch from the left behind the ivy
            QX8,4.74,dipper,weir,
            """;

    @TempDir
    Path folder;

    private Path path;
    private LeakCheck check;
    private GeoPoint nest;
    private GeoPoint other;
    private Nest record;
    private String sighting;

    @BeforeEach
    void makeABook() throws IOException {
        path = folder.resolve("arrel.mv.db");
        run("new", path, "--river", write("river.geojson", RIVER));
        take("name,km,kind\nMill Bridge,3.1,bridge\nWeir,6.2,weir\n");
        take(VISITS);
        take(SIGHTINGS);
        take(NESTS);
        take("bird,left_upper,left_lower,right_upper,right_lower,ring\nBD1,R/N,m,W,,ZZ98765\n");
        try (Book book = Book.open(path)) {
            check = book.read(view -> LeakCheck.of(view, false));
            record = book.read(view -> view.nest("KX7")).orElseThrow();
            nest = book.read(view -> point(view, record));
            other = book.read(view -> point(view, view.nest("QX8").orElseThrow()));
            sighting = book.read(view -> view.sightings(SightingQuery.ALL))
                    .get(0)
                    .id()
                    .toString();
        }
    }

    private static GeoPoint point(BookView view, Nest nest) {
        return view.network()
                .measuredLine(nest.place().riverId())
                .orElseThrow()
                .point(nest.place().chainage())
                .orElseThrow();
    }

    private Path write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    private void take(String table) throws IOException {
        run("import", path, write("t" + Integer.toHexString(table.hashCode()) + ".csv", table));
    }

    private static String run(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).as(run.out()).isZero();
        return run.out();
    }

    private List<Leak.Kind> kinds(String name, String text) throws IOException {
        return kinds(name, text.getBytes(StandardCharsets.UTF_8));
    }

    private List<Leak.Kind> kinds(String name, byte[] bytes) throws IOException {
        return check.in(name, bytes).stream().map(Leak::kind).distinct().toList();
    }

    private String at(String pattern) {
        return String.format(Locale.ROOT, pattern, nest.latitude(), nest.longitude());
    }

    @Test
    void findsCoordinatesHoweverTheyAreWritten() throws IOException {
        List<String> planted = List.of(
                at("name,latitude,longitude\nplace,%.6f,%.6f\n"),
                at("place;y;x;n\nhere;%2$.5f;%1$.5f;3\n"),
                at("a;b\n%.6f;%.6f\n").replace('.', ','),
                at("{\"type\":\"Point\",\"coordinates\":[%2$.7f,%1$.7f]}"),
                at("<wpt lat=\"%.6f\" lon=\"%.6f\"><name>x</name></wpt>"),
                at("<kml><Point><coordinates>%2$.6f,%1$.6f,12</coordinates></Point></kml>"),
                at("<circle data-at=\"%.4f %.4f\"/>"),
                String.format(Locale.ROOT, "We parked at %.3f, %.3f.", other.latitude(), other.longitude()),
                at("POINT (%2$.8f %1$.8f)"),
                String.format(
                        Locale.ROOT,
                        "57°%d'%.1f\"N 6°%d'%.1f\"W",
                        (int) (nest.latitude() % 1 * 60),
                        nest.latitude() * 60 % 1 * 60,
                        (int) (-nest.longitude() % 1 * 60),
                        -nest.longitude() * 60 % 1 * 60));

        for (String text : planted) {
            assertThat(kinds("x.txt", text)).as(text).contains(Leak.Kind.COORDINATES);
        }
        assertThat(kinds("x.txt", at("about %.2f, %.2f"))).isEmpty();
        assertThat(kinds("x.txt", at("elsewhere %.5f, 12.34567"))).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void findsCoordinatesAmongBytes(boolean little) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(61).order(little ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        bytes.putInt(0, 1);
        bytes.putDouble(13, nest.longitude()).putDouble(21, nest.latitude());

        assertThat(kinds("birds.gpkg", bytes.array())).containsExactly(Leak.Kind.COORDINATES);
        bytes.putDouble(21, nest.latitude() + 1);
        assertThat(kinds("birds.gpkg", bytes.array())).isEmpty();
    }

    /** A geometry is told by its positions, a table’s cells by their words, wherever in the file’s pages they lie. */
    @Test
    void readsTheTablesOfAGeoPackage() throws IOException {
        Feature rock = new Feature("marks", "a rock", List.of(nest), Map.of());
        Feature farRock = new Feature("marks", "a rock", List.of(new GeoPoint(1, nest.longitude())), Map.of());
        LocalDate day = LocalDate.of(2026, 3, 1);

        assertThat(kinds("marks", GeoPackageFile.bytes(List.of(rock), day))).contains(Leak.Kind.COORDINATES);
        assertThat(kinds("marks", GeoPackageFile.bytes(List.of(farRock), day))).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "the pair at km 3.413",
                "{\"km\": 3.41}",
                "{\"centre_km\": \"3.413\"}",
                "river,km\nArrel Water,3.413\n",
                "species\tchainage_m\ndipper\t3413\n",
                "<td data-from_km=\"3.413\">"
            })
    void findsTheRiverKmOfANest(String text) throws IOException {
        assertThat(kinds("x.txt", text)).contains(Leak.Kind.RIVER_KM);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "3.41 pairs per km",
                "{\"surveyedKm\": 3.413, \"perKm\": 3.41}",
                "a walk of 3.413 km",
                "landmark,km\nMill Bridge,3.1\n",
                "km 3.4",
                "from_km,to_km,species\n3,4,dipper\n",
                "visits,3413\n"
            })
    void takesNoLengthOrDensityForAPlace(String text) throws IOException {
        assertThat(kinds("x.txt", text)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "thanks to Ina Brekke",
                "thanks to INA  BREKKE",
                "<p title=\"by Ina&#32;Brekke\">x</p>",
                "ring ZZ98765",
                "seen as R/N m/W",
                "nestling of KX7",
                "who\nBrook\n",
                "<td>Al</td>",
                "bird,BD1"
            })
    void findsLabelsRingsAndNames(String text) throws IOException {
        assertThat(kinds("x.txt", text)).contains(Leak.Kind.NAME);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "a brook, and al dente; the Brook Lane walk",
                "the ZZ987650 and the KX71",
                "Mill Bridge and the weir",
                "the dipper was seen well",
                "BRD12 in ABD1"
            })
    void letsOrdinaryWordsPass(String text) throws IOException {
        assertThat(kinds("x.txt", text)).isEmpty();
    }

    @Test
    void findsWhatStandsInNotes() throws IOException {
        assertThat(kinds("x.txt", "It is the SECOND arch from the left, you know"))
                .containsExactly(Leak.Kind.NOTE);
        assertThat(kinds("x.txt", "ask at Hendry for the key")).containsExactly(Leak.Kind.NAME);
        assertThat(kinds("x.txt", "the left arch is the second")).isEmpty();
    }

    @Test
    void findsKeysOfPrivateRecords() throws IOException {
        assertThat(kinds("x.json", "{\"id\":\"" + record.id() + "\"}")).containsExactly(Leak.Kind.KEY);
        assertThat(kinds("x.json", "{\"id\":\"" + sighting.toUpperCase(Locale.ROOT) + "\"}"))
                .containsExactly(Leak.Kind.KEY);
        assertThat(kinds("x.json", "{\"id\":\"" + record.place().riverId() + "\"}"))
                .isEmpty();
    }

    @Test
    void findsALandmarkBesideAWordForANest() throws IOException {
        assertThat(kinds("x.html", "<p>The nest at Mill Bridge did well.</p>")).contains(Leak.Kind.LANDMARK);
        assertThat(kinds("x.csv", "place,what\nMill Bridge,4 eggs\n")).contains(Leak.Kind.LANDMARK);
        assertThat(kinds("x.html", "<p>No nest is told.</p><text>Mill Bridge</text>"))
                .isEmpty();
    }

    @Test
    void findsStretchesTooSmallToHideAPair() throws IOException {
        assertThat(kinds("x.csv", "species,river,from_km,to_km,count\ndipper,Arrel Water,3.3,3.6,2\n"))
                .containsExactly(Leak.Kind.SMALL_STRETCH);
        assertThat(kinds(
                        "x.geojson",
                        "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\","
                                + "\"properties\":{\"species\":\"dipper\",\"from_km\":3.3,\"to_km\":3.6}}]}"))
                .containsExactly(Leak.Kind.SMALL_STRETCH);
        assertThat(kinds("x.csv", "reach,river,from_km,to_km\nMill,Arrel Water,3.3,3.6\n"))
                .isEmpty();
        assertThat(kinds("x.csv", "species,river,from_km,to_km\ndipper,Arrel Water,3,4\n"))
                .isEmpty();
    }

    @Test
    void findsWhatTwoFilesTellTogether() throws IOException {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("a.csv", "species,river,from_km,to_km\ndipper,Arrel Water,3,4\n".getBytes(StandardCharsets.UTF_8));
        files.put(
                "b.csv", "species,river,from_km,to_km\ndipper,Arrel Water,3.4,4.4\n".getBytes(StandardCharsets.UTF_8));

        assertThat(check.in(files)).extracting(Leak::kind).containsExactly(Leak.Kind.DIFFERENCE);

        files.put("b.csv", "species,river,from_km,to_km\ndipper,Arrel Water,2,4\n".getBytes(StandardCharsets.UTF_8));
        assertThat(check.in(files)).isEmpty();
        files.put(
                "b.csv", "species,river,from_km,to_km\ndipper,Other Water,3.4,4.4\n".getBytes(StandardCharsets.UTF_8));
        assertThat(check.in(files)).isEmpty();
    }

    @Test
    void looksIntoZipsWithinZips() throws IOException {
        byte[] inner = zip("notes.txt", "thanks to Ina Brekke".getBytes(StandardCharsets.UTF_8));

        List<Leak> leaks = check.in("all.zip", zip("inner.kmz", inner));

        assertThat(leaks).hasSize(1);
        assertThat(leaks.get(0).part()).isEqualTo("inner.kmz!notes.txt");
        assertThat(leaks.get(0).line()).isEqualTo(1);
        assertThat(leaks.get(0).what().facts().toString()).doesNotContain("Brekke");
        assertThat(kinds("x.zip", zip("KX7.txt", new byte[0]))).containsExactly(Leak.Kind.NAME);
    }

    private static byte[] zip(String name, byte[] content) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry(name));
            zip.write(content);
        }
        return bytes.toByteArray();
    }

    @Test
    void readsTextAndPropertiesOfAPdf() throws IOException {
        assertThat(kinds("x.pdf", pdf("thanks to Ina Brekke", "report"))).containsExactly(Leak.Kind.NAME);
        assertThat(kinds("x.pdf", pdf("thanks", "by Ina Brekke"))).containsExactly(Leak.Kind.NAME);
        assertThat(kinds("x.pdf", pdf("thanks", "report"))).isEmpty();
    }

    private static byte[] pdf(String text, String author) throws IOException {
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage();
            document.addPage(page);
            document.getDocumentInformation().setAuthor(author);
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                content.beginText();
                content.setFont(new PDType1Font(Standard14Fonts.FontName.HELVETICA), 12);
                content.newLineAtOffset(50, 700);
                content.showText(text);
                content.endText();
            }
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            document.save(bytes);
            return bytes.toByteArray();
        }
    }

    @Test
    void readsWhatPicturesSayOfThemselves() throws IOException {
        assertThat(kinds("x.png", png("Ina Brekke"))).containsExactly(Leak.Kind.NAME);
        assertThat(kinds("x.png", png("a river"))).isEmpty();
        assertThat(kinds("x.jpg", photograph(nest.latitude(), nest.longitude())))
                .containsExactly(Leak.Kind.COORDINATES);
        assertThat(kinds("x.jpg", photograph(nest.latitude() + 0.5, nest.longitude())))
                .isEmpty();
        String page = "<html><img src=\"data:image/jpeg;base64,"
                + Base64.getEncoder().encodeToString(photograph(nest.latitude(), nest.longitude())) + "\"></html>";
        assertThat(kinds("x.html", page)).containsExactly(Leak.Kind.COORDINATES);
    }

    /** The smallest PNG with a text in it (PNG specification, W3C 2003, 11.3.4.3). */
    private static byte[] png(String author) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.write(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'});
        chunk(out, "IHDR", new byte[] {0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0});
        chunk(out, "tEXt", ("Author\u0000" + author).getBytes(StandardCharsets.ISO_8859_1));
        chunk(out, "IEND", new byte[0]);
        return bytes.toByteArray();
    }

    private static void chunk(DataOutputStream out, String type, byte[] content) throws IOException {
        byte[] name = type.getBytes(StandardCharsets.US_ASCII);
        CRC32 crc = new CRC32();
        crc.update(name);
        crc.update(content);
        out.writeInt(content.length);
        out.write(name);
        out.write(content);
        out.writeInt((int) crc.getValue());
    }

    /** A JPEG that holds nothing but where it was taken (Exif 2.3, 4.6.6, GPS attribute information). */
    private static byte[] photograph(double latitude, double longitude) throws IOException {
        ByteBuffer tiff = ByteBuffer.allocate(8 + 18 + 2 + 4 * 12 + 4 + 48);
        tiff.put(new byte[] {'M', 'M', 0, 42}).putInt(8);
        tiff.putShort((short) 1);
        entry(tiff, 0x8825, 4, 1, 26);
        tiff.putInt(0);
        tiff.putShort((short) 4);
        entry(tiff, 1, 2, 2, (latitude < 0 ? 'S' : 'N') << 24);
        entry(tiff, 2, 5, 3, 80);
        entry(tiff, 3, 2, 2, (longitude < 0 ? 'W' : 'E') << 24);
        entry(tiff, 4, 5, 3, 104);
        tiff.putInt(0);
        degrees(tiff, Math.abs(latitude));
        degrees(tiff, Math.abs(longitude));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.writeInt(0xFFD8FFE1);
        out.writeShort(2 + 6 + tiff.capacity());
        out.write("Exif\u0000\u0000".getBytes(StandardCharsets.US_ASCII));
        out.write(tiff.array());
        out.writeShort(0xFFD9);
        return bytes.toByteArray();
    }

    private static void entry(ByteBuffer tiff, int tag, int type, int count, int value) {
        tiff.putShort((short) tag).putShort((short) type).putInt(count).putInt(value);
    }

    private static void degrees(ByteBuffer tiff, double degrees) {
        int whole = (int) degrees;
        int minutes = (int) ((degrees - whole) * 60);
        long seconds = Math.round(((degrees - whole) * 60 - minutes) * 60 * 10_000);
        tiff.putInt(whole)
                .putInt(1)
                .putInt(minutes)
                .putInt(1)
                .putInt((int) seconds)
                .putInt(10_000);
    }

    @ParameterizedTest
    @ValueSource(strings = {"csv", "xlsx", "geojson", "geopackage", "kml", "gpx"})
    void findsThePrivateFormAndPassesThePublic(String form) throws IOException {
        Path open = folder.resolve("open-" + form);
        Path closed = folder.resolve("closed-" + form);
        run("export", path, "--as", form, "--out", open);
        run("export", path, "--as", form, "--private", "--out", closed);

        assertThat(run("check", path, "--leaks", open)).contains("Nothing was found");
        CommandRun found = CommandRun.of("check", path, "--leaks", closed);
        assertThat(found.exitCode()).isEqualTo(1);
        assertThat(found.out()).contains("K…").doesNotContain("KX7", "Brekke", "ZZ98765");
        assertThat(CommandRun.of("check", path, "--leaks", closed, "--json").out())
                .contains("\"clean\": false");
    }

    @Test
    void leavesNothingOfAFileThatWouldTell() throws IOException {
        Path file = write("out.txt", "before");

        List<Leak> leaks = PublicFile.write(check, file, bytes("thanks to Ina Brekke"));

        assertThat(leaks).hasSize(1);
        assertThat(file).hasContent("before");
        assertThat(PublicFile.write(check, file, bytes("thanks"))).isEmpty();
        assertThat(file).hasContent("thanks");
        assertThatThrownBy(() -> PrivateFile.write(file, out -> {
                    out.write(bytes("half"));
                    throw new IOException("full");
                }))
                .isInstanceOf(IOException.class);
        assertThat(file).hasContent("thanks");
        try (var files = Files.list(folder)) {
            assertThat(files.filter(any -> any.toString().endsWith(".part"))).isEmpty();
        }
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** Each thing that leaves the book for everybody, or gets lost along the water. */
    @ParameterizedTest
    @CsvSource({
        "report, --out, report.html",
        "report, --pdf, report.pdf",
        "sheet, --out, sheet.pdf",
        "sheet, --out, sheet.html",
        "pocket, --out, pocket.html",
        "picture, --public, seasons.svg"
    })
    void whateverGoesOutIsStoppedByAPrivateName(String command, String option, String name) throws IOException {
        Path out = folder.resolve(name);
        Object[] asked = {command, path, option, out};

        assertThat(run(asked)).contains(name);
        assertThat(out).exists();
        Files.delete(out);
        run("import", path, write("more.csv", "name,km\nIna Brekke’s rock,2.0\n"));

        CommandRun stopped = CommandRun.of(asked);
        assertThat(stopped.exitCode()).as(stopped.out() + stopped.err()).isEqualTo(1);
        assertThat(stopped.err()).contains("Nothing was written");
        assertThat(stopped.out()).contains(name + ":", "I…").doesNotContain("Brekke");
        assertThat(out).doesNotExist();
    }

    /** The river is 8.95 km long. Whoever has the counts of 0 to 4 km and of 0 to 4.3 km has that of the 300 m between. */
    @ParameterizedTest
    @CsvSource({
        "Lower, 0, 4, 0",
        "Mill bend, 3.0, 3.3, 1",
        "Longer, 0, 4.3, 2",
        "All but the head, 0, 8.8, 2",
        "Middle, 4, 6, 0"
    })
    void aReportOfAReachTellsNoSmallerWaterByItsDifference(String reach, double from, double to, int problems)
            throws IOException {
        run(
                "import",
                path,
                write("reaches.csv", "reach,from_km,to_km\nLower Half,0,4\n" + reach + "," + from + "," + to + "\n"));
        Path out = folder.resolve("reach.html");

        CommandRun report = CommandRun.of("report", path, "--reach", reach, "--out", out);

        assertThat(report.exitCode()).as(report.out() + report.err()).isEqualTo(Math.min(1, problems));
        assertThat(Files.exists(out)).isEqualTo(problems == 0);
    }

    /** Two books that differ only by where in its kilometre a bird was: what goes out of them is the same. */
    @Test
    void movingABirdWithinItsKilometreChangesNothingPublic() throws IOException {
        List<List<byte[]>> out = new ArrayList<>();
        for (List<String> places : List.of(List.of("3.07", "3.71"), List.of("3.93", "3.22"))) {
            Path book = folder.resolve("moved" + out.size() + ".mv.db");
            run("new", book, "--river", folder.resolve("river.geojson"));
            run("import", book, write("v.csv", VISITS + "IB-2,2026-03-16,07:00,09:35,1.2,5.4,dipper,Ina Brekke,\n"));
            run(
                    "import",
                    book,
                    write(
                            "s.csv",
                            "visit,km,species,count,activity\nIB-1," + places.get(0) + ",dipper,1,singing\nIB-2,"
                                    + places.get(1) + ",dipper,1,carrying food\n"));
            List<byte[]> files = new ArrayList<>();
            for (String form : new String[] {"csv", "geojson", "kml", "gpx"}) {
                Path file = folder.resolve("same-" + form);
                run("export", book, "--as", form, "--out", file, "--replace");
                files.add(Files.readAllBytes(file));
            }
            Path picture = folder.resolve("same.svg");
            run("picture", book, picture, "--public");
            files.add(Files.readAllBytes(picture));
            out.add(files);
        }

        for (int i = 0; i < out.get(0).size(); i++) {
            assertThat(out.get(1).get(i)).isEqualTo(out.get(0).get(i));
        }
    }

    /** Last year’s files and this year’s, of the same book, in every pair of forms. */
    @Test
    void twoStatesOfABookTellNoMoreTogetherThanAlone() throws IOException {
        List<Path> files = new ArrayList<>();
        for (String year : new String[] {"then", "now"}) {
            for (String form : new String[] {"csv", "geojson", "gpx", "darwin-core"}) {
                Path out = folder.resolve(year + "-" + form);
                run("export", path, "--as", form, "--out", out, "--licence", "CC0");
                files.add(out);
            }
            if (year.equals("then")) {
                run(
                        "import",
                        path,
                        write("visit.csv", "visit,date,from_km,to_km,species\nIB-9,2026-05-02,1.2,5.4,dipper\n"),
                        write(
                                "birds.csv",
                                "visit,km,species,activity\nIB-9,3.401,dipper,carrying food\nIB-9,4.2,dipper,singing\n"),
                        write("nest.csv", "nest,km,species\nKX8,4.211,dipper\n"));
            }
        }
        List<Object> asked = new ArrayList<>(List.of("check", path, "--leaks"));
        asked.addAll(files);

        assertThat(run(asked.toArray())).contains("Nothing was found");
    }

    @ParameterizedTest
    @CsvSource({"sheet, sheet.html", "pocket, pocket.html"})
    void whatIsTakenAlongPrivatelySaysSo(String command, String name) throws IOException {
        Path out = folder.resolve(name);
        run("import", path, write("more.csv", "name,km\nOld nest tree,3.3\n"));

        assertThat(CommandRun.of(command, path, "--out", out).exitCode()).isEqualTo(1);
        run(command, path, "--out", out, "--private");

        assertThat(out).content().contains("Old nest tree", "Private:");
    }

    @Test
    void saysSoWhereAFileCannotBeLookedThrough() throws IOException {
        Path broken = write("broken.pdf", "%PDF-1.7 no more");

        CommandRun run = CommandRun.of("check", path, "--leaks", broken);

        assertThat(run.exitCode()).isNotZero();
        assertThat(run.err()).contains("nobody can say what is in it");
        byte[] bomb = zip("a.txt", new byte[60 << 20]);
        assertThatThrownBy(() -> check.in("bomb.zip", bomb)).isInstanceOf(org.ouzelbook.ui.app.WrongRequest.class);
    }
}
