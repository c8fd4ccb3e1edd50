package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Darwin Core archives on their way in: our own, and those of others. */
class DarwinCoreImportTest {
    private static final String RIVER = """
            {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
              [[-6.40,57.28],[-6.40,57.20]]}}
            """;
    private static final String VISITS = """
            visit,date,start,end,from_km,to_km,species,observers,effective,mode,direction,level
            IB-1,2026-03-02,07:00,09:30,1.2,5.4,dipper;kingfisher,Ina Brekke;Ole Vik,yes,foot,upstream,low
            IB-2,2026-03-16,07:00,09:30,1.2,5.4,dipper;kingfisher,Ina Brekke,no,canoe,downstream,spate
            """;
    private static final String SIGHTINGS = """
            sighting,visit,date,km,time,bank,species,count,age,sex,activity,breeding_code,rings,simultaneous_with,flew_to_km,turned_back,observer,note
            b1,IB-1,,3.42,07:12,left,dipper,2,adult,,singing,,,c1,,,Ina Brekke,two of them
            c1,IB-1,,4.90,07:12,,dipper,1,dependent juvenile,female,,,,b1,,,Ina Brekke,
            b2,IB-2,,3.40,07:30,,dipper,1,,,carrying food,14,R/N m/W,,3.9,yes,Ina Brekke,
            x1,,2026-05-01,6.2,,,kingfisher,1,,,dead,,,,,,Ole Vik,
            """;
    private static final String SAMPLES = """
            sample,date,km,minutes,taxon,abundance,sampler,method
            K1,2026-04-20,4.1,3,Baetidae,B,Ina Brekke,kick
            K1,2026-04-20,4.1,3,Heptageniidae,12,Ina Brekke,kick
            """;
    private static final String META = """
            <archive xmlns="http://rs.tdwg.org/dwc/text/">
              <core rowType="http://rs.tdwg.org/dwc/terms/Event" ignoreHeaderLines="1">
                <files><location>walks.csv</location></files>
                <id index="0"/>
                <field index="0" term="http://rs.tdwg.org/dwc/terms/eventID"/>
                <field index="1" term="http://rs.tdwg.org/dwc/terms/eventDate"/>
                <field index="2" term="http://rs.tdwg.org/dwc/terms/footprintWKT"/>
                <field term="http://rs.tdwg.org/dwc/terms/eventType" default="Site Visit"/>
              </core>
              <extension rowType="http://rs.tdwg.org/dwc/terms/Occurrence" ignoreHeaderLines="1" fieldsTerminatedBy="\\t"
                         fieldsEnclosedBy="">
                <files><location>birds.tsv</location></files>
                <coreid index="0"/>
                <field index="1" term="http://rs.tdwg.org/dwc/terms/occurrenceID"/>
                <field index="2" term="http://rs.tdwg.org/dwc/terms/scientificName"/>
                <field index="3" term="http://rs.tdwg.org/dwc/terms/occurrenceStatus"/>
                <field index="4" term="http://rs.tdwg.org/dwc/terms/decimalLatitude"/>
                <field index="5" term="http://rs.tdwg.org/dwc/terms/decimalLongitude"/>
                <field index="6" term="http://rs.tdwg.org/dwc/terms/occurrenceRemarks"/>
              </extension>
            </archive>
            """;
    private static final String WALKS = """
            id,date,line
            w1,2026-04-13T07:10/2026-04-13T10:35,"LINESTRING (-6.4 57.21, -6.4 57.25)"
            """;
    private static final String BIRDS = """
            id\tocc\tname\tstatus\tlat\tlon\tremarks
            w1\to1\tCinclus cinclus\tpresent\t57.2300\t-6.4001\tsaid "hello
            w1\to2\tAlcedo atthis\tabsent
            w1\to3\tTurdus merula\tpresent\t57.2300\t-6.4001\t
            """;

    @TempDir
    Path folder;

    private Path book;

    @BeforeEach
    void makeABook() throws IOException {
        book = newBook("arrel.mv.db");
        Path notebooks = Files.createDirectory(folder.resolve("notebooks"));
        Files.writeString(notebooks.resolve("visits.csv"), VISITS);
        Files.writeString(notebooks.resolve("sightings.csv"), SIGHTINGS);
        Files.writeString(notebooks.resolve("samples.csv"), SAMPLES);
        Files.writeString(notebooks.resolve("nests.csv"), "nest,km,species\nKX7,3.413,dipper\n");
        Files.writeString(notebooks.resolve("checks.csv"), "nest,date,stage,eggs\nKX7,2026-03-30,4 eggs,4\n");
        run("import", book, notebooks);
    }

    private Path newBook(String name) throws IOException {
        Path made = folder.resolve(name);
        run("new", made, "--river", Files.writeString(folder.resolve("river.geojson"), RIVER));
        return made;
    }

