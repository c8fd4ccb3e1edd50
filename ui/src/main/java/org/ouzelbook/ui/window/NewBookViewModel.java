package org.ouzelbook.ui.window;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.river.RiverAnswers;
import org.ouzelbook.tracker.river.RiverAnswers.Mouth;
import org.ouzelbook.ui.app.NewBook;
import org.ouzelbook.ui.app.NewBook.DrawnLine;
import org.ouzelbook.ui.app.Texts;

/** A book to be begun: its river, which end is the mouth, its species. Nothing is made before the last step. */
final class NewBookViewModel {
    /** What files of river lines are called; what is in them is told by their contents. */
    static final List<String> LINE_FILES = List.of("*.geojson", "*.json", "*.gpx", "*.kml", "*.kmz");

    private final Work work;
    private final String who;
    private final Consumer<Path> made;
    private final ReadOnlyObjectWrapper<Optional<NewBook.Rehearsal>> drawn =
            new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyStringWrapper refusal = new ReadOnlyStringWrapper("");
    private final StringProperty undrawnName = new SimpleStringProperty("");
    private final ObjectProperty<Species> species = new SimpleObjectProperty<>(Species.DIPPER);
    private List<Path> files = List.of();
    private RiverAnswers answers = RiverAnswers.NONE;

    /**
     * @param work does the reading and making
     * @param who the person at the keyboard, for the history
     * @param made hears of the book when it is made
     */
    NewBookViewModel(Work work, String who, Consumer<Path> made) {
        this.work = work;
        this.who = who;
        this.made = made;
    }

    /** {@return what the drawing was understood as; empty without a drawing} */
    ReadOnlyObjectProperty<Optional<NewBook.Rehearsal>> drawn() {
        return drawn.getReadOnlyProperty();
    }

    /** {@return why something did not work; blank if it did} */
    ReadOnlyStringProperty refusal() {
        return refusal.getReadOnlyProperty();
    }

    /** {@return the name of a river without a drawing} */
    StringProperty undrawnName() {
        return undrawnName;
    }

    /** {@return the species that the book is opened with} */
    ObjectProperty<Species> species() {
        return species;
    }

    /** {@return the questions about the drawing that are open} */
    List<RiverQuestion> questions() {
        return drawn.get().stream()
                .flatMap(one -> one.answer().questions().stream())
                .map(RiverQuestion::of)
                .toList();
    }

    /**
     * Reads a drawing.
     *
     * @param named GeoJSON, GPX, KML or KMZ files; of a folder, the files in it that are called so
     */
    void draw(List<Path> named) {
        files = named.stream().flatMap(NewBookViewModel::linesIn).toList();
        answers = RiverAnswers.NONE;
        rehearse();
    }

    private static Stream<Path> linesIn(Path named) {
        if (!Files.isDirectory(named)) {
            return Stream.of(named);
        }
        try (Stream<Path> there = Files.list(named)) {
            List<Path> lines =
                    there.filter(NewBookViewModel::isCalledLine).sorted().toList();
            return lines.isEmpty() ? Stream.of(named) : lines.stream();
        } catch (IOException | UncheckedIOException e) {
            return Stream.of(named);
        }
    }

    private static boolean isCalledLine(Path file) {
        String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
        return LINE_FILES.stream().anyMatch(ending -> name.endsWith(ending.substring(1)));
    }

    /**
     * Answers a question about the drawing.
     *
     * @param choice the answer
     */
    void answer(RiverQuestion.Choice choice) {
        answers = choice.answer().apply(answers);
        rehearse();
    }

    /** Puts the mouth of the main river at its other end. */
    void turn() {
        main().ifPresent(line -> {
            answers = RiverQuestion.mouth(answers, line.river(), new Mouth.Near(line.upperEnd()));
            rehearse();
        });
    }

    private Optional<DrawnLine> main() {
        return drawn.get().stream()
                .flatMap(one -> one.answer().rivers().stream())
                .filter(line -> line.joins().isEmpty())
                .findFirst();
    }

    private void rehearse() {
        List<Path> named = files;
        RiverAnswers said = answers;
        work.start(
                Texts.of("window.work.drawing"),
                progress -> NewBook.rehearse(named, said),
                now -> {
                    refusal.set("");
                    drawn.set(Optional.of(now));
                },
                this::failed);
    }

    /** {@return what was understood of the drawing, in sentences} */
    List<String> understood() {
        List<String> words = new ArrayList<>();
        drawn.get().ifPresent(one -> {
            one.answer().rivers().forEach(line -> {
                words.add(Texts.of("new.river", line.river(), line.lengthKm(), line.fromKm(), line.toKm()));
                if (line.joins().isEmpty()) {
                    GeoPoint mouth = line.lowerEnd();
                    words.add(Texts.of("window.new.lies", mouth.latitude(), mouth.longitude()));
                }
                line.joins()
                        .ifPresent(joins ->
                                words.add(Texts.of("new.joins", joins.river(), joins.km(), joins.metresAway())));
                if (line.pieces() > 1) {
                    words.add(Texts.of("new.pieces", line.pieces(), line.turned()));
                }
                line.gaps().forEach(gap -> words.add(Texts.of("new.gap", gap.km(), gap.metres())));
                if (line.leftOutKm() > 0) {
                    words.add(Texts.of("new.leftOut", line.leftOutKm()));
                }
            });
            one.answer().warnings().forEach(warning -> words.add(Texts.of(warning)));
        });
        return words;
    }

    /** {@return whether nothing is open any more} */
    boolean isReady() {
        return drawn.get()
                .map(one -> one.answer().questions().isEmpty() && !one.lines().isEmpty())
                .orElse(!undrawnName.get().isBlank());
    }

    /**
     * Makes the book.
     *
     * @param file where
     */
    void make(Path file) {
        if (!isReady()) {
            return;
        }
        boolean drawing = drawn.get().isPresent();
        List<Path> named = files;
        RiverAnswers said = answers;
        String name = undrawnName.get();
        work.start(
                Texts.of("window.work.making"),
                progress -> drawing
                        ? Path.of(NewBook.make(file, named, said, who).book().orElseThrow())
                        : NewBook.undrawn(file, name, who),
                made,
                this::failed);
    }

    private void failed(Throwable failure) {
        refusal.set(FailureWords.of(failure));
    }
}
