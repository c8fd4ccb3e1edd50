package org.ouzelbook.ui.window;

import java.nio.file.Path;
import java.util.Optional;
import javafx.application.Application;
import javafx.scene.Scene;
import javafx.scene.text.Font;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Shape;

/** The window: its start page, and the book that is open in it. JavaFX makes it, which is why it is public. */
public final class WindowApplication extends Application {
    private final BackgroundWork work = new BackgroundWork();
    private final BackgroundWork counting = new BackgroundWork();
    private final Look look = Look.ofUser();
    private final RecentBooks recent = RecentBooks.ofUser();
    private @Nullable Book book;
    private @Nullable Stage stage;

    /** Called by JavaFX. */
    public WindowApplication() {}

    @Override
    public void start(Stage primary) {
        stage = primary;
        Font.loadFont(Shape.class.getResourceAsStream("SourceSans3-Regular.ttf"), 15);
        Font.loadFont(Shape.class.getResourceAsStream("SourceSans3-Semibold.ttf"), 15);
        Optional<Path> wanted =
                Optional.ofNullable(getParameters().getNamed().get("book")).map(Path::of);
        Scene scene = new Scene(new StartPane(recent.list(), this::open), 1366, 768);
        scene.getStylesheets().add(String.valueOf(WindowApplication.class.getResource("window.css")));
        primary.setScene(scene);
        primary.setMinWidth(1000);
        primary.setMinHeight(600);
        primary.setTitle(Texts.of("window.title"));
        primary.show();
        wanted.ifPresent(this::open);
    }

    private void open(Path path) {
        work.start(
                Texts.of("window.work.opening"),
                progress -> Book.open(path),
                opened -> show(opened, path),
                this::refused);
    }

    private void refused(Throwable failure) {
        if (stage != null && stage.getScene().getRoot() instanceof StartPane page) {
            page.tell(FailureWords.of(failure));
        }
    }

    private void show(Book opened, Path path) {
        book = opened;
        boolean first = recent.isFirstTime(opened.file());
        recent.opened(opened.file());
        BookViewModel viewModel = new BookViewModel(opened, work, System.getProperty("user.name", ""));
        BookPane pane = new BookPane(viewModel, work, counting, look);
        new ModelCounting(viewModel, counting, counting::stop);
        if (stage != null) {
            stage.getScene().setRoot(pane);
            stage.setTitle(Texts.of("window.titleBook", String.valueOf(path.getFileName())));
        }
        Optional.ofNullable(getParameters().getNamed().get("season"))
                .map(Integer::valueOf)
                .ifPresent(viewModel.strip()::startWith);
        viewModel.read(
                Optional.ofNullable(getParameters().getNamed().get("species")).flatMap(Species::named));
        if (first) {
            pane.caution();
        }
    }

    @Override
    public void stop() {
        work.close();
        counting.close();
        if (book != null) {
            book.close();
        }
    }
}
