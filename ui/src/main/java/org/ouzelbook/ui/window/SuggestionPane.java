package org.ouzelbook.ui.window;

import javafx.css.PseudoClass;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.ouzelbook.tracker.notebook.Completion.Suggestion;
import org.ouzelbook.ui.app.Texts;

/** What may be meant, listed above the line; a click takes one. */
final class SuggestionPane extends VBox {
    private static final PseudoClass POINTED = PseudoClass.getPseudoClass("pointed");

    private final NotebookViewModel notebook;

    SuggestionPane(NotebookViewModel notebook) {
        this.notebook = notebook;
        getStyleClass().add("suggestions");
        setManaged(false);
        setVisible(false);
        notebook.suggestions().list().addListener((property, before, now) -> fill());
        notebook.suggestions().pointed().addListener((property, before, now) -> point());
    }

    private void fill() {
        getChildren().clear();
        for (Suggestion suggestion : notebook.suggestions().list().get()) {
            Label text = new Label(suggestion.text().strip());
            text.getStyleClass().add("key");
            Label meaning = new Label(Texts.of(suggestion.meaning()));
            meaning.getStyleClass().add("muted");
            HBox row = new HBox(text, meaning);
            row.getStyleClass().add("suggestion");
            int index = getChildren().size();
            row.setOnMousePressed(event -> {
                notebook.suggestions().pointTo(index);
                notebook.take();
                event.consume();
            });
            getChildren().add(row);
        }
        setVisible(!getChildren().isEmpty());
        if (isVisible()) {
            applyCss();
            double width = prefWidth(-1);
            double height = prefHeight(width);
            resizeRelocate(0, -height - 6, width, height);
            layout();
        }
    }

    private void point() {
        for (int i = 0; i < getChildren().size(); i++) {
            boolean pointed = i == notebook.suggestions().pointed().get();
            getChildren().get(i).pseudoClassStateChanged(POINTED, pointed);
        }
    }
}
