package org.ouzelbook.ui.window;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javafx.application.Platform;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import org.ouzelbook.ui.app.Texts;

/** What is seen before a book is open: look around, begin one, open one, or go on with one of those opened lately. */
final class StartPane extends StackPane {
    private final Label notice = Sentences.line("", "sentence");
    private final VBox welcome;
    private final NewBookPane begin;
    private final Ways ways;

    /** What can be done here. */
    interface Ways {
        /**
         * Opens a book.
         *
         * @param book its file
         */
        void open(Path book);

        /** Makes the book of the demo river, or takes the one that is there, and opens it. */
        void demo();
    }

    /**
     * @param recent books opened lately, newest first
     * @param ways what can be done
     * @param newBook the book to be begun
     * @param work does it
     * @param look how the window looks
     */
    StartPane(List<Path> recent, Ways ways, NewBookViewModel newBook, BackgroundWork work, Look look) {
        this.ways = ways;
        getStyleClass().add("start-page");
        this.begin = new NewBookPane(newBook, look, this::welcome);
        Label title = new Label(Texts.of("window.start.title"));
        title.getStyleClass().add("title");
        Button demo = way("window.start.demo", ways::demo);
        Button start = way("window.start.new", this::begin);
        Button choose = way("window.start.open", this::choose);
        welcome = new VBox(
                title,
                Sentences.line(Texts.of("window.start.welcome"), "muted"),
                line(demo, "window.start.demoSays"),
                line(start, "window.start.newSays"),
                line(choose, "window.start.openSays"),
                notice,
                FootLine.doing(work));
        welcome.getStyleClass().add("start");
        if (!recent.isEmpty()) {
            welcome.getChildren().add(Sentences.line(Texts.of("window.start.recent"), "subheading"));
        }
        for (Path book : recent) {
            Hyperlink link = new Hyperlink(Texts.of("window.start.book", name(book), String.valueOf(book.getParent())));
            link.setOnAction(event -> ways.open(book));
            link.setAccessibleText(link.getText());
            link.getStyleClass().add("book");
            welcome.getChildren().add(link);
        }
        welcome.setMaxSize(720, USE_PREF_SIZE);
        addEventFilter(KeyEvent.KEY_PRESSED, event -> {
            if (event.getCode() == KeyCode.ESCAPE && getChildren().get(0) != welcome) {
                welcome();
                event.consume();
            }
        });
        dropBooks();
        welcome();
    }

    private static Button way(String key, Runnable action) {
        Button button = new Button(Texts.of(key));
        button.setAccessibleText(Texts.of(key));
        button.setMinWidth(230);
        button.setOnAction(event -> action.run());
        return button;
    }

    private static HBox line(Button button, String says) {
        Label words = Sentences.line(Texts.of(says), "muted");
        words.setMaxWidth(430);
        HBox line = new HBox(18, button, words);
        line.setAlignment(Pos.CENTER_LEFT);
        return line;
    }

    private static String name(Path book) {
        return String.valueOf(book.getFileName()).replaceFirst("\\.mv\\.db$", "");
    }

    /** Begins at the last book, once the page is in a window: before that nothing can be in focus. */
    private void welcome() {
        getChildren().setAll(welcome);
        Stream.of(".book", ".button")
                .flatMap(style -> welcome.lookupAll(style).stream())
                .findFirst()
                .ifPresent(first -> Platform.runLater(first::requestFocus));
    }

    private void begin() {
        ScrollPane scroll = new ScrollPane(new StackPane(begin));
        scroll.getStyleClass().add("told");
        scroll.setFitToWidth(true);
        getChildren().setAll(scroll);
        begin.begin();
    }

    /** Drawn rivers that are dropped begin a book; a book that is dropped is opened. */
    private void dropBooks() {
        setOnDragOver(event -> {
            if (event.getDragboard().hasFiles()) {
                event.acceptTransferModes(TransferMode.COPY);
            }
            event.consume();
        });
        setOnDragDropped(event -> {
            take(event.getDragboard().getFiles().stream().map(File::toPath).toList());
            event.setDropCompleted(true);
            event.consume();
        });
    }

    /**
     * Opens a book, or begins one from drawn rivers.
     *
     * @param files what was dropped
     */
    void take(List<Path> files) {
        if (files.size() == 1 && files.get(0).toString().endsWith(".mv.db")) {
            ways.open(files.get(0));
        } else if (!files.isEmpty()) {
            begin();
            begin.draw(files);
        }
    }

    /**
     * Says why a book could not be opened.
     *
     * @param words the reason
     */
    void tell(String words) {
        notice.setText(words);
    }

    private void choose() {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(Texts.of("window.start.open"));
        chooser.getExtensionFilters().add(new FileChooser.ExtensionFilter(Texts.of("window.start.books"), "*.mv.db"));
        File file = chooser.showOpenDialog(getScene().getWindow());
        if (file != null) {
            ways.open(file.toPath());
        }
    }
}
