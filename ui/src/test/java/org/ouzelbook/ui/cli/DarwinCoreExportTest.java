package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * Records as a Darwin Core archive. The archive is read as the text guide of the standard (TDWG) tells readers to: by what meta.xml
 * says and nothing else. {@link StandardFilesTest} holds the files against the schemas of the standards.
 */
class DarwinCoreExportTest {
    private static final String RIVER = """
            {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
              [[-6.40,57.28],[-6.40,57.20]]}}
            """;
    private static final String LANDMARKS = "name,km,kind\nMill Bridge,3.1,bridge\n";
    private static final String VISITS = """
            visit,date,start,end,from_km,to_km,species,observers,weather,effective,mode,direction,note
            IB-1,2026-03-02,07:00,09:30,1.2,5.4,dipper;kingfisher,Ina Brekke;Ole Vik,dry,yes,foot,upstream,with	a tab
            IB-2,2026-03-16,07:00,09:30,1.2,5.4,dipper;kingfisher,Ina Brekke,dry,yes,foot,upstream,
            IB-3,2026-03-30,07:00,09:30,1.2,5.4,dipper;kingfisher,Ina Brekke,spate,no,foot,upstream,
            """;
    private static final String SIGHTINGS = """
            sighting,visit,date,km,time,species,count,age,sex,activity,breeding_code,rings,simultaneous_with,observer,note
            b1,IB-1,,3.42,07:12,dipper,2,adult,,singing,,,c1,Ina Brekke,"two
            lines"
            c1,IB-1,,4.90,07:12,dipper,1,,female,,,,b1,Ina Brekke,
            b2,IB-2,,3.40,07:30,dipper,1,dependent juvenile,,carrying food,14,R/N m/W,,Ina Brekke,under the arch
            x1,,2026-05-01,6.2,,kingfisher,1,,,,,,,Ole Vik,
            """;
    private static final String NESTS =
            "nest,km,species,site,height_m,note\nKX7,3.413,dipper,bridge,1.5,by the keystone\n";
    private static final String CHECKS = """
            nest,date,stage,eggs,young,outcome
            KX7,2026-03-30,4 eggs,4,,
            KX7,2026-05-04,empty,,,success
            """;
    private static final String BIRDS =
            "bird,left_upper,left_lower,right_upper,right_lower,ring\nBD1,R/N,m,W,,ZZ98765\n";
    private static final String SAMPLES = """
            sample,date,km,minutes,taxon,abundance,sampler
            K1,2026-04-20,4.1,3,Baetidae,B,Ina Brekke
            K1,2026-04-20,4.1,3,Heptageniidae,12,Ina Brekke
            """;
    private static final String DWC = "http://rs.tdwg.org/dwc/terms/";
    private static final String ECO = "http://rs.tdwg.org/eco/terms/";

    @TempDir
    Path folder;

    private Path book;

    @BeforeEach
    void makeABook() throws IOException {
        book = folder.resolve("arrel.mv.db");
        run("new", book, "--river", Files.writeString(folder.resolve("river.geojson"), RIVER));
        Path notebooks = Files.createDirectory(folder.resolve("notebooks"));
        Files.writeString(notebooks.resolve("landmarks.csv"), LANDMARKS);
        Files.writeString(notebooks.resolve("visits.csv"), VISITS);
        Files.writeString(notebooks.resolve("sightings.csv"), SIGHTINGS);
        Files.writeString(notebooks.resolve("nests.csv"), NESTS);
        Files.writeString(notebooks.resolve("checks.csv"), CHECKS);
        Files.writeString(notebooks.resolve("birds.csv"), BIRDS);
        Files.writeString(notebooks.resolve("samples.csv"), SAMPLES);
        run("import", book, notebooks);
    }

