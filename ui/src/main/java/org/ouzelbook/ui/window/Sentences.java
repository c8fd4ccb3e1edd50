package org.ouzelbook.ui.window;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.beans.binding.Bindings;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.ouzelbook.ui.app.Texts;

/** Sentences under headings, in a column that scrolls. */
final class Sentences extends ScrollPane {
    private final VBox column = new VBox();

    Sentences() {
        getStyleClass().add("told");
        column.getStyleClass().add("sentences");
        setFitToWidth(true);
        setHbarPolicy(ScrollBarPolicy.NEVER);
        setContent(column);
        scrollByKeys(this, column);
    }

    /**
     * Lets what does not fit be reached by the keys that scroll.
     *
     * @param pane what scrolls
     * @param column what is in it
     */
    static void scrollByKeys(ScrollPane pane, Region column) {
        pane.getStyleClass().add("by-keys");
        pane.setAccessibleRole(AccessibleRole.TEXT_AREA);
        pane.setAccessibleText(Texts.of("window.told.name"));
        pane.setAccessibleHelp(Texts.of("window.told.help"));
        pane.focusTraversableProperty()
                .bind(Bindings.createBooleanBinding(
                        () -> column.getHeight() > pane.getViewportBounds().getHeight() + 1,
                        column.heightProperty(),
                        pane.viewportBoundsProperty()));
    }

    /**
     * Tells something, from the top.
     *
     * @param told what
     */
    void tell(Explanation told) {
        List<Node> lines = new ArrayList<>();
        if (!told.title().isBlank()) {
            lines.add(line(told.title(), "heading"));
        }
        if (!told.subtitle().isBlank()) {
            lines.add(line(told.subtitle(), "muted"));
        }
        for (Explanation.Section section : told.sections()) {
            if (!section.heading().isBlank()) {
                lines.add(line(section.heading(), "subheading"));
            }
            section.sentences().forEach(sentence -> lines.add(line(sentence, "sentence")));
        }
        column.getChildren().setAll(lines);
        setAccessibleText(name(told));
        setVvalue(0);
    }

    /**
     * {@return what a text is about, in a line}
     *
     * @param told the text
     */
    static String name(Explanation told) {
        String words = Stream.concat(
                        Stream.of(told.title()), told.sections().stream().map(Explanation.Section::heading))
                .filter(one -> !one.isBlank())
                .collect(Collectors.joining(", "));
        return words.isBlank() ? Texts.of("window.told.name") : words;
    }

    /**
     * {@return a line of words that wraps}
     *
     * @param words the words
     * @param style how they look
     */
    static Label line(String words, String style) {
        Label label = new Label(words);
        label.setWrapText(true);
        label.setMinHeight(USE_PREF_SIZE);
        label.getStyleClass().add(style);
        return label;
    }
}
