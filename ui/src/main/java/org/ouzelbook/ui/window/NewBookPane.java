package org.ouzelbook.ui.window;

import java.io.File;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.LineFigure;

/** A book begun in three steps on one page: the river, its mouth, the species. */
final class NewBookPane extends VBox {
    private static final double WIDTH = 380;
    private static final double HEIGHT = 190;

    private final NewBookViewModel book;
    private final PictureView picture;
    private final Button choose = button("window.new.choose", this::choose);
    private final TextField name = new TextField();
    private final VBox river = new VBox(8);
    private final VBox mouth = new VBox(8);
    private final Button make = button("window.new.make", this::save);
    private final VBox told = new VBox(4);

    /**
     * @param book the book to be begun
     * @param look how the window looks
     * @param leave leads back
     */
    NewBookPane(NewBookViewModel book, Look look, Runnable leave) {
        this.book = book;
        this.picture = new PictureView(look);
        getStyleClass().add("begin");
        setMaxWidth(760);
        make.getStyleClass().add("main");
        name.setPromptText(Texts.of("window.new.name"));
        name.setAccessibleText(Texts.of("window.new.name"));
        name.setAccessibleHelp(Texts.of("window.new.undrawn"));
        name.setPrefColumnCount(22);
        name.setMaxWidth(USE_PREF_SIZE);
        name.textProperty().bindBidirectional(book.undrawnName());
        river.getChildren()
                .setAll(
                        new HBox(12, choose, Sentences.line(Texts.of("window.new.or"), "muted"), name),
                        Sentences.line(Texts.of("window.new.undrawn"), "muted"));
        getChildren()
                .setAll(
                        Sentences.line(Texts.of("window.new.title"), "title"),
                        Sentences.line(Texts.of("window.new.one"), "heading"),
                        river,
                        Sentences.line(Texts.of("window.new.two"), "heading"),
                        mouth,
                        Sentences.line(Texts.of("window.new.three"), "heading"),
                        species(),
                        Sentences.line(Texts.of("window.new.people"), "muted"),
                        told,
                        new HBox(10, make, button("window.new.leave", leave)));
        book.drawn().addListener((property, before, now) -> show());
        book.undrawnName().addListener((property, before, now) -> show());
        book.refusal().addListener((property, before, now) -> show());
        show();
    }

    private static Button button(String key, Runnable action) {
        Button button = new Button(Texts.of(key));
        button.setAccessibleText(Texts.of(key));
        button.setMinWidth(USE_PREF_SIZE);
        button.setOnAction(event -> action.run());
        return button;
    }

    private FlowPane species() {
        FlowPane all = new FlowPane(16, 6);
        ToggleGroup one = new ToggleGroup();
        for (Species species : Species.all()) {
            RadioButton choice = new RadioButton(species.englishName());
            choice.setAccessibleText(species.englishName());
            choice.setToggleGroup(one);
            choice.setSelected(species.equals(book.species().get()));
            choice.setOnAction(event -> book.species().set(species));
            all.getChildren().add(choice);
        }
        return all;
    }

    private void show() {
        List<Node> lines = new ArrayList<>();
        book.drawn()
                .get()
                .ifPresentOrElse(
                        drawn -> {
                            VBox beside = new VBox(5);
                            book.understood()
                                    .forEach(words -> beside.getChildren().add(Sentences.line(words, "sentence")));
                            HBox both = new HBox(20, beside);
                            if (!drawn.lines().isEmpty()) {
                                picture.show(LineFigure.of(drawn.lines(), WIDTH, HEIGHT));
                                both.getChildren().add(0, picture);
                                beside.getChildren().add(button("window.new.turn", book::turn));
                            }
                            lines.add(both);
                            book.questions().forEach(question -> lines.add(question(question)));
                        },
                        () -> lines.add(Sentences.line(
                                Texts.of(
                                        book.undrawnName().get().isBlank()
                                                ? "window.new.firstTheRiver"
                                                : "window.new.fromTheMouth"),
                                "muted")));
        mouth.getChildren().setAll(lines);
        told.getChildren().clear();
        if (!book.refusal().get().isBlank()) {
            told.getChildren().add(Sentences.line(book.refusal().get(), "remark"));
        }
        make.setDisable(!book.isReady());
    }

    private VBox question(RiverQuestion question) {
        FlowPane answers = new FlowPane(8, 6);
        for (RiverQuestion.Choice choice : question.choices()) {
            Button button = new Button(choice.words());
            button.setAccessibleText(choice.words());
            button.setOnAction(event -> book.answer(choice));
            answers.getChildren().add(button);
        }
        return new VBox(4, Sentences.line(question.words(), "remark"), answers);
    }

    /** Takes the keyboard to the first step. */
    void begin() {
        choose.requestFocus();
    }

    /**
     * Reads drawn rivers.
     *
     * @param files GeoJSON, GPX, KML or KMZ files, or folders of such
     */
    void draw(List<Path> files) {
        book.draw(files);
    }

    private void choose() {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(Texts.of("window.new.choose"));
        chooser.getExtensionFilters()
                .addAll(
                        new FileChooser.ExtensionFilter(Texts.of("window.new.lines"), NewBookViewModel.LINE_FILES),
                        new FileChooser.ExtensionFilter(Texts.of("window.new.anyFile"), "*.*"));
        List<File> files = chooser.showOpenMultipleDialog(getScene().getWindow());
        if (files != null && !files.isEmpty()) {
            draw(files.stream().map(File::toPath).toList());
        }
    }

    private void save() {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(Texts.of("window.new.where"));
        chooser.setInitialFileName("my-river.mv.db");
        chooser.getExtensionFilters().add(new FileChooser.ExtensionFilter(Texts.of("window.start.books"), "*.mv.db"));
        File file = chooser.showSaveDialog(getScene().getWindow());
        if (file != null) {
            book.make(file.toPath());
        }
    }
}