    private static String run(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).as(run.out()).isZero();
        return run.out();
    }

    private Map<String, String> archive(String... more) throws IOException {
        Path out = folder.resolve("archive.zip");
        Object[] arguments = {
            "export",
            book,
            "--as",
            "darwin-core",
            "--licence",
            "CC BY",
            "--group",
            "Arrel Group",
            "--out",
            out,
            "--replace"
        };
        run(Stream.concat(Arrays.stream(arguments), Arrays.stream(more)).toArray());
        Map<String, String> files = new LinkedHashMap<>();
        try (ZipFile zip = new ZipFile(out.toFile())) {
            for (var entry : Stream.of("meta.xml", "eml.xml", "event.txt", "occurrence.txt", "humboldt.txt", "emof.txt")
                    .toList()) {
                files.put(
                        entry,
                        new String(zip.getInputStream(zip.getEntry(entry)).readAllBytes(), StandardCharsets.UTF_8));
            }
            assertThat(zip.size()).isEqualTo(files.size());
        }
        return files;
    }

    /** {@return the rows of a kind, by the addresses of the terms, read by what meta.xml says; the event's identifier under "id"} */
    private static List<Map<String, String>> rows(Map<String, String> files, String rowType) {
        Document meta = xml(files.getOrDefault("meta.xml", ""));
        List<Element> described = new ArrayList<>();
        for (String kind : List.of("core", "extension")) {
            elements(meta.getDocumentElement(), kind).forEach(described::add);
        }
        Element file = described.stream()
                .filter(element -> element.getAttribute("rowType").equals(rowType))
                .findFirst()
                .orElseThrow();
        String location = elements(file, "location").get(0).getTextContent();
        String separator = file.getAttribute("fieldsTerminatedBy").replace("\\t", "\t");
        List<String> lines = files.getOrDefault(location, "").lines().toList();
        List<Map<String, String>> rows = new ArrayList<>();
        for (String line : lines.subList(Integer.parseInt(file.getAttribute("ignoreHeaderLines")), lines.size())) {
            String[] cells = line.split(separator, -1);
            Map<String, String> row = new HashMap<>();
            Element id = elements(file, file.getTagName().equals("core") ? "id" : "coreid")
                    .get(0);
            row.put("id", cells[Integer.parseInt(id.getAttribute("index"))]);
            for (Element field : elements(file, "field")) {
                row.put(
                        field.getAttribute("term"),
                        field.hasAttribute("index")
                                ? cells[Integer.parseInt(field.getAttribute("index"))]
                                : field.getAttribute("default"));
            }
            rows.add(row);
        }
        return rows;
    }

    private static List<Element> elements(Element parent, String name) {
        NodeList found = parent.getElementsByTagName(name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            elements.add((Element) found.item(i));
        }
        return elements;
    }

    private static Document xml(String text) {
        try {
            return DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new InputSource(new StringReader(text)));
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new AssertionError(text, e);
        }
    }

    private static List<Map<String, String>> events(Map<String, String> files, String type) {
        return rows(files, DWC + "Event").stream()
                .filter(row -> row.getOrDefault(DWC + "eventType", "").equals(type))
                .toList();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "--private"})
    void isAStarWithoutLooseEnds(String audience) throws IOException {
        Map<String, String> files = audience.isEmpty() ? archive() : archive(audience);
        List<Map<String, String>> events = rows(files, DWC + "Event");
        Set<String> ids = new HashSet<>();
        events.forEach(
                event -> assertThat(ids.add(event.getOrDefault("id", ""))).isTrue());

        assertThat(events)
                .allSatisfy(event ->
                        assertThat(event.getOrDefault("id", "")).isEqualTo(event.getOrDefault(DWC + "eventID", "")));
        assertThat(events).allSatisfy(event -> {
            String parent = event.getOrDefault(DWC + "parentEventID", "");
            assertThat(parent.isEmpty() || ids.contains(parent)).isTrue();
            assertThat(event.getOrDefault(DWC + "sampleSizeValue", "").isEmpty())
                    .isEqualTo(event.getOrDefault(DWC + "sampleSizeUnit", "").isEmpty());
        });
        Set<String> occurrences = new HashSet<>();
        assertThat(rows(files, DWC + "Occurrence")).allSatisfy(row -> {
            assertThat(ids).contains(row.getOrDefault("id", ""));
            assertThat(occurrences.add(row.getOrDefault(DWC + "occurrenceID", "")))
                    .isTrue();
            assertThat(row.getOrDefault(DWC + "basisOfRecord", "")).isEqualTo("HumanObservation");
            assertThat(row.getOrDefault(DWC + "occurrenceStatus", "")).isIn("present", "absent");
            assertThat(row.getOrDefault(DWC + "organismQuantity", "").isEmpty())
                    .isEqualTo(
                            row.getOrDefault(DWC + "organismQuantityType", "").isEmpty());
        });
        assertThat(rows(files, ECO + "Event")).allSatisfy(row -> assertThat(ids).contains(row.getOrDefault("id", "")));
        assertThat(rows(files, "http://rs.iobis.org/obis/terms/ExtendedMeasurementOrFact"))
                .allSatisfy(row -> {
                    assertThat(ids).contains(row.getOrDefault("id", ""));
                    String occurrence = row.getOrDefault(DWC + "occurrenceID", "");
                    assertThat(occurrence.isEmpty() || occurrences.contains(occurrence))
                            .isTrue();
                    assertThat(row.getOrDefault(DWC + "measurementValue", "")).isNotBlank();
                });
    }

    @Test
    void tellsWhatAVisitLookedForAndDidNotFind() throws IOException {
        Map<String, String> files = archive();
        Map<String, Map<String, String>> inventories = new HashMap<>();
        rows(files, ECO + "Event").forEach(row -> inventories.put(row.getOrDefault("id", ""), row));
        List<Map<String, String>> visits = events(files, "Site Visit");
        List<Map<String, String>> absences = rows(files, DWC + "Occurrence").stream()
                .filter(row -> row.getOrDefault(DWC + "occurrenceStatus", "").equals("absent"))
                .toList();

        assertThat(visits).hasSize(3);
        assertThat(absences).hasSize(2).allSatisfy(absence -> {
            assertThat(absence.getOrDefault(DWC + "scientificName", "")).isEqualTo("Alcedo atthis");
            assertThat(absence.getOrDefault(DWC + "individualCount", "")).isEqualTo("0");
            Map<String, String> inventory = inventories.getOrDefault(absence.getOrDefault("id", ""), Map.of());
            assertThat(inventory.getOrDefault(ECO + "isAbsenceReported", "")).isEqualTo("true");
            assertThat(inventory.getOrDefault(ECO + "absentTaxa", "")).isEqualTo("Alcedo atthis");
            assertThat(inventory.getOrDefault(ECO + "targetTaxonomicScope", ""))
                    .isEqualTo("Cinclus cinclus | Alcedo atthis");
            assertThat(inventory.getOrDefault(ECO + "taxonCompletenessReported", ""))
                    .isEqualTo("reportedComplete");
        });
        Map<String, String> first = visits.stream()
                .filter(visit -> visit.getOrDefault(DWC + "eventDate", "").equals("2026-03-02T07:00/2026-03-02T09:30"))
                .findFirst()
                .orElseThrow();
        assertThat(first.getOrDefault(DWC + "sampleSizeValue", "")).isEqualTo("4.2");
        assertThat(first.getOrDefault(DWC + "sampleSizeUnit", "")).isEqualTo("kilometre");
        assertThat(first.getOrDefault(DWC + "samplingEffort", "")).isEqualTo("5.0 observer-hours, foot, upstream");
        Map<String, String> inSpate = visits.stream()
                .filter(visit -> visit.getOrDefault(DWC + "eventDate", "").startsWith("2026-03-30"))
                .findFirst()
                .orElseThrow();
        assertThat(inventories
                        .getOrDefault(inSpate.getOrDefault("id", ""), Map.of())
                        .get(ECO + "isAbsenceReported"))
                .isEqualTo("false");
    }

    @Test
    void tellsThePublicNoExactPlaceNoRingAndNoName() throws IOException {
        Map<String, String> files = archive();
        String text = String.join("\n", files.values());

        assertThat(text)
                .doesNotContain(
                        "KX7",
                        "Ina",
                        "Brekke",
                        "Ole",
                        "IB-1",
                        "ZZ98765",
                        "BD1",
                        "R/N",
                        "the arch",
                        "keystone",
                        "bridge")
                .doesNotContain("3.42", "3.413", "3.4 ", "4.9", "07:12", "07:30", "carrying", "singing", "two lines");
        // the nest at km 3.413 of a line of 8.907 km from 57.20 to 57.28 N
        assertThat(text).doesNotContain("57.2306", "57.2307");
        List<Map<String, String>> nests = events(files, "Observation").stream()
                .filter(event ->
                        event.getOrDefault(DWC + "samplingProtocol", "").equals("nest record"))
                .toList();
        assertThat(nests).hasSize(3).allSatisfy(nest -> {
            assertThat(nest.getOrDefault(DWC + "decimalLatitude", "")).matches("57\\.\\d{1,2}");
            assertThat(nest.getOrDefault(DWC + "decimalLongitude", "")).matches("-6(\\.\\d{1,2})?");
            assertThat(nest.getOrDefault(DWC + "waterBody", "")).isEmpty();
            assertThat(nest.getOrDefault(DWC + "verbatimLocality", "")).isEmpty();
            assertThat(nest.getOrDefault(DWC + "footprintWKT", "")).isEmpty();
            assertThat(nest.getOrDefault(DWC + "dataGeneralizations", "")).isNotBlank();
            assertThat(nest.getOrDefault(DWC + "informationWithheld", "")).isNotBlank();
            // the nest, at 57.2307 N, lies within the uncertainty of the point that is told: a degree is 111 km
            double north = Double.parseDouble(nest.getOrDefault(DWC + "decimalLatitude", ""));
            double metres = Double.parseDouble(nest.getOrDefault(DWC + "coordinateUncertaintyInMeters", ""));
            assertThat(Math.abs(north - 57.2307) * 111_000).isLessThan(metres);
        });
    }

    @Test
    void tellsPeopleWhoMayKnowEverything() throws IOException {
        Map<String, String> files = archive("--private");
        Map<String, String> b2 = rows(files, DWC + "Occurrence").stream()
                .filter(row -> row.getOrDefault(DWC + "recordNumber", "").equals("b2"))
                .findFirst()
                .orElseThrow();

        assertThat(b2.getOrDefault(DWC + "behavior", "")).isEqualTo("carrying food");
        assertThat(b2.getOrDefault(DWC + "reproductiveCondition", "")).isEqualTo("breeding code 14");
        assertThat(b2.getOrDefault(DWC + "recordedBy", "")).isEqualTo("Ina Brekke");
        assertThat(b2.getOrDefault(DWC + "eventTime", "")).isEqualTo("07:30");
        assertThat(b2.getOrDefault(DWC + "lifeStage", "")).isEqualTo("juvenile");
        assertThat(b2.getOrDefault(DWC + "occurrenceRemarks", "")).isEqualTo("under the arch");
        assertThat(files.getOrDefault("emof.txt", ""))
                .contains("river chainage\t3400\tm", "dependent juvenile", "R/N m/W");
        assertThat(files.getOrDefault("event.txt", "")).contains("KX7", "with a tab");
        assertThat(files.getOrDefault("occurrence.txt", "")).contains("two lines");
    }

    @Test
    void keepsIdentifiersAcrossExportsAndForms() throws IOException {
        Map<String, String> first = archive();
        Map<String, String> again = archive();
        run("log", book, "--casual", "--date", "2026-04-12", "DI 3.5 song");
        Set<String> later = ids(archive());

        assertThat(again).isEqualTo(first);
        assertThat(later).containsAll(ids(first)).hasSizeGreaterThan(ids(first).size());
        assertThat(ids(archive("--private"))).isEqualTo(later);
    }

    private static Set<String> ids(Map<String, String> files) {
        Set<String> ids = new HashSet<>();
        rows(files, DWC + "Event").forEach(row -> ids.add(row.getOrDefault("id", "")));
        rows(files, DWC + "Occurrence").forEach(row -> ids.add(row.getOrDefault(DWC + "occurrenceID", "")));
        return ids;
    }

    @Test
    void namesPeopleWhoAgreed() throws IOException {
        Map<String, String> files = archive("--with-names");

        assertThat(files.getOrDefault("occurrence.txt", ""))
                .contains("Ina Brekke")
                .doesNotContain("07:12");
        assertThat(files.getOrDefault("humboldt.txt", "")).contains("Ina Brekke | Ole Vik");
    }

    @Test
    void stopsWhereATitleNamesAPersonOrANest() {
        CommandRun run = CommandRun.of(
                "export", book, "--as", "darwin-core", "--licence", "cc0", "--title", "Notes of Ina Brekke");

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.out()).contains("eml.xml", "the private name I…").doesNotContain("event.txt", "Brekke");
    }

    @Test
    void asksForALicence() {
        CommandRun none = CommandRun.of("export", book, "--as", "darwin-core");
        CommandRun wrong = CommandRun.of("export", book, "--as", "darwin-core", "--licence", "GPL");

        assertThat(none.exitCode()).isEqualTo(2);
        assertThat(none.err()).contains("CC BY-NC", "--licence");
        assertThat(wrong.exitCode()).isEqualTo(2);
        assertThat(wrong.err()).contains("GPL", "CC0");
    }

    /** A river that turns back and forth: several of its kilometres round to one point, and none is told apart by how far it reaches. */
    @Test
    void aNestsUncertaintyDoesNotTellItsKilometre() throws IOException {
        book = folder.resolve("winding.mv.db");
        run("new", book, "--river", Files.writeString(folder.resolve("winding.geojson"), """
                {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
                  [[-6.40,57.28],[-6.40,57.271],[-6.402,57.271],[-6.402,57.28],[-6.404,57.28],[-6.404,57.271],
                   [-6.406,57.271],[-6.406,57.28],[-6.408,57.28],[-6.408,57.271]]}}
                """));
        StringBuilder nests = new StringBuilder("nest,km,species\n");
        for (int km = 0; km < 5; km++) {
            nests.append("KX").append(km).append(',').append(km).append(".5,dipper\n");
        }
        run("import", book, Files.writeString(folder.resolve("winding-nests.csv"), nests));

        Map<String, List<String>> reach = events(archive(), "Observation").stream()
                .filter(event ->
                        event.getOrDefault(DWC + "samplingProtocol", "").equals("nest record"))
                .collect(Collectors.groupingBy(
                        event -> event.get(DWC + "decimalLatitude") + " " + event.get(DWC + "decimalLongitude"),
                        Collectors.mapping(
                                event -> event.getOrDefault(DWC + "coordinateUncertaintyInMeters", ""),
                                Collectors.toList())));

        assertThat(reach.values()).anySatisfy(told -> assertThat(told).hasSizeGreaterThan(1));
        assertThat(reach.values())
                .allSatisfy(told -> assertThat(Set.copyOf(told)).hasSize(1));
    }
}
