package org.ouzelbook.ui.window;

import java.util.List;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.css.PseudoClass;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyEvent;
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
    private static final PseudoClass CORRECTING = PseudoClass.getPseudoClass("correcting");

    private final NotebookViewModel notebook;
    private final TextField field = new TextField();
    private static final double WIDEST_VISIT = 320;

    private final ComboBox<Optional<Visit>> visits = new ComboBox<>();

    NotebookPane(NotebookViewModel notebook) {
        this.notebook = notebook;
        getStyleClass().add("notebook");
        field.setId("notebook-line");
        field.setPromptText(Texts.of("window.notebook.prompt"));
        field.setAccessibleText(Texts.of("window.notebook.name"));
        field.setAccessibleHelp(Texts.of("window.notebook.help"));
        field.textProperty().bindBidirectional(notebook.line());
        notebook.cursor().addListener((property, before, now) -> {
            if (now.intValue() != field.getCaretPosition()) {
                field.positionCaret(now.intValue());
            }
        });
        field.caretPositionProperty().addListener((property, before, now) -> {
            notebook.cursor().set(now.intValue());
            notebook.suggest();
        });
        field.setOnAction(event -> notebook.save());
        field.addEventFilter(KeyEvent.KEY_PRESSED, this::key);
        field.addEventFilter(KeyEvent.KEY_TYPED, this::comma);
        field.focusedProperty().addListener((property, before, now) -> {
            pseudoClassStateChanged(WRITING, now);
            if (!now) {
                notebook.suggestions().set(List.of());
            }
        });
        notebook.correcting().addListener((property, before, now) -> pseudoClassStateChanged(CORRECTING, now));
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
        getChildren().addAll(field, understood, visits, new SuggestionPane(notebook));
    }

    /** Arrows point to a suggestion, Tab takes it, Enter too where one is pointed to. */
    private void key(KeyEvent event) {
        Suggestions suggestions = notebook.suggestions();
        boolean offered = !suggestions.list().get().isEmpty();
        boolean done = switch (event.getCode()) {
            case DOWN -> point(1);
            case UP -> offered ? point(-1) : correctLast();
            case TAB ->
                !event.isShiftDown() && (notebook.take() || !field.getText().isEmpty());
            case ENTER -> suggestions.isPointed() && notebook.take();
            default -> false;
        };
        if (done) {
            event.consume();
        }
    }

    /** A comma stands at the word before it, and takes the blank away that a suggestion left. */
    private void comma(KeyEvent event) {
        int caret = field.getCaretPosition();
        if (event.getCharacter().equals(",") && caret > 0 && field.getText().charAt(caret - 1) == ' ') {
            field.deletePreviousChar();
        }
    }

    private boolean point(int step) {
        notebook.suggestions().point(step);
        return true;
    }

    /** {@return whether there was something to go back from: suggestions, or a record that is being corrected} */
    boolean back() {
        if (!notebook.suggestions().list().get().isEmpty()) {
            notebook.suggestions().set(List.of());
            return true;
        }
        boolean correcting = notebook.correcting().get();
        if (correcting) {
            notebook.leave();
        } else {
            notebook.leaveUnreasoned();
        }
        return correcting;
    }

    private boolean correctLast() {
        boolean empty = field.getText().isEmpty();
        if (empty) {
            notebook.correctLast();
        }
        return empty;
    }

    private void visits() {
        visits.getStyleClass().add("quiet");
        // A long name gives way to the line that is written, and an empty list to nothing.
        visits.setMaxWidth(WIDEST_VISIT);
        visits.visibleProperty()
                .bind(Bindings.createBooleanBinding(
                        () -> !notebook.visits().get().isEmpty(), notebook.visits()));
        visits.managedProperty().bind(visits.visibleProperty());
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

    /** {@return what its keys do; it hears them itself} */
    Keys keys() {
        return new Keys("window.keys.notebook")
                .pointer("window.pointer.tab", "window.does.take")
                .pointer("window.pointer.arrows", "window.does.point")
                .pointer("window.pointer.enter", "window.does.save")
                .pointer("window.pointer.upOnEmpty", "window.does.correctLast")
                .pointer("window.pointer.clickStrip", "window.does.place")
                .pointer("window.pointer.escape", "window.does.leaveLine");
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
