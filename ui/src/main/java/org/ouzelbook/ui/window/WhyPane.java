package org.ouzelbook.ui.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.ouzelbook.ui.strip.Subject;

/** The right side: why the thing selected is as it is, in sentences. */
final class WhyPane extends ScrollPane {
    private final VBox sentences = new VBox();
    private final StripViewModel strip;
    private final Keys onTerritory;

    /**
     * @param book the book
     * @param onTerritory what can be decided of the territory that is selected
     */
    WhyPane(BookViewModel book, Keys onTerritory) {
        this.strip = book.strip();
        this.onTerritory = onTerritory;
        getStyleClass().add("why");
        sentences.getStyleClass().add("sentences");
        setFitToWidth(true);
        setHbarPolicy(ScrollBarPolicy.NEVER);
        setContent(sentences);
        Sentences.scrollByKeys(this, sentences);
        book.explanation().addListener((property, before, now) -> show(now));
    }

    private void show(Optional<Explanation> explanation) {
        List<Node> lines = new ArrayList<>();
        explanation.ifPresent(told -> {
            lines.add(line(told.title(), "heading"));
            if (!told.subtitle().isBlank()) {
                lines.add(line(told.subtitle(), "muted"));
            }
            if (strip.selected()
                    .get()
                    .filter(Subject.OfTerritory.class::isInstance)
                    .isPresent()) {
                lines.add(decisions());
            }
            for (Explanation.Section section : told.sections()) {
                if (!section.heading().isBlank()) {
                    lines.add(line(section.heading(), "subheading"));
                }
                section.sentences().forEach(sentence -> lines.add(line(sentence, "sentence")));
            }
        });
        sentences.getChildren().setAll(lines);
        explanation.map(Sentences::name).ifPresent(this::setAccessibleText);
        setVvalue(0);
    }

    private Node decisions() {
        FlowPane buttons = new FlowPane();
        buttons.getStyleClass().add("decisions");
        onTerritory.offered().stream().map(FootLine::hint).forEach(buttons.getChildren()::add);
        return buttons;
    }

    private static Label line(String words, String style) {
        Label label = new Label(words);
        label.setWrapText(true);
        label.setMinHeight(USE_PREF_SIZE);
        label.getStyleClass().add(style);
        return label;
    }
}
