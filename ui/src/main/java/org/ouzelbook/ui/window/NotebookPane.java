package org.ouzelbook.ui.window;

import java.util.Optional;
import javafx.css.PseudoClass;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.text.TextAlignment;
import javafx.util.StringConverter;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.ui.app.Texts;

/** The foot: one line to type in as in a notebook, and how it is understood. */
final class NotebookPane extends HBox {
    private static final double HEIGHT = 52;
    private static final double LINES = 44;
    private static final PseudoClass WRITING = PseudoClass.getPseudoClass("writing");

    private final NotebookViewModel notebook;
    private final TextField field = new TextField();
    private final ComboBox<Optional<Visit>> visits = new ComboBox<>();

    NotebookPane(NotebookViewModel notebook) {
        this.notebook = notebook;
        getStyleClass().add("notebook");
        field.setId("notebook-line");
        field.setPromptText(Texts.of("window.notebook.prompt"));
        field.setAccessibleText(Texts.of("window.notebook.name"));
        field.setAccessibleHelp(Texts.of("window.notebook.help"));
        field.textProperty().bindBidirectional(notebook.line());
        field.setOnAction(event -> notebook.save());
        field.focusedProperty().addListener((property, before, now) -> pseudoClassStateChanged(WRITING, now));
        setHgrow(field, Priority.ALWAYS);
        Label understood = new Label();
        understood.getStyleClass().add("muted");
        understood.textProperty().bind(notebook.readBack());
        understood.setWrapText(true);
        understood.setMaxWidth(620);
        understood.setMaxHeight(LINES);
        understood.setTextAlignment(TextAlignment.RIGHT);
        setMinHeight(HEIGHT);
        setMaxHeight(HEIGHT);
        visits();
        getChildren().addAll(field, understood, visits);
    }

    private void visits() {
        visits.getStyleClass().add("quiet");
        visits.setAccessibleText(Texts.of("window.notebook.visit"));
        visits.setConverter(new StringConverter<>() {
            @Override
            public String toString(Optional<Visit> visit) {
                return visit == null ? "" : words(visit);
            }

            @Override
            public Optional<Visit> fromString(String words) {
                return Optional.empty();
            }
        });
        notebook.visits().addListener((property, before, now) -> {
            visits.getItems().setAll(now.stream().map(Optional::of).toList());
            visits.getItems().add(Optional.empty());
            visits.setValue(notebook.visit().get());
        });
        notebook.visit().addListener((property, before, now) -> visits.setValue(now));
        visits.valueProperty().addListener((property, before, now) -> {
            if (now != null) {
                notebook.visit().set(now);
            }
        });
    }

    private String words(Optional<Visit> visit) {
        return visit.map(one -> Texts.of("window.notebook.ofVisit", one.date(), notebook.river(one)))
                .orElseGet(() -> Texts.of("window.notebook.casual"));
    }

    /** {@return whether the keyboard writes here} */
    boolean isWriting() {
        return field.isFocused();
    }

    /** {@return whether a line is begun and not saved: undo then means the line, not the book} */
    boolean isHalfWritten() {
        return isWriting() && !field.getText().isEmpty();
    }

    /** Puts the keyboard here. */
    void write() {
        field.requestFocus();
        field.end();
    }
}
