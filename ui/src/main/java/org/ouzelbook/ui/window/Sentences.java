package org.ouzelbook.ui.window;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.VBox;

/** Sentences under headings, in a column that scrolls. */
final class Sentences extends ScrollPane {
    private final VBox column = new VBox();

    Sentences() {
        getStyleClass().add("told");
        column.getStyleClass().add("sentences");
        setFitToWidth(true);
        setHbarPolicy(ScrollBarPolicy.NEVER);
        setContent(column);
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
        setVvalue(0);
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
