package org.ouzelbook.ui.window;

import java.nio.file.Path;
import java.util.Optional;
import javafx.application.Application;
import javafx.css.PseudoClass;
import javafx.scene.Scene;
import javafx.scene.text.Font;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.DemoBook;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Shape;

/** The window: its start page, and the book that is open in it. JavaFX makes it, which is why it is public. */
public final class WindowApplication extends Application {
    private static final String DEMO_FOLDER = "ouzelbook-demo";
    private static final PseudoClass DARK = PseudoClass.getPseudoClass("dark");

    private final Workshop workshop = new Workshop();
    private final BackgroundWork work = workshop.saving();
    private final Look look = Look.ofUser();
    private final Desk desk = Desk.ofUser();
    private final RecentBooks recent = RecentBooks.ofUser();
    private @Nullable Book book;
    private @Nullable BookViewModel shown;
    private @Nullable Stage stage;

    /** Called by JavaFX. */
    public WindowApplication() {}

    @Override
    public void start(Stage primary) {
        stage = primary;
        Font.loadFont(Shape.class.getResourceAsStream("SourceSans3-Regular.ttf"), 15);
        Font.loadFont(Shape.class.getResourceAsStream("SourceSans3-Semibold.ttf"), 15);
        Optional<Path> wanted = wish("book").map(Path::of);
        Scene scene = new Scene(startPane(), 1366, 768);
        scene.getStylesheets().add(String.valueOf(WindowApplication.class.getResource("window.css")));
        primary.setScene(scene);
        primary.setMinWidth(1000);
        primary.setMinHeight(600);
        primary.setTitle(Texts.of("window.title"));
        desk.place().ifPresent(this::stand);
        primary.show();
        Wanted asked = new Wanted(
                wish("species").flatMap(Species::named), wish("season").map(Integer::valueOf));
        wanted.ifPresent(path -> open(path, asked));
    }

    private Optional<String> wish(String name) {
        return Optional.ofNullable(getParameters().getNamed().get(name));
    }

    private void stand(Desk.Place place) {
        if (stage != null) {
            stage.setX(place.x());
            stage.setY(place.y());
            stage.setWidth(place.width());
            stage.setHeight(place.height());
            stage.setMaximized(place.full());
        }
    }

    private StartPane startPane() {
        String who = System.getProperty("user.name", "");
        NewBookViewModel[] begun = new NewBookViewModel[1];
        begun[0] = new NewBookViewModel(
                work,
                who,
                path -> open(path, new Wanted(Optional.of(begun[0].species().get()), Optional.empty())));
        StartPane.Ways ways = new StartPane.Ways() {
            @Override
            public void open(Path path) {
                WindowApplication.this.open(path, Wanted.NOTHING);
            }

            @Override
            public void demo() {
                Path folder = Path.of(System.getProperty("user.home", "."), DEMO_FOLDER);
                work.start(
                        Texts.of("window.work.demo"),
                        progress -> DemoBook.make(folder, progress).book(),
                        this::open,
                        WindowApplication.this::refused);
            }
        };
        StartPane pane = new StartPane(recent.list(), ways, begun[0], work, look);
        pane.pseudoClassStateChanged(DARK, look.dark().get());
        return pane;
    }

    private void open(Path path, Wanted asked) {
        work.start(
                Texts.of("window.work.opening"),
                progress -> Book.open(path),
                opened -> show(opened, path, asked),
                this::refused);
    }

    private void refused(Throwable failure) {
        if (stage != null && stage.getScene().getRoot() instanceof StartPane page) {
            page.tell(FailureWords.of(failure));
        }
    }

    private void show(Book opened, Path path, Wanted asked) {
        book = opened;
        boolean first = recent.isFirstTime(opened.file());
        recent.opened(opened.file());
        BookViewModel viewModel = new BookViewModel(
                opened, work, workshop.mapping(), workshop.telling(), System.getProperty("user.name", ""));
        shown = viewModel;
        BookPane pane = new BookPane(viewModel, workshop, look, this::leaveBook);
        new ModelCounting(viewModel, workshop.counting(), workshop.counting()::stop);
        if (stage != null) {
            stage.getScene().setRoot(pane);
            stage.setTitle(Texts.of("window.titleBook", String.valueOf(path.getFileName())));
        }
        Optional<Desk.View> kept = desk.view(opened.file());
        asked.place(kept).ifPresent(viewModel.strip()::startAt);
        viewModel.read(asked.species(kept));
        if (first) {
            pane.caution();
        }
    }

    /** Closes the book, when all work on it is done, and shows the start page. */
    private void leaveBook() {
        workshop.stop();
        work.start(
                Texts.of("window.work.closing"),
                progress -> {
                    closeBook();
                    return true;
                },
                closed -> {
                    if (stage != null) {
                        stage.getScene().setRoot(startPane());
                        stage.setTitle(Texts.of("window.title"));
                    }
                },
                this::refused);
    }

    private synchronized void closeBook() {
        Book open = book;
        BookViewModel looked = shown;
        if (open != null) {
            if (looked != null && looked.contents().get().isPresent()) {
                desk.keep(
                        open.file(),
                        new Desk.View(looked.species(), looked.strip().whereNow()));
            }
            open.close();
        }
        book = null;
        shown = null;
    }

    @Override
    public void stop() {
        if (stage != null) {
            desk.keep(new Desk.Place(
                    stage.getX(), stage.getY(), stage.getWidth(), stage.getHeight(), stage.isMaximized()));
        }
        workshop.close();
        closeBook();
    }
}
