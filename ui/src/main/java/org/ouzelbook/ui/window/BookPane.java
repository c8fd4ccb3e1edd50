package org.ouzelbook.ui.window;

import java.io.File;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javafx.application.Platform;
import javafx.css.PseudoClass;
import javafx.geometry.Insets;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.StripDrawing;

/**
 * An open book: the finding above, the strip in the middle, the reasons beside it, the notebook below. A {@link Page} may take
 * the place of all but the finding; Escape leads back.
 */
final class BookPane extends StackPane {
    private static final PseudoClass DARK = PseudoClass.getPseudoClass("dark");

    private final BookViewModel book;
    private final Look look;
    private final StripPane strip;
    private final NotebookPane notebook;
    private final WhyPane why;
    private final FootLine line;
    private final StackPane centre;
    private final BorderPane face = new BorderPane();
    private final VBox foot;
    private final ImportPage imports;
    private final Label empty = new Label();
    private final Overlay overlay = new Overlay();
    private final Keys everywhere = new Keys("window.keys.everywhere");
    private final Keys onStrip = new Keys("window.keys.pages");
    private final Keys onTerritory = new Keys("window.keys.territory");
    private final Keys onPage = new Keys("window.keys.page");
    private Optional<Page> open = Optional.empty();

    /**
     * @param book the book
     * @param workshop does all that takes time
     * @param look how the window looks
     * @param otherBook leads to another book
     */
    BookPane(BookViewModel book, Workshop workshop, Look look, Runnable otherBook) {
        BackgroundWork work = workshop.saving();
        this.book = book;
        this.look = look;
        this.strip = new StripPane(book.strip(), book.ends(), look);
        this.notebook = new NotebookPane(book.notebook());
        book.notebook().onDecided(strip::requestFocus);
        book.notebook().onReasonAsked(() -> Platform.runLater(notebook::write));
        strip.placeTo((x, y) -> notebook.isWriting() && book.place(x, y));
        this.why = new WhyPane(book, onTerritory);
        this.line = new FootLine(book, workshop);
        empty.getStyleClass().add("muted");
        empty.setWrapText(true);
        empty.setMaxWidth(520);
        empty.setMouseTransparent(true);
        centre = new StackPane(strip, empty);
        centre.setPadding(new Insets(0, 6, 0, 0));
        foot = new VBox(line, notebook);
        foot.getStyleClass().add("foot");
        notebook.managedProperty().bind(notebook.visibleProperty());
        // What the notebook offers is listed above it, over the strip.
        foot.setViewOrder(-1);
        face.setTop(new HeaderPane(book));
        // What lies under a sheet hears no key and no click.
        face.disableProperty().bind(overlay.visibleProperty());
        getChildren().addAll(face, overlay);
        imports = new ImportPage(book, work, look);
        bind(
                new FindingsPage(book, workshop.telling(), look, this::leave),
                "window.findings.does",
                "window.findings.hint",
                KeyCode.F);
        bind(
                new CalendarPage(book, workshop.telling(), look),
                "window.calendar.does",
                "window.calendar.hint",
                KeyCode.C);
        bind(imports, "window.import.does", "window.import.hint", KeyCode.I);
        bind(new HistoryPage(book, work), "window.history.does", "window.history.hint", KeyCode.H);
        SealPage seal = new SealPage(book, work);
        onStrip.on("window.seal.does", () -> open(seal), Stroke.of(KeyCode.S));
        takeDropped();
        bindKeys(otherBook);
        leave();
        darken();
        look.dark().addListener((property, before, now) -> darken());
        tellIfEmpty(Optional.empty());
        addEventFilter(KeyEvent.KEY_PRESSED, this::key);
        book.strip().drawing().addListener((property, before, now) -> tellIfEmpty(now));
        book.contents()
                .addListener((property, before, now) ->
                        tellIfEmpty(book.strip().drawing().get()));
    }

