package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ouzelbook.ui.window.LiveWindow.onWindow;
import static org.ouzelbook.ui.window.LiveWindow.scene;
import static org.ouzelbook.ui.window.LiveWindow.type;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import javafx.geometry.Bounds;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Every page of the real window, in light and dark, for those who hear it or use only the keys. */
@Tag("window")
class AccessWindowTest {
    @TempDir
    private Path folder;

    private final List<String> wrong = new ArrayList<>();

    @Test
    @Timeout(value = 6, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void everyPageIsNamedReadableInOrderAndLeftByKeys() throws IOException {
        Path file = folder.resolve("arrel.mv.db");
        SampleBook.create(folder.resolve("arrel")).close();
        Path notes = Files.write(
                folder.resolve("notes.csv"),
                List.of(
                        "date,river,km,species,count",
                        "03/04/2026,Arrel Water,7.1,dipper,2",
                        "x,Arrel Water,7,dipper,1"));
        LiveWindow window = LiveWindow.open(Optional.empty(), folder);
        window.awaitWords("Look around");
        check("start");
        LiveWindow.click("Begin a book");
        window.awaitWords("Its mouth");
        check("begin");
        type(KeyCode.ESCAPE);
        window.awaitWords("Look around");
        onWindow(() -> {
            ((StartPane) scene().getRoot()).take(List.of(file));
            return true;
        });
        window.awaitWords("Before you go out");
        check("cautions");
        type(KeyCode.ESCAPE);
        window.await("the strip", () -> LiveWindow.shows("territories") && !LiveWindow.shows("Before you go out"));

        for (int theme = 0; theme < 2; theme++) {
            String look = theme == 0 ? "-light" : "-dark";
            check("strip" + look);
            noKeyDoesTwoThings("strip");
            for (KeyCode page : List.of(KeyCode.F, KeyCode.C, KeyCode.I, KeyCode.H, KeyCode.S)) {
                type(page);
                window.await("page " + page, () -> pane().page().isPresent());
                String name = onWindow(() -> pane().page().orElseThrow().name());
                if (page == KeyCode.I) {
                    onWindow(() -> {
                        pane().take(List.of(notes));
                        return true;
                    });
                    window.awaitWords("Does the day or the month stand first?");
                }
                if (page == KeyCode.F) {
                    window.awaitWords("In 2026:");
                }
                if (page == KeyCode.C) {
                    window.awaitWords("Visits due");
                }
                LiveWindow.pause(300);
                check(name.toLowerCase(Locale.ROOT) + look);
                noKeyDoesTwoThings(name);
                for (int i = 0; i < 3 && onWindow(() -> pane().page().isPresent()); i++) {
                    type(KeyCode.ESCAPE);
                }
                window.await("the strip again from " + name, () -> pane().page().isEmpty());
            }
            for (KeyCode sheet : List.of(KeyCode.L, KeyCode.F1, KeyCode.G)) {
                type(sheet);
                window.await("the sheet", () -> scene().lookup(".overlay").isVisible());
                check("sheet " + sheet + look);
                assertThat(cutOff())
                        .as("what sticks out of the window, sheet " + sheet)
                        .isEmpty();
                type(KeyCode.ESCAPE);
                window.await("no sheet", () -> !scene().lookup(".overlay").isVisible());
            }
            type(KeyCode.D);
        }
        window.close();
        assertThat(wrong).isEmpty();
    }

    /** Sheets that the window does not show whole. */
    private static List<Bounds> cutOff() {
        return onWindow(() -> Stream.of(scene().lookup(".overlay > .sheet"))
                .map(sheet -> sheet.localToScene(sheet.getLayoutBounds()))
                .filter(sheet -> sheet.getMinY() < 0 || sheet.getMaxY() > scene().getHeight())
                .toList());
    }

    private static BookPane pane() {
        return (BookPane) scene().getRoot();
    }

    private void check(String place) {
        LiveWindow.keep("access-" + place.replace(' ', '-'));
        onWindow(() -> Accessibility.wrongWith(scene())).forEach(words -> wrong.add(place + ": " + words));
    }

    /** Every key that there is, alone and with Shift and Ctrl, is heard by one thing at most. */
    private void noKeyDoesTwoThings(String place) {
        onWindow(() -> {
            List<Keys> heard = pane().heard();
            for (KeyCode code : KeyCode.values()) {
                for (int held = 0; held < 4; held++) {
                    String sign =
                            code.getName().length() == 1 ? code.getName().toLowerCase(Locale.ROOT) : code.getChar();
                    KeyEvent event =
                            new KeyEvent(KeyEvent.KEY_PRESSED, sign, sign, code, held % 2 == 1, held > 1, false, false);
                    List<String> does = heard.stream()
                            .flatMap(keys -> keys.answering(event).stream())
                            .toList();
                    if (does.size() > 1 && code != KeyCode.ESCAPE) {
                        wrong.add(place + ": " + code + " " + held + " does " + does);
                    }
                }
            }
            return true;
        });
    }
}
