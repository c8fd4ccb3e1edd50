package org.ouzelbook.ui.window;

import java.util.Locale;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import org.ouzelbook.ui.app.Texts;

/**
 * A key, or keys pressed together, by which something is done.
 *
 * @param shown how people call it
 * @param writes whether it would write something into a field; then it does nothing while somebody writes there
 * @param is whether a key that was pressed is this one
 */
record Stroke(String shown, boolean writes, Predicate<KeyEvent> is) {

    /**
     * {@return a key by itself}
     *
     * @param code the key
     */
    static Stroke of(KeyCode code) {
        boolean letter = code.isLetterKey() || code.isDigitKey();
        String shown = letter ? code.getName() : Texts.of("window.stroke." + code.name());
        boolean moves = code.isFunctionKey() || code == KeyCode.ESCAPE;
        return new Stroke(shown, !moves, event -> event.getCode() == code && isAlone(event));
    }

    /**
     * {@return a sign, by whatever keys it is written}
     *
     * @param sign one letter or sign
     */
    static Stroke typed(String sign) {
        return new Stroke(sign, true, event -> event.getText().equals(sign) && isAlone(event));
    }

    /**
     * {@return a key together with the system's own key for commands}
     *
     * @param code the key
     */
    static Stroke command(KeyCode code) {
        return held(new KeyCodeCombination(code, KeyCombination.SHORTCUT_DOWN));
    }

    /**
     * {@return a key together with the shift key and the system's own key for commands}
     *
     * @param code the key
     */
    static Stroke shiftedCommand(KeyCode code) {
        return held(new KeyCodeCombination(code, KeyCombination.SHORTCUT_DOWN, KeyCombination.SHIFT_DOWN));
    }

    private static Stroke held(KeyCombination keys) {
        return new Stroke(keys.getDisplayText(), false, keys::match);
    }

    private static boolean isAlone(KeyEvent event) {
        return !event.isControlDown() && !event.isAltDown() && !event.isMetaDown();
    }

    /**
     * {@return the same, but heard only while something holds}
     *
     * @param condition what must hold
     */
    Stroke when(BooleanSupplier condition) {
        return new Stroke(shown, writes, event -> condition.getAsBoolean() && is.test(event));
    }

    /** {@return the same as small print: a lone letter stays as it is} */
    String inHints() {
        return shown.length() == 1 ? shown.toUpperCase(Locale.ENGLISH) : shown;
    }
}
