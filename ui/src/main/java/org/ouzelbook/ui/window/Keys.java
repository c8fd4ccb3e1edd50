package org.ouzelbook.ui.window;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.scene.input.KeyEvent;
import org.ouzelbook.ui.app.Texts;

/** The keys of one place in the window. The page of keys is made from the same list that hears them, so it cannot lie. */
final class Keys {
    private final String place;
    private final List<Act> acts = new ArrayList<>();
    private final List<Line> pointer = new ArrayList<>();

    /**
     * @param place key of the text that names the place
     */
    Keys(String place) {
        this.place = place;
    }

    /**
     * Something that a key does.
     *
     * @param does what, in words
     * @param hint a word or two for the foot of the window; blank if it is not shown there
     * @param strokes the keys that do it, one or more
     * @param action the doing
     */
    record Act(String does, String hint, List<Stroke> strokes, Runnable action) {
        Act {
            strokes = List.copyOf(strokes);
        }
    }

    /**
     * One line of the page of keys.
     *
     * @param how the keys, or what the pointer does
     * @param does what comes of it
     */
    record Line(String how, String does) {}

    /**
     * Adds something that keys do.
     *
     * @param does key of the text that says what
     * @param action the doing
     * @param strokes the keys, one or more
     */
    Keys on(String does, Runnable action, Stroke... strokes) {
        acts.add(new Act(Texts.of(does), "", List.of(strokes), action));
        return this;
    }

    /**
     * Adds something that keys do and that the foot of the window offers, too.
     *
     * @param does key of the text that says what
     * @param hint key of the text of a word or two
     * @param action the doing
     * @param strokes the keys, one or more
     */
    Keys offer(String does, String hint, Runnable action, Stroke... strokes) {
        acts.add(new Act(Texts.of(does), Texts.of(hint), List.of(strokes), action));
        return this;
    }

    /**
     * Adds what the pointer does; it is only told, the place itself hears it.
     *
     * @param how key of the text that says what the pointer does
     * @param does key of the text that says what comes of it
     */
    Keys pointer(String how, String does) {
        pointer.add(new Line(Texts.of(how), Texts.of(does)));
        return this;
    }

    /**
     * Does what a key asks for.
     *
     * @param event the key
     * @param writing whether somebody writes in a field
     * @return whether there was something to do
     */
    boolean press(KeyEvent event, boolean writing) {
        for (Act act : acts) {
            for (Stroke stroke : act.strokes()) {
                if (!(writing && stroke.writes()) && stroke.is().test(event)) {
                    act.action().run();
                    event.consume();
                    return true;
                }
            }
        }
        return false;
    }

    /**
     * {@return what a key would do here, in words}
     *
     * @param event the key
     */
    List<String> answering(KeyEvent event) {
        return acts.stream()
                .filter(act ->
                        act.strokes().stream().anyMatch(stroke -> stroke.is().test(event)))
                .map(Act::does)
                .toList();
    }

    /** {@return the name of the place} */
    String place() {
        return Texts.of(place);
    }

    /** {@return what the foot of the window offers} */
    List<Act> offered() {
        return acts.stream().filter(act -> !act.hint().isEmpty()).toList();
    }

    /** {@return the page of keys} */
    List<Line> lines() {
        Stream<Line> keys = acts.stream()
                .map(act -> new Line(
                        act.strokes().stream().map(Stroke::shown).collect(Collectors.joining(", ")), act.does()));
        return Stream.concat(keys, pointer.stream()).toList();
    }
}
