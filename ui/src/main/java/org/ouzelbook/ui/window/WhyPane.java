package org.ouzelbook.ui.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.VBox;

/** The right side: why the thing selected is as it is, in sentences. */
final class WhyPane extends ScrollPane {
    private final VBox sentences = new VBox();

    WhyPane(BookViewModel book) {
        getStyleClass().add("why");
        sentences.getStyleClass().add("sentences");
        setFitToWidth(true);
        setHbarPolicy(ScrollBarPolicy.NEVER);
        setContent(sentences);
        book.explanation().addListener((property, before, now) -> show(now));
    }

    private void show(Optional<Explanation> explanation) {
        List<Node> lines = new ArrayList<>();
        explanation.ifPresent(told -> {
            lines.add(line(told.title(), "heading"));
            if (!told.subtitle().isBlank()) {
                lines.add(line(told.subtitle(), "muted"));
            }
            for (Explanation.Section section : told.sections()) {
                if (!section.heading().isBlank()) {
                    lines.add(line(section.heading(), "subheading"));
                }
                section.sentences().forEach(sentence -> lines.add(line(sentence, "sentence")));
            }
        });
        sentences.getChildren().setAll(lines);
        setVvalue(0);
    }

    private static Label line(String words, String style) {
        Label label = new Label(words);
        label.setWrapText(true);
        label.setMinHeight(USE_PREF_SIZE);
        label.getStyleClass().add(style);
        return label;
    }
}
