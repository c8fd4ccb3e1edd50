package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.store.Book;

/** A book begun without a window. */
class NewBookViewModelTest {
    @TempDir
    private Path folder;

    private final List<Path> made = new ArrayList<>();
    private final NewBookViewModel begun = new NewBookViewModel(new DirectWork(), "HB", made::add);

    /** Drawn downstream, as most are: the last point is the mouth. */
    private Path line() throws IOException {
        return Files.writeString(
                folder.resolve("beck.geojson"),
                "{\"type\":\"Feature\",\"properties\":{\"name\":\"Keld Beck\"},\"geometry\":{\"type\":\"LineString\","
                        + "\"coordinates\":[[-3.0,55.10],[-3.0,55.05],[-3.0,55.00]]}}");
    }

    private GeoPoint mouth() {
        return begun.drawn().get().orElseThrow().lines().get(0).points().get(0);
    }

    @Test
    void makesNothingBeforeTheLastStep() throws IOException {
        assertThat(begun.isReady()).isFalse();

        begun.draw(List.of(line()));

        assertThat(begun.isReady()).isTrue();
        assertThat(begun.understood().get(0)).startsWith("Keld Beck: 11.1");
        assertThat(made).isEmpty();
    }

    @Test
    void readsEveryFormatThatABookCanBeMadeOfAndFoldersOfSuch() throws IOException {
        String kml = "<?xml version=\"1.0\"?><kml xmlns=\"http://www.opengis.net/kml/2.2\"><Document><Placemark>"
                + "<name>Keld Beck</name><LineString><coordinates>-3.0,55.10 -3.0,55.05 -3.0,55.00</coordinates>"
                + "</LineString></Placemark></Document></kml>";
        Path drop = Files.createDirectory(folder.resolve("lines"));
        Path plain = Files.writeString(drop.resolve("beck.KML"), kml);
        Files.writeString(drop.resolve("read-me.txt"), "nothing drawn here");
        Path packed = folder.resolve("beck.kmz");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(packed))) {
            zip.putNextEntry(new ZipEntry("doc.kml"));
            zip.write(kml.getBytes(StandardCharsets.UTF_8));
        }

        for (Path one : List.of(plain, packed, drop)) {
            begun.draw(List.of(one));
            assertThat(begun.refusal().get()).isBlank();
            assertThat(begun.understood()).as(one.toString()).anyMatch(words -> words.startsWith("Keld Beck: 11.1"));
        }
    }

    @Test
    void turnsTheRiverRoundAndBack() throws IOException {
        begun.draw(List.of(line()));
        assertThat(mouth().latitude()).isEqualTo(55.00);

        begun.turn();
        assertThat(mouth().latitude()).isEqualTo(55.10);

        begun.turn();
        assertThat(mouth().latitude()).isEqualTo(55.00);
    }

    @Test
    void makesTheBookWithTheMouthWhereItWasPut() throws IOException {
        begun.draw(List.of(line()));
        begun.turn();

        begun.make(folder.resolve("beck"));

        try (Book book = Book.open(made.get(0))) {
            double latitude = book.read(view -> {
                var network = view.network();
                return network.line(network.rivers().get(0).id())
                        .orElseThrow()
                        .points()
                        .get(0)
                        .latitude();
            });
            assertThat(latitude).isEqualTo(55.10);
        }
    }

    @Test
    void asksWhatATrackDoesNotTell() throws IOException {
        Path track = Files.writeString(
                folder.resolve("walk.gpx"),
                "<gpx version=\"1.1\" creator=\"x\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><name>Keld Beck</name>"
                        + "<trkseg><trkpt lat=\"55.0\" lon=\"-3.0\"/><trkpt lat=\"55.05\" lon=\"-3.0\"/>"
                        + "<trkpt lat=\"55.1\" lon=\"-3.0\"/></trkseg></trk></gpx>");

        begun.draw(List.of(track));

        assertThat(begun.isReady()).isFalse();
        RiverQuestion question = begun.questions().get(0);
        assertThat(question.words()).contains("which way the water runs").doesNotContain("--");
        begun.answer(question.choices().get(0));
        assertThat(begun.isReady()).isTrue();
        assertThat(mouth().latitude()).isEqualTo(55.0);
    }

    @Test
    void takesARiverWithoutALineByItsName() {
        begun.undrawnName().set("Keld Beck");
        assertThat(begun.isReady()).isTrue();

        begun.make(folder.resolve("beck"));

        try (Book book = Book.open(made.get(0))) {
            String name = book.read(view -> view.rivers().get(0).name());
            assertThat(name).isEqualTo("Keld Beck");
        }
    }

    @Test
    void overwritesNoBook() throws IOException {
        begun.undrawnName().set("Keld Beck");
        begun.make(folder.resolve("beck"));

        begun.make(folder.resolve("beck"));

        assertThat(made).hasSize(1);
        assertThat(begun.refusal().get()).isNotBlank();
    }

    @Test
    void saysWhatIsWrongWithAFileThatIsNoLine() throws IOException {
        begun.draw(List.of(Files.writeString(folder.resolve("notes.txt"), "no line")));

        assertThat(begun.isReady()).isFalse();
        assertThat(begun.questions().get(0).words()).startsWith("notes.txt: This is neither GeoJSON");
    }
}
