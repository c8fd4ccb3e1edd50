package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ouzelbook.ui.window.LiveWindow.onWindow;
import static org.ouzelbook.ui.window.LiveWindow.scene;
import static org.ouzelbook.ui.window.LiveWindow.type;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Every page of every odd book in the real window: nothing is left unfinished, blank, or told as an error. */
@Tag("window")
class OddBooksWindowTest {
    private static final List<KeyCode> PAGES = List.of(KeyCode.F, KeyCode.C, KeyCode.I, KeyCode.H, KeyCode.S);
    private static final List<KeyCode> SHEETS = List.of(KeyCode.L, KeyCode.W, KeyCode.F1, KeyCode.G);

    /** What nobody should read: numbers that are none, the inside of the program, and a text whose facts are missing. */
    private static final Pattern WRONG =
            Pattern.compile("NaN|Infinity|Exception|\\bnull\\b|java\\.|org\\.ouzelbook|did not work|Optional\\[");

    @TempDir
    private Path folder;

    private final List<String> wrong = new ArrayList<>();

    @Test
    @Timeout(value = 15, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void everyPageOfEveryOddBookIsFinishedAndSaysSomething() {
        Map<String, Path> books = OddBooks.in(folder);
        LiveWindow window = LiveWindow.open(Optional.empty(), folder);
        for (Map.Entry<String, Path> book : books.entrySet()) {
            window.awaitWords("Look around");
            onWindow(() -> {
                ((StartPane) scene().getRoot()).take(List.of(Path.of(book.getValue() + ".mv.db")));
                return true;
            });
            window.awaitWords("Before you go out");
            type(KeyCode.ESCAPE);
            walk(window, book.getKey());
            type(KeyCode.B);
        }
        window.awaitWords("Look around");
        window.close();
        assertThat(wrong).isEmpty();
    }

    private void walk(LiveWindow window, String book) {
        window.await(
                "the book",
                () -> scene().getRoot() instanceof BookPane
                        && !scene().lookup(".overlay").isVisible());
        check(window, book + ", strip", () -> scene().getRoot());
        for (KeyCode key : SHEETS) {
            type(key);
            if (key == KeyCode.W
                    && onWindow(() -> pane().book().strip().drawing().get().isEmpty())) {
                window.awaitWords("Nothing is drawn yet");
                continue;
            }
            window.await(
                    "sheet " + key + " of " + book,
                    () -> scene().lookup(".overlay").isVisible());
            check(window, book + ", sheet " + key, () -> scene().lookup(".overlay"));
            type(KeyCode.ESCAPE);
            window.await("no sheet", () -> !scene().lookup(".overlay").isVisible());
        }
        for (KeyCode key : PAGES) {
            type(key);
            window.await("page " + key + " of " + book, () -> pane().page().isPresent());
            String name = onWindow(() -> pane().page().orElseThrow().name());
            check(window, book + ", " + name, () -> pane().page().orElseThrow().node());
            if (key == KeyCode.F) {
                for (Topic topic : Topic.values()) {
                    onWindow(() -> {
                        ListView<?> topics = (ListView<?>) scene().lookup(".topics");
                        topics.getSelectionModel().select(topics.getItems().indexOf(topic));
                        return true;
                    });
                    check(window, book + ", " + topic.term(), () -> scene().lookup(".finding-sheet"));
                }
            }
            for (int i = 0; i < 3 && onWindow(() -> pane().page().isPresent()); i++) {
                type(KeyCode.ESCAPE);
            }
            window.await("the strip again from " + name, () -> pane().page().isEmpty());
        }
        type(KeyCode.BACK_SPACE);
        check(window, book + ", all seasons", () -> scene().getRoot());
    }

    private static BookPane pane() {
        return (BookPane) scene().getRoot();
    }

    private interface Part {
        Node get();
    }

    private void check(LiveWindow window, String place, Part part) {
        window.await(
                "an end of all work, " + place,
                () -> words(scene().getRoot()).noneMatch(OddBooksWindowTest::isUnfinished));
        LiveWindow.keep("odd-" + place.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-"));
        onWindow(() -> {
            if (Stream.concat(words(part.get()), pictures(part.get())).noneMatch(one -> one.length() > 12)) {
                wrong.add(place + " says nothing");
            }
            words(scene().getRoot()).filter(WRONG.asPredicate()).forEach(one -> wrong.add(place + " says: " + one));
            return true;
        });
    }

    /** Words that end in dots speak of something that goes on; buttons that lead further end so, too, and do not count. */
    private static boolean isUnfinished(String words) {
        return words.endsWith(" …") || words.contains("still counting");
    }

    private static Stream<String> words(Node node) {
        return labels(node).map(Labeled::getText).filter(text -> text != null && !text.isBlank());
    }

    /** What pictures say to those who do not see them. */
    private static Stream<String> pictures(Node node) {
        return node.lookupAll("*").stream()
                .filter(Canvas.class::isInstance)
                .map(Node::getAccessibleText)
                .filter(Objects::nonNull);
    }

    private static Stream<Labeled> labels(Node node) {
        if (!node.isVisible()) {
            return Stream.empty();
        }
        Stream<Labeled> itself =
                node instanceof Labeled label && !(node instanceof ButtonBase) ? Stream.of(label) : Stream.empty();
        return node instanceof Parent parent
                ? Stream.concat(
                        itself, parent.getChildrenUnmodifiable().stream().flatMap(child -> labels(child)))
                : itself;
    }
}