    private void bind(Page page, String does, String hint, KeyCode key) {
        onStrip.offer(does, hint, () -> open(page), Stroke.of(key));
    }

    private void takeDropped() {
        setOnDragOver(event -> {
            if (event.getDragboard().hasFiles()) {
                event.acceptTransferModes(TransferMode.COPY);
            }
            event.consume();
        });
        setOnDragDropped(event -> {
            List<Path> files =
                    event.getDragboard().getFiles().stream().map(File::toPath).toList();
            take(files);
            event.setDropCompleted(!files.isEmpty());
            event.consume();
        });
    }

    /**
     * Opens the import of files, which starts as a rehearsal.
     *
     * @param files files, folders and zips
     */
    void take(List<Path> files) {
        if (!files.isEmpty() && !overlay.isVisible()) {
            open(imports);
            imports.take(files);
        }
    }

    private void bindKeys(Runnable otherBook) {
        PictureKeys pictures = new PictureKeys(book, look, overlay);
        onStrip.offer("window.does.legend", "window.hint.legend", pictures::legend, Stroke.of(KeyCode.L))
                .offer("window.does.picture", "window.hint.picture", pictures::save, Stroke.of(KeyCode.E))
                .on("window.does.print", pictures::print, Stroke.command(KeyCode.P))
                .on("window.does.words", pictures::words, Stroke.of(KeyCode.W))
                // Later, or the key that leads to the notebook would also be written into it.
                .offer(
                        "window.does.notebook",
                        "window.hint.notebook",
                        () -> Platform.runLater(notebook::write),
                        Stroke.of(KeyCode.N))
                .on("window.does.correct", this::correct, Stroke.of(KeyCode.F2))
                .on("window.does.remove", book::removeSelected, Stroke.of(KeyCode.DELETE));
        onTerritory
                .offer(
                        "window.does.boundary",
                        "window.hint.boundary",
                        () -> decide(Decisions::boundary),
                        Stroke.of(KeyCode.V))
                .offer("window.does.one", "window.hint.one", () -> decide(Decisions::one), Stroke.of(KeyCode.O))
                .offer("window.does.none", "window.hint.none", () -> decide(Decisions::none), Stroke.of(KeyCode.X))
                .offer(
                        "window.does.noteHere",
                        "window.hint.noteHere",
                        () -> decide(Decisions::note),
                        Stroke.of(KeyCode.A))
                .offer("window.does.lowerEnd", "window.hint.lowerEnd", () -> hold(false), Stroke.of(KeyCode.J))
                .offer("window.does.upperEnd", "window.hint.upperEnd", () -> hold(true), Stroke.of(KeyCode.K));
        onPage.offer("window.does.back", "window.hint.back", this::back, Stroke.of(KeyCode.ESCAPE));
        everywhere
                .offer("window.does.help", "window.hint.help", this::help, Stroke.of(KeyCode.F1), Stroke.typed("?"))
                .on("window.does.dark", look::switchDark, Stroke.of(KeyCode.D))
                .on("window.does.motion", look::switchMotion, Stroke.of(KeyCode.M))
                .on("window.does.caution", this::caution, Stroke.of(KeyCode.G))
                .on("window.does.otherBook", otherBook, Stroke.of(KeyCode.B))
                .on("window.does.undo", book::undo, Stroke.command(KeyCode.Z))
                .on("window.does.redo", book::redo, Stroke.shiftedCommand(KeyCode.Z));
    }

    private void decide(Function<Decisions, String> line) {
        if (book.decide(line)) {
            Platform.runLater(notebook::write);
        }
    }

    private void hold(boolean upper) {
        if (!strip.hold(upper)) {
            book.say(Texts.of("window.decide.selectFirst"));
        }
    }

    private void correct() {
        book.correctSelected();
        Platform.runLater(notebook::write);
    }

