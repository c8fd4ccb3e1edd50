package org.ouzelbook.ui.window;

import java.util.Optional;
import javafx.application.Platform;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Palette;
import org.ouzelbook.ui.strip.RiverStrip;
import org.ouzelbook.ui.strip.StripDrawing;

/** An open book: the finding above, the strip in the middle, the reasons beside it, the notebook below. */
final class BookPane extends StackPane {
    private static final KeyCombination UNDO = new KeyCodeCombination(KeyCode.Z, KeyCombination.SHORTCUT_DOWN);
    private static final KeyCombination REDO =
            new KeyCodeCombination(KeyCode.Z, KeyCombination.SHORTCUT_DOWN, KeyCombination.SHIFT_DOWN);
    private static final double LEGEND_WIDTH = 840;

    private final BookViewModel book;
    private final StripPane strip;
    private final NotebookPane notebook;
    private final Label empty = new Label();
    private final Overlay overlay = new Overlay();

    BookPane(BookViewModel book, BackgroundWork work) {
        this.book = book;
        this.strip = new StripPane(book.strip());
        this.notebook = new NotebookPane(book.notebook());
        empty.getStyleClass().add("muted");
        empty.setWrapText(true);
        empty.setMaxWidth(520);
        empty.setMouseTransparent(true);
        StackPane centre = new StackPane(strip, empty);
        centre.setPadding(new Insets(0, 6, 0, 0));
        BorderPane page = new BorderPane(centre);
        page.setTop(new HeaderPane(book));
        page.setRight(new WhyPane(book));
        page.setBottom(foot(work));
        // What lies under a sheet hears no key and no click.
        page.disableProperty().bind(overlay.visibleProperty());
        getChildren().addAll(page, overlay);
        addEventFilter(KeyEvent.KEY_PRESSED, this::key);
        book.strip().drawing().addListener((property, before, now) -> tellIfEmpty(now));
        book.contents()
                .addListener((property, before, now) ->
                        tellIfEmpty(book.strip().drawing().get()));
        Platform.runLater(strip::requestFocus);
    }

    private VBox foot(BackgroundWork work) {
        Label notice = new Label();
        notice.getStyleClass().add("muted");
        notice.textProperty().bind(book.notice());
        notice.visibleProperty().bind(book.notebook().remark().isEmpty());
        notice.managedProperty().bind(notice.visibleProperty());
        Label doing = new Label();
        doing.getStyleClass().add("muted");
        doing.textProperty().bind(work.doing());
        ProgressBar bar = new ProgressBar();
        bar.progressProperty().bind(work.share());
        bar.visibleProperty().bind(work.doing().isNotEmpty());
        bar.setPrefWidth(140);
        bar.setPrefHeight(6);
        Label remark = new Label();
        remark.getStyleClass().add("remark");
        remark.textProperty().bind(book.notebook().remark());
        Label keys = new Label(Texts.of("window.keysHint"));
        keys.getStyleClass().add("muted");
        Region room = new Region();
        HBox.setHgrow(room, Priority.ALWAYS);
        HBox line = new HBox(12, notice, remark, room, doing, bar, keys);
        line.setAlignment(Pos.CENTER_LEFT);
        VBox foot = new VBox(line, notebook);
        foot.getStyleClass().add("foot");
        return foot;
    }

    private void tellIfEmpty(Optional<StripDrawing> drawing) {
        Optional<BookContents> there = book.contents().get();
        if (drawing.isPresent() || there.isEmpty()) {
            empty.setText("");
        } else if (there.get().records().rivers().rivers().isEmpty()) {
            empty.setText(Texts.of("window.empty.noRiver"));
        } else if (there.get().records().visits().isEmpty()
                && there.get().records().sightings().isEmpty()) {
            empty.setText(Texts.of("window.empty.noVisits"));
        } else {
            empty.setText(Texts.of("window.empty.noSpecies", there.get().species()));
        }
    }

    private void key(KeyEvent event) {
        if (overlay.isVisible()) {
            return;
        }
        boolean writing = notebook.isWriting();
        if (event.getCode() == KeyCode.F1 || (!writing && "?".equals(event.getText()))) {
            overlay.tell("window.help.title", "window.help.text", "window.close");
        } else if (REDO.match(event) && !notebook.isHalfWritten()) {
            book.redo();
        } else if (UNDO.match(event) && !notebook.isHalfWritten()) {
            book.undo();
        } else if (!writing && plain(event) && event.getCode() == KeyCode.L) {
            overlay.show(Texts.of("strip.legend"), legend(), Texts.of("window.close"));
        } else if (!writing && plain(event) && event.getCode() == KeyCode.N) {
            // Later, or the key that leads to the notebook would also be written into it.
            Platform.runLater(notebook::write);
        } else if (writing && event.getCode() == KeyCode.ESCAPE) {
            strip.requestFocus();
        } else {
            return;
        }
        event.consume();
    }

    private static boolean plain(KeyEvent event) {
        return !event.isControlDown() && !event.isAltDown() && !event.isMetaDown();
    }

    private static Node legend() {
        StripDrawing legend = RiverStrip.legend(LEGEND_WIDTH);
        Canvas canvas = new Canvas(legend.width(), legend.height());
        new CanvasPen(canvas.getGraphicsContext2D(), Palette.LIGHT).draw(legend, 0);
        canvas.setAccessibleText(legend.description());
        return canvas;
    }

    /** Shows the usual cautions of riverside work. */
    void caution() {
        Platform.runLater(() -> overlay.tell("window.caution.title", "window.caution.text", "window.caution.read"));
    }
}