    private static String run(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).as(run.out()).isZero();
        return run.out();
    }

    private Path archive(String... more) {
        Path out = folder.resolve("archive.zip");
        Object[] arguments = {"export", book, "--as", "darwin-core", "--licence", "CC0", "--out", out, "--replace"};
        Object[] all =
                Stream.concat(Arrays.stream(arguments), Arrays.stream(more)).toArray();
        run(all);
        return out;
    }

    private static JsonArray shown(Path from, String what) {
        JsonObject told =
                JsonParser.parseString(run("show", from, what, "--json")).getAsJsonObject();
        JsonArray records = told.getAsJsonArray(told.keySet().iterator().next());
        records.forEach(record -> {
            JsonObject fields = record.getAsJsonObject();
            fields.remove("key");
            if (fields.has("simultaneousWith")) {
                fields.addProperty(
                        "simultaneousWith",
                        fields.getAsJsonArray("simultaneousWith").size());
            }
        });
        return records;
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "--private"})
    void whatTheBookPublishedItselfAddsNothing(String audience) {
        Path archive = audience.isEmpty() ? archive() : archive(audience);

        String told = run("import", book, archive);

        assertThat(told).contains("the book has all of this already").doesNotContain("rows to add", "passed over");
    }

    @Test
    void anotherBookReadsThePrivateFormAsItWas() throws IOException {
        Path other = newBook("other.mv.db");

        run("import", other, archive("--private"));

        assertThat(shown(other, "visits")).isEqualTo(shown(book, "visits"));
        assertThat(shown(other, "sightings")).isEqualTo(shown(book, "sightings"));
    }

    @Test
    void anotherBookReadsWhatThePublicMayKnow() throws IOException {
        Path other = newBook("other.mv.db");

        String told = run("import", other, archive());

        assertThat(told).contains("1 occurrence is of a nest").doesNotContain("KX7");
        assertThat(shown(other, "visits")).hasSize(2);
        assertThat(shown(other, "sightings")).hasSize(4).allSatisfy(sighting -> {
            double km = sighting.getAsJsonObject().get("km").getAsDouble();
            assertThat(km % 1).isBetween(0.0, 1.0);
            assertThat(sighting.getAsJsonObject().get("uncertaintyMetres").getAsDouble())
                    .isGreaterThan(400);
        });
        assertThat(run("import", other, archive())).contains("the book has all of this already");
    }

    private Path foreign() throws IOException {
        Path theirs = Files.createDirectory(folder.resolve("theirs"));
        Files.writeString(theirs.resolve("meta.xml"), META);
        Files.writeString(theirs.resolve("walks.csv"), WALKS);
        Files.writeString(theirs.resolve("birds.tsv"), BIRDS);
        return theirs;
    }

    @Test
    void eventsOfOthersBecomeVisitsAndTheirAbsencesWhatWasLookedFor() throws IOException {
        Path other = newBook("other.mv.db");

        String told = run("import", other, foreign());
        JsonObject visit = shown(other, "visits").get(0).getAsJsonObject();
        JsonObject sighting = shown(other, "sightings").get(0).getAsJsonObject();

        assertThat(told).contains("1 occurrence is of a species that the book does not follow");
        assertThat(visit.get("visit").getAsString()).isEqualTo("w1");
        assertThat(visit.get("date").getAsString()).isEqualTo("2026-04-13");
        assertThat(visit.get("start").getAsString()).startsWith("07:10");
        assertThat(visit.get("lookedFor").toString()).contains("kingfisher");
        // the line's mouth is at 57.20 N; a degree of latitude is 111.4 km there (GRS80: 111 412 m at 57.2 N)
        assertThat(visit.get("fromKm").getAsDouble()).isBetween(1.10, 1.12);
        assertThat(visit.get("toKm").getAsDouble()).isBetween(5.56, 5.58);
        assertThat(sighting.get("km").getAsDouble()).isBetween(3.33, 3.35);
        assertThat(sighting.get("note").getAsString()).contains("said \"hello");
        assertThat(run("import", other, folder.resolve("theirs"))).contains("the book has all of this already");
    }

    @Test
    void bareFilesAreReadByTheirHeaders() throws IOException {
        Path bare = Files.createDirectory(folder.resolve("bare"));
        Files.writeString(bare.resolve("event.csv"), """
                eventID,parentEventID,eventType,eventDate,waterBody
                s,,Survey,2026-04-01/2026-05-31,Arrel Water
                w9,s,Site Visit,2026-04-13,Arrel Water
                """);
        Files.writeString(bare.resolve("occurrence.txt"), """
                eventID\toccurrenceID\tbasisOfRecord\tscientificName\tdecimalLatitude\tdecimalLongitude\tindividualCount
                w9\to1\tHumanObservation\tCinclus cinclus\t57.23\t-6.4\t2
                w9\to2\tHumanObservation\tAlcedo atthis\t\t\t0
                """);
        Path other = newBook("other.mv.db");

        run("import", other, bare);

        assertThat(shown(other, "visits")).hasSize(1);
        assertThat(shown(other, "visits").toString()).contains("kingfisher").doesNotContain("\"s\"");
        assertThat(shown(other, "sightings")).hasSize(1);
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            walks.csv, gone.csv, “gone.csv”
            <id index="0"/>, <id index="-1"/>, “-1”
            index="2", index="99999999999", “99999999999”
            fieldsTerminatedBy="\\t", fieldsTerminatedBy="||", “||”
            fieldsEnclosedBy="", fieldsEnclosedBy="&#9;", one character
            <archive, <!DOCTYPE x [<!ENTITY e SYSTEM "file:///etc/passwd">]><archive, document type
            </archive>, '', breaks off
            core, corn, describes
            """)
    void tellsWhatIsWrongWithADescriptionAndImportsNothing(String there, String instead, String told)
            throws IOException {
        Path theirs = foreign();
        Files.writeString(theirs.resolve("meta.xml"), META.replace(there, instead));
        Path other = newBook("other.mv.db");

        CommandRun run = CommandRun.of("import", other, theirs);

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.out()).contains("meta.xml", told).doesNotContain("Exception", "root:");
        assertThat(CommandRun.of("show", other, "visits").out()).doesNotContain("w1");
    }

    /** Occurrences as other programs write them: {@code MAIN} stands for cells in this order. */
    private Path foreign(String name, String terms, String cells, String attributes, String defaults, Charset letters)
            throws IOException {
        StringBuilder fields = new StringBuilder();
        int index = 0;
        for (String term : List.of(terms.split(" ", -1))) {
            fields.append("<field index=\"" + index++ + "\" term=\"http://rs.tdwg.org/dwc/terms/" + term + "\"/>");
        }
        Path archive = Files.createDirectory(folder.resolve(name));
        Files.writeString(
                archive.resolve("meta.xml"),
                "<archive xmlns=\"http://rs.tdwg.org/dwc/text/\"><core rowType=\"http://rs.tdwg.org/dwc/terms/Occurrence\" "
                        + attributes + "><files><location>o.txt</location></files><id index=\"0\"/>" + fields + defaults
                        + "</core></archive>");
        Files.write(archive.resolve("o.txt"), cells.getBytes(letters));
        return archive;
    }

    private String taken(Path archive) throws IOException {
        Path other = newBook(archive.getFileName() + ".mv.db");
        run("import", other, archive);
        return run("show", other, "sightings");
    }

    @Test
    void readsTermsInAnyOrderQuotesIntervalsDefaultsAndQuantities() throws IOException {
        String terms =
                "occurrenceID organismQuantity organismQuantityType decimalLongitude decimalLatitude occurrenceRemarks eventDate";
        String species =
                "<field term=\"http://rs.tdwg.org/dwc/terms/scientificName\" default=\"Cinclus cinclus (Linnaeus, 1758)\"/>"
                        + "<field term=\"http://rs.tdwg.org/dwc/terms/geodeticDatum\" default=\"WGS 84\"/>";
        String row = "o1,3,individuals,-6.4001,57.2300,\"under the \"\"old\"\" bridge, Ørsta\",2026-04-13/2026-04-13\n";

        for (Charset letters : List.of(StandardCharsets.UTF_8, StandardCharsets.UTF_16, StandardCharsets.ISO_8859_1)) {
            String told = taken(
                    foreign("f" + letters.name(), terms, row, "encoding=\"" + letters.name() + "\"", species, letters));

            assertThat(told)
                    .contains("13 Apr 2026", "dipper", "under the \"old\" bridge, Ørsta")
                    .containsPattern("dipper +3");
        }
    }

    /** The older British datum lies some 100 m from WGS84 (EPSG 1314), which is more than a bird's place may be off. */
    @Test
    void doesNotTakeCoordinatesOfAnotherDatum() throws IOException {
        Path archive = foreign(
                "osgb",
                "occurrenceID scientificName eventDate decimalLatitude decimalLongitude geodeticDatum",
                "o1,Cinclus cinclus,2026-04-13,57.2300,-6.4001,OSGB36\n",
                "",
                "",
                StandardCharsets.UTF_8);
        Path other = newBook("osgb.mv.db");

        CommandRun run = CommandRun.of("import", other, archive);

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.out()).contains("“OSGB36”", "EPSG:4326");
        assertThat(run("show", other, "sightings")).doesNotContain("dipper");
    }
}
