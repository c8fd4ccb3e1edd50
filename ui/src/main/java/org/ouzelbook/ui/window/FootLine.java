package org.ouzelbook.ui.window;

import java.util.List;
import javafx.beans.value.ObservableValue;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import org.ouzelbook.ui.app.Texts;

/** The line above the notebook: what was just done, what is being done and how far it is, and where keys lead from here. */
final class FootLine extends HBox {
    private final HBox hints = new HBox();

    /**
     * @param book tells what was done
     * @param workshop tells what is being done, and can be asked to stop
     */
    FootLine(BookViewModel book, Workshop workshop) {
        super(12);
        setAlignment(Pos.CENTER_LEFT);
        Label notice = new Label();
        notice.getStyleClass().add("muted");
        notice.textProperty().bind(book.notice());
        Tooltip whole = new Tooltip();
        whole.textProperty().bind(book.notice());
        notice.setTooltip(whole);
        shownWhile(notice, book.notebook().remark().isEmpty());
        Label remark = new Label();
        remark.getStyleClass().add("remark");
        remark.textProperty().bind(book.notebook().remark());
        Region room = new Region();
        setHgrow(room, Priority.ALWAYS);
        hints.getStyleClass().add("hints");
        hints.setAlignment(Pos.CENTER_RIGHT);
        hints.setMinWidth(USE_PREF_SIZE);
        getChildren().addAll(notice, remark, room);
        workshop.all().forEach(work -> getChildren().add(doing(work)));
        getChildren().add(hints);
    }

    private static void shownWhile(Node node, ObservableValue<Boolean> condition) {
        node.visibleProperty().bind(condition);
        node.managedProperty().bind(node.visibleProperty());
    }

    /** {@return what is being done, how far it is, and a way to stop it; not seen while nothing is} */
    static HBox doing(BackgroundWork work) {
        Label what = new Label();
        what.getStyleClass().add("muted");
        what.textProperty().bind(work.doing());
        ProgressBar bar = new ProgressBar();
        bar.progressProperty().bind(work.share());
        bar.setPrefWidth(120);
        bar.setPrefHeight(6);
        bar.setAccessibleText(Texts.of("window.progress"));
        Button stop = new Button(Texts.of("window.stop"));
        stop.getStyleClass().add("quiet");
        stop.setMinWidth(USE_PREF_SIZE);
        what.setMinWidth(USE_PREF_SIZE);
        stop.setAccessibleText(Texts.of("window.stop"));
        stop.setOnAction(event -> work.stop());
        HBox line = new HBox(8, what, bar, stop);
        line.setAlignment(Pos.CENTER_LEFT);
        shownWhile(line, work.doing().isNotEmpty());
        return line;
    }

    /**
     * Offers other ways to go.
     *
     * @param places the keys of the places that are heard now
     */
    void offer(List<Keys> places) {
        hints.getChildren()
                .setAll(places.stream()
                        .flatMap(place -> place.offered().stream())
                        .map(FootLine::hint)
                        .toList());
    }

    /** {@return a button that does what a key does, with the key beside its words} */
    static Node hint(Keys.Act act) {
        Label key = new Label(act.strokes().get(0).inHints());
        key.getStyleClass().add("key");
        Button button = new Button(act.hint(), key);
        button.getStyleClass().setAll("hint");
        button.setAccessibleText(act.does());
        button.setFocusTraversable(false);
        button.setOnAction(event -> act.action().run());
        return button;
    }
}
