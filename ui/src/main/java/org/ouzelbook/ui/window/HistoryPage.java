package org.ouzelbook.ui.window;

import java.util.Optional;
import java.util.function.Consumer;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.ouzelbook.ui.app.BookHistory;
import org.ouzelbook.ui.app.Texts;

/** The history of the book: what was done, when and by whom; any step leads back to the book as it was after it. */
final class HistoryPage implements Page {
    private static final PseudoClass UNDONE = PseudoClass.getPseudoClass("undone");
    private static final PseudoClass HERE = PseudoClass.getPseudoClass("here");

    private final HistoryViewModel history;
    private final ListView<BookHistory.Line> list = new ListView<>();
    private final VBox page;
    private final Keys keys = new Keys("window.history.name");

    HistoryPage(BookViewModel book, Work work) {
        this.history = new HistoryViewModel(book, work);
        Label heading = new Label(name());
        heading.getStyleClass().add("heading");
        Label about = new Label(Texts.of("window.history.about"));
        about.getStyleClass().add("muted");
        list.getStyleClass().add("history");
        list.setAccessibleText(name());
        list.setAccessibleHelp(Texts.of("window.history.listHelp"));
        list.setCellFactory(view -> new StepCell());
        VBox.setVgrow(list, Priority.ALWAYS);
        HBox acts = new HBox(10, act("window.history.goTo", history::goTo), act("window.history.turn", history::turn));
        page = new VBox(heading, about, list, acts);
        page.getStyleClass().add("column-page");
        history.steps().addListener((property, before, now) -> {
            int selected = Math.max(0, list.getSelectionModel().getSelectedIndex());
            list.getItems().setAll(now);
            list.getSelectionModel().select(Math.min(selected, now.size() - 1));
        });
        keys.on(
                        "window.history.goTo",
                        () -> chosen(history::goTo),
                        Stroke.of(KeyCode.ENTER).when(list::isFocused))
                .on("window.history.turn", () -> chosen(history::turn), Stroke.of(KeyCode.U));
    }

    private Button act(String words, Consumer<BookHistory.Line> action) {
        Button button = new Button(Texts.of(words));
        button.setAccessibleText(Texts.of(words));
        button.setOnAction(event -> chosen(action));
        return button;
    }

    private void chosen(Consumer<BookHistory.Line> action) {
        Optional.ofNullable(list.getSelectionModel().getSelectedItem()).ifPresent(action);
    }

    /** One step: its number, when, who, and what; struck through while it is undone. */
    private final class StepCell extends ListCell<BookHistory.Line> {
        private final Label number = column(44);
        private final Label when = column(150);
        private final Label who = column(90);
        private final Label what = new Label();
        private final Label rows = new Label();
        private final HBox line = new HBox(10, number, when, who, what, rows);

        StepCell() {
            line.setAlignment(Pos.BASELINE_LEFT);
            rows.getStyleClass().add("muted");
            what.getStyleClass().add("what");
        }

        private static Label column(double width) {
            Label label = new Label();
            label.setMinWidth(width);
            label.setPrefWidth(width);
            label.getStyleClass().add("muted");
            return label;
        }

        @Override
        protected void updateItem(BookHistory.Line step, boolean empty) {
            super.updateItem(step, empty);
            boolean here = !empty && history.here().filter(step::equals).isPresent();
            pseudoClassStateChanged(UNDONE, !empty && step.undone());
            pseudoClassStateChanged(HERE, here);
            setGraphic(empty ? null : line);
            if (!empty) {
                number.setText(String.valueOf(step.step()));
                when.setText(Texts.word(step.date()) + " " + Texts.word(step.time()));
                who.setText(step.who());
                what.setText(Texts.of(step.what()));
                rows.setText(Texts.of(
                        step.undone() ? "window.history.undone" : here ? "window.history.here" : "window.history.rows",
                        step.added() + step.changed() + step.removed()));
            }
        }
    }

    @Override
    public String name() {
        return Texts.of("window.history.name");
    }

    @Override
    public Node node() {
        return page;
    }

    @Override
    public Keys keys() {
        return keys;
    }

    @Override
    public void open() {
        list.getSelectionModel().clearSelection();
        history.read();
        list.requestFocus();
    }
}
