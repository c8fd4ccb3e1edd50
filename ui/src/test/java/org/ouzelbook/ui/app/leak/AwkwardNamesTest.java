package org.ouzelbook.ui.app.leak;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.cli.CommandRun;

/** Names of people and places that are ordinary words, or each other’s: nothing is stopped without a secret. */
class AwkwardNamesTest {
    private static final String RIVER = """
            {"type":"Feature","properties":{"name":"Rose Beck"},"geometry":{"type":"LineString","coordinates":
              [[-6.43,57.28],[-6.42,57.25],[-6.40,57.20]]}}
            """;

    private static final Map<String, String> TABLES = Map.of(
            "landmarks.csv",
            """
            name,km,kind,aliases
            Nest Bridge,1.2,bridge,
            Mill Bridge,2.1,bridge,the mill
            Al,3.6,rock,
            May Weir,4.4,weir,
            Eggs,6.2,other,
            """,
            "reaches.csv",
            """
            reach,from_km,to_km
            May to Rose,0,3
            Upper Will,3,8
            """,
            "visits.csv",
            """
            visit,date,start,end,from_km,to_km,species,observers,note
            V1,2026-03-02,07:10,10:35,0,8,dipper,May;Rose,12345 stones
            V2,2026-03-16,07:10,10:35,0,8,dipper,Al;Mill Bridge,the river was high today
            V3,2026-04-02,07:10,10:35,0,8,dipper,Will Rose;Grey Wagtail;Visit Count,
            """,
            "sightings.csv",
            """
            sighting,visit,km,species,count,activity,observer,note
            s1,V1,4.5,dipper,2,song,May,seen by May
            s2,V2,4.51,dipper,1,song,Al,at May Weir with Al
            s3,V3,4.45,dipper,1,carrying food,Rose,2026
            """,
            "nests.csv",
            """
            nest,km,species,site,note
            1,4.47,dipper,rock,
            Km 4,6.8,dipper,rock,by the big stone
            """,
            "kick_samples.csv",
            """
            sample,date,km,minutes,taxon,abundance,sampler
            K1,2026-04-20,2.1,3,Baetidae,B,May
            """);

    @TempDir
    private Path folder;

    private Path book = Path.of("rose.mv.db");

    @BeforeEach
    void makeABook() throws IOException {
        book = folder.resolve("rose.mv.db");
        run("new", book, "--river", Files.writeString(folder.resolve("river.geojson"), RIVER));
        Path tables = Files.createDirectory(folder.resolve("tables"));
        for (Map.Entry<String, String> table : TABLES.entrySet()) {
            Files.writeString(tables.resolve(table.getKey()), table.getValue());
        }
        run("import", book, tables);
    }

    private static void run(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
    }

    private LeakCheck check() {
        try (Book open = Book.open(book)) {
            return open.read(view -> LeakCheck.of(view, false));
        }
    }

    private static List<Leak> in(LeakCheck check, String text) throws IOException {
        return check.in("x.csv", text.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void stopNothingThatTellsNoSecret() {
        for (String form : List.of("csv", "xlsx", "geojson", "kml", "gpx", "geopackage")) {
            String ending = form.equals("csv") ? ".zip" : form.equals("geopackage") ? ".gpkg" : "." + form;
            run("export", book, "--as", form, "--out", folder.resolve("out" + ending), "--replace");
        }
        run("export", book, "--as", "darwin-core", "--licence", "CC0", "--out", folder.resolve("dwc.zip"));
        run("report", book, "--by-rule", "--out", folder.resolve("report.html"));
        run("report", book, "--by-rule", "--reach", "May to Rose", "--out", folder.resolve("reach.html"));
        run("sheet", book, "--out", folder.resolve("sheet.html"));
        run("pocket", book, "--out", folder.resolve("pocket.html"));
        run("picture", book, folder.resolve("seasons.svg"), "--public");
        run(
                "check",
                book,
                "--leaks",
                folder.resolve("out.zip"),
                folder.resolve("out.xlsx"),
                folder.resolve("dwc.zip"),
                folder.resolve("report.html"),
                folder.resolve("reach.html"));
    }

    @Test
    void aNameThatSaysNestIsASecretOnlyWhereBirdsNest() throws IOException {
        assertThat(in(check(), "name,km\nNest Bridge,1.2\n")).isEmpty();

        run("import", book, Files.writeString(folder.resolve("more.csv"), "nest,km,species\nN9,1.31,dipper\n"));

        assertThat(in(check(), "name,km\nNest Bridge,1.2\nMill Bridge,2.1\n"))
                .extracting(Leak::what)
                .extracting(what -> what.key() + what.facts())
                .containsExactly("leak.landmark.named[Nest Bridge, Nest]");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "place,what\nNest Bridge,a nest\n",
                "<p>Mill Bridge has a nest, Nest Bridge has none.</p>",
                "[{\"name\":\"Mill Bridge\",\"what\":\"chicks\"},{\"name\":\"Al\"}]"
            })
    void aNestBesideALandmarkIsFoundWhateverTheLandmarkIsCalled(String text) throws IOException {
        assertThat(in(check(), text)).extracting(Leak::kind).contains(Leak.Kind.LANDMARK);
    }

    @Test
    void oneFeatureIsNotTheOther() throws IOException {
        assertThat(in(check(), "[{\"name\":\"Mill Bridge\"},{\"what\":\"no nests are told\"}]"))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "surname,first\nRose,Will\n",
                "first\tsurname\nWill\tRose\n",
                "who\n\"Rose, Will\"\n",
                "reach,by\nUpper Will,Will Rose\n"
            })
    void aNameInTwoCellsIsAName(String text) throws IOException {
        assertThat(in(check(), text)).extracting(Leak::kind).contains(Leak.Kind.NAME);
    }

    /** Twenty thousand tags in a row took minutes where a figure was looked for behind each name. */
    @Test
    void tagsWithoutEndAreLookedThroughOnce() throws IOException {
        assertThat(in(check(), "<a>".repeat(20_000) + "<p km=\"6.80\">"))
                .extracting(Leak::kind)
                .contains(Leak.Kind.RIVER_KM);
        assertThat(in(check(), "<Data name=\"km\"><value>6.80</value></Data>"))
                .extracting(Leak::kind)
                .contains(Leak.Kind.RIVER_KM);
    }

    @ParameterizedTest
    @ValueSource(strings = {"reach,river\nUpper Will,Rose Beck\n", "reach\triver\nUpper Will\tRose Beck\n"})
    void theEndOfACellAndTheNextOnesBeginningAreNoName(String text) throws IOException {
        assertThat(in(check(), text)).isEmpty();
    }
}