    /** {@return the keys that are heard now, the nearest first} */
    List<Keys> heard() {
        List<Keys> heard = new ArrayList<>();
        open.ifPresentOrElse(page -> heard.add(page.keys()), () -> heard.add(strip.keys()));
        heard.add(open.isPresent() ? onPage : onStrip);
        heard.add(everywhere);
        if (open.isEmpty()) {
            heard.add(onTerritory);
        }
        return heard;
    }

    /** {@return those of them that the foot offers; what can be decided of a territory stands beside its reasons} */
    private List<Keys> offering() {
        return heard().stream().filter(keys -> keys != onTerritory).toList();
    }

    /**
     * Opens a page.
     *
     * @param page one of this book's pages
     */
    private void open(Page page) {
        open.ifPresent(Page::leave);
        open = Optional.of(page);
        arrange(page.node(), Optional.empty());
        notebook.setVisible(false);
        line.offer(offering());
        page.open();
    }

    /** Puts the parts where they belong, in the order in which the keyboard goes through them. */
    private void arrange(Node middle, Optional<Node> right) {
        face.setBottom(null);
        face.setRight(null);
        face.setCenter(middle);
        right.ifPresent(face::setRight);
        face.setBottom(foot);
    }

    /** {@return the book} */
    BookViewModel book() {
        return book;
    }

    /** {@return the page that is open; empty while the strip is seen} */
    Optional<Page> page() {
        return open;
    }

    private void back() {
        if (!open.map(Page::back).orElse(false)) {
            leave();
        }
    }

    /** Leads back to the strip. */
    void leave() {
        open.ifPresent(Page::leave);
        open = Optional.empty();
        arrange(centre, Optional.of(why));
        notebook.setVisible(true);
        line.offer(offering());
        Platform.runLater(strip::requestFocus);
    }

    private void darken() {
        pseudoClassStateChanged(DARK, look.dark().get());
    }

    private void tellIfEmpty(Optional<StripDrawing> drawing) {
        Optional<BookContents> there = book.contents().get();
        if (drawing.isPresent()) {
            empty.setText("");
        } else if (there.isEmpty()) {
            empty.setText(Texts.of("window.work.reading"));
        } else if (there.get().records().rivers().rivers().isEmpty()) {
            empty.setText(Texts.of("window.empty.noRiver"));
        } else if (there.get().records().visits().isEmpty()
                && there.get().records().sightings().isEmpty()) {
            empty.setText(Texts.of("window.empty.noVisits"));
        } else {
            Species shown = there.get().species();
            boolean seen = there.get().records().sightings().stream()
                    .anyMatch(one -> one.species().equals(shown));
            empty.setText(Texts.of(seen ? "window.empty.notWalked" : "window.empty.noSpecies", shown));
        }
    }

    private void key(KeyEvent event) {
        if (overlay.isVisible()) {
            return;
        }
        Node owner = getScene().getFocusOwner();
        boolean writing = owner instanceof TextInputControl;
        boolean halfWritten =
                owner instanceof TextInputControl field && !field.getText().isEmpty();
        if (writing && open.isEmpty() && event.getCode() == KeyCode.ESCAPE) {
            if (!notebook.back()) {
                strip.requestFocus();
            }
            event.consume();
            return;
        }
        for (Keys keys : heard()) {
            // The strip hears its own keys, while it has the keyboard; a half-written line is undone, not the book.
            if (keys != strip.keys() && !(halfWritten && event.isShortcutDown()) && keys.press(event, writing)) {
                return;
            }
        }
    }

    private void help() {
        List<Keys> places = new ArrayList<>(heard());
        if (open.isEmpty()) {
            places.add(1, notebook.keys());
        }
        overlay.show(Texts.of("window.help.title"), new KeySheet(places), Texts.of("window.close"));
    }

    /** Shows the usual cautions of riverside work. */
    void caution() {
        Platform.runLater(() -> overlay.tell("window.caution.title", "window.caution.text", "window.caution.read"));
    }
}
