package org.ouzelbook.ui.window;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import org.ouzelbook.ui.app.Texts;

/** What is seen before a book is open: open one, or one of those opened lately. */
final class StartPane extends StackPane {
    private final Label notice = new Label();

    StartPane(List<Path> recent, Consumer<Path> open) {
        Label title = new Label(Texts.of("window.start.title"));
        title.getStyleClass().add("title");
        Label welcome = new Label(Texts.of("window.start.welcome"));
        welcome.setWrapText(true);
        welcome.getStyleClass().add("muted");
        Button choose = new Button(Texts.of("window.start.open"));
        choose.setOnAction(event -> choose(open));
        VBox page = new VBox(title, welcome, new HBox(choose), notice);
        page.getStyleClass().add("start");
        if (!recent.isEmpty()) {
            Label lately = new Label(Texts.of("window.start.recent"));
            lately.getStyleClass().add("subheading");
            page.getChildren().add(lately);
        }
        for (Path book : recent) {
            Hyperlink link = new Hyperlink(Texts.of("window.start.book", name(book), String.valueOf(book.getParent())));
            link.setOnAction(event -> open.accept(book));
            page.getChildren().add(link);
        }
        Label begin = new Label(Texts.of("window.start.begin"));
        begin.setWrapText(true);
        begin.getStyleClass().add("muted");
        page.getChildren().add(begin);
        page.setMaxSize(560, USE_PREF_SIZE);
        notice.setWrapText(true);
        getChildren().add(page);
    }

    private static String name(Path book) {
        return String.valueOf(book.getFileName()).replaceFirst("\\.mv\\.db$", "");
    }

    /**
     * Says why a book could not be opened.
     *
     * @param words the reason
     */
    void tell(String words) {
        notice.setText(words);
    }

    private void choose(Consumer<Path> open) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(Texts.of("window.start.open"));
        chooser.getExtensionFilters().add(new FileChooser.ExtensionFilter(Texts.of("window.start.books"), "*.mv.db"));
        File file = chooser.showOpenDialog(getScene().getWindow());
        if (file != null) {
            open.accept(file.toPath());
        }
    }
}
