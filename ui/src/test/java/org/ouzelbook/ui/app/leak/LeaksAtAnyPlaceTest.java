package org.ouzelbook.ui.app.leak;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.cli.CommandRun;

/** A text is looked through a few words and figures at a time: whatever stands before and behind a secret, it is found, once. */
class LeaksAtAnyPlaceTest {
    private static final String RIVER = """
            {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
              [[-6.43,57.28],[-6.42,57.25],[-6.40,57.20]]}}
            """;
    private static final int MOST_WORDS = 12;

    @TempDir
    Path folder;

    private LeakCheck check;
    private GeoPoint nest;

    @BeforeEach
    void makeABook() throws IOException {
        Path path = folder.resolve("arrel.mv.db");
        run("new", path, "--river", Files.writeString(folder.resolve("river.geojson"), RIVER));
        run("import", path, Files.writeString(folder.resolve("marks.csv"), "name,km,kind\nMill Bridge,3.1,bridge\n"));
        run("import", path, Files.writeString(folder.resolve("visits.csv"), """
                visit,date,start,end,from_km,to_km,species,observers,note
                IB-1,2026-03-02,07:00,09:35,1.2,5.4,dipper,Ina Maria van der Aar Brekke Lund,old Hendry let us through
                """));
        run("import", path, Files.writeString(folder.resolve("nests.csv"), """
                nest,km,species,site,note
                KX7,3.413,dipper,bridge,second arch from the left behind the ivy
                QX8,4.74,dipper,weir,thick moss there
                """));
        try (Book book = Book.open(path)) {
            check = book.read(view -> LeakCheck.of(view, false));
            nest = book.read(view -> {
                var place = view.nest("KX7").orElseThrow().place();
                return view.network()
                        .measuredLine(place.riverId())
                        .orElseThrow()
                        .point(place.chainage())
                        .orElseThrow();
            });
        }
    }

    private static void run(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
    }

    private List<Leak> leaks(String text) throws IOException {
        return check.in("a.txt", text.getBytes(StandardCharsets.UTF_8));
    }

    private String secret(String written) {
        return String.format(Locale.ROOT, written, nest.latitude(), nest.longitude());
    }

    /** The longest name has more words than any run of a note that is compared. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            Ina Maria van der Aar Brekke Lund  | NAME
            KX7                                | NAME
            from the left behind the           | NOTE
            thick moss there                   | NOTE
            %.5f and %.5f                      | COORDINATES
            %2$.5f and 3 and %1$.5f            | COORDINATES
            km 3.413                           | RIVER_KM
            Mill Bridge has a nest.            | LANDMARK
            """)
    void isFoundBehindAnyNumberOfWords(String written, Leak.Kind kind) throws IOException {
        for (int before = 0; before <= MOST_WORDS; before++) {
            for (int after = 0; after <= 2; after++) {
                String text = "grey water\n" + "stony ".repeat(before) + secret(written) + " slow".repeat(after);

                assertThat(leaks(text))
                        .as(text)
                        .extracting(Leak::kind, Leak::line)
                        .containsExactly(tuple(kind, 2));
            }
        }
    }

    @Test
    void isFoundAnywhereInALongText() throws IOException {
        String[] lines = new String[60_000];
        Arrays.fill(lines, "grey water, 12.5, stony, 7, slow, 0.25");
        lines[0] = "Ina Maria van der Aar Brekke Lund";
        lines[32_767] = secret("lat %.5f lon %.5f");
        lines[40_000] = "thick moss";
        lines[40_001] = "there";
        lines[59_999] = "km 3.413";

        assertThat(leaks(String.join("\n", lines)))
                .extracting(Leak::kind, Leak::line)
                .containsExactlyInAnyOrder(
                        tuple(Leak.Kind.NAME, 1),
                        tuple(Leak.Kind.COORDINATES, 32_768),
                        tuple(Leak.Kind.NOTE, 40_001),
                        tuple(Leak.Kind.RIVER_KM, 60_000));
    }

    /** The nest at 57.22 N on a river at 3.1 E must not be seen in the river km and the latitude of a bridge at km 3.1 in the west. */
    @Test
    void aRiverKmBesideAPublicPlaceMakesNoOtherPlace() throws IOException {
        Path path = folder.resolve("two.mv.db");
        run("new", path, "--river", Files.writeString(folder.resolve("two.geojson"), """
                {"type":"FeatureCollection","features":[
                  {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
                    [[-6.43,57.28],[-6.42,57.25],[-6.40,57.20]]}},
                  {"type":"Feature","properties":{"name":"Ost Beck"},"geometry":{"type":"LineString","coordinates":
                    [[3.1,57.28],[3.1,57.20]]}}]}
                """));
        run("import", path, folder.resolve("marks.csv"), "--river", "Arrel Water");
        GeoPoint bridge = pointAt(path, "Arrel Water", 3.1);
        run(
                "import",
                path,
                Files.writeString(
                        folder.resolve("east.csv"),
                        String.format(
                                Locale.ROOT,
                                "nest,latitude,longitude,species\nE1,%.6f,3.1,dipper\n",
                                bridge.latitude())));
        try (Book book = Book.open(path)) {
            check = book.read(view -> LeakCheck.of(view, false));
        }
        String row = "Mill Bridge,Arrel Water,3.1,%.6f,%.6f,bridge\n";

        assertThat(leaks(String.format(Locale.ROOT, row, bridge.latitude(), bridge.longitude())))
                .isEmpty();
        assertThat(leaks(String.format(Locale.ROOT, row, bridge.latitude(), bridge.longitude() + 0.01)))
                .extracting(Leak::kind)
                .containsExactly(Leak.Kind.COORDINATES);
        assertThat(leaks(String.format(
                        Locale.ROOT, "%.6f,%.6f,%.6f,3.1\n", bridge.latitude(), bridge.longitude(), bridge.latitude())))
                .as("a nest behind a bridge")
                .extracting(Leak::kind)
                .containsExactly(Leak.Kind.COORDINATES);
    }

    private static GeoPoint pointAt(Path path, String river, double km) {
        try (Book book = Book.open(path)) {
            return book.read(view -> view.network()
                    .measuredLine(view.rivers().stream()
                            .filter(one -> one.name().equals(river))
                            .findFirst()
                            .orElseThrow()
                            .id())
                    .orElseThrow()
                    .point(Chainage.ofKm(km))
                    .orElseThrow());
        }
    }

    @Test
    void everyRunOfNeighboursComesIntoViewWhole() {
        String text = "Für 3 Wasseramseln, am Wehr – N2b: étang/ruisseau №7";
        List<String> words = List.of("Für", "3", "Wasseramseln", "am", "Wehr", "N2b", "étang", "ruisseau", "7");
        for (int size = 1; size <= words.size() + 1; size++) {
            List<List<String>> seen = new ArrayList<>();
            for (WordWindow window = new WordWindow(text, size); !window.isEmpty(); window.step()) {
                seen.add(window.view().stream().map(WordWindow.Word::written).toList());
            }
            assertThat(seen).hasSameSizeAs(words);
            for (int first = 0; first < words.size(); first++) {
                assertThat(seen.get(first)).isEqualTo(words.subList(first, Math.min(first + size, words.size())));
            }
        }
    }
}
