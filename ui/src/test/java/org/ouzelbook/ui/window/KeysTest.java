package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import org.junit.jupiter.api.Test;

/** Keys, without a window. */
class KeysTest {
    private final List<String> done = new ArrayList<>();
    private final Keys keys = new Keys("window.keys.strip")
            .on("window.does.nearer", () -> done.add("nearer"), Stroke.typed("+"))
            .on("window.does.undo", () -> done.add("undo"), Stroke.command(KeyCode.Z))
            .on("window.does.redo", () -> done.add("redo"), Stroke.shiftedCommand(KeyCode.Z))
            .offer("window.does.legend", "window.hint.legend", () -> done.add("legend"), Stroke.of(KeyCode.L))
            .offer("window.does.back", "window.hint.back", () -> done.add("back"), Stroke.of(KeyCode.ESCAPE))
            .pointer("window.pointer.wheel", "window.does.zoom");

    private static KeyEvent pressed(String text, KeyCode code, boolean shift, boolean control) {
        return new KeyEvent(KeyEvent.KEY_PRESSED, text, text, code, shift, control, false, false);
    }

    @Test
    void doesWhatItsKeySaysAndNothingElse() {
        assertThat(keys.press(pressed("l", KeyCode.L, false, false), false)).isTrue();
        assertThat(keys.press(pressed("+", KeyCode.EQUALS, true, false), false)).isTrue();
        assertThat(keys.press(pressed("k", KeyCode.K, false, false), false)).isFalse();

        assertThat(done).containsExactly("legend", "nearer");
    }

    @Test
    void tellsUndoFromDoingAgain() {
        keys.press(pressed("", KeyCode.Z, false, true), false);
        keys.press(pressed("", KeyCode.Z, true, true), false);

        assertThat(done).containsExactly("undo", "redo");
    }

    @Test
    void leavesLettersToWhoeverWrites() {
        assertThat(keys.press(pressed("l", KeyCode.L, false, false), true)).isFalse();
        assertThat(keys.press(pressed("+", KeyCode.PLUS, false, false), true)).isFalse();
        assertThat(keys.press(pressed("", KeyCode.ESCAPE, false, false), true)).isTrue();

        assertThat(done).containsExactly("back");
    }

    @Test
    void tellsEveryKeyThatItHears() {
        assertThat(keys.lines().stream().map(Keys.Line::how))
                .hasSize(6)
                .contains("+", "L", "Esc", "Wheel")
                .anyMatch(how -> how.endsWith("Z"));
        assertThat(keys.lines().stream().map(Keys.Line::does)).contains("legend", "undo the last change");
    }

    @Test
    void offersOnlyWhatItIsToldToOffer() {
        assertThat(keys.offered().stream().map(Keys.Act::hint)).containsExactly("legend", "back");
    }
}
