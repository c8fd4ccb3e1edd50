package org.ouzelbook.ui.window;

import java.io.File;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TrendWords;

/** The findings: the questions on the left with their answers, one of them in full, and the records behind on the right. */
final class FindingsPage implements Page {
    private static final double PICTURE = 640;

    private final BookViewModel book;
    private final FindingsViewModel findings;
    private final Runnable leave;
    private final ListView<Topic> questions = new ListView<>();
    private final VBox answer = new VBox();
    private final ScrollPane middle = new ScrollPane(answer);
    private final PictureView picture;
    private final FindingTable table;
    private final EvidenceList evidence;
    private final HBox page = new HBox();
    private final Keys keys = new Keys("window.findings.name");
    private Optional<FindingSheet> seen = Optional.empty();
    private final Label saved = Sentences.line("", "muted");

    /**
     * @param book the book
     * @param work does the computing
     * @param look how the window looks
     * @param leave leads back to the strip
     */
    FindingsPage(BookViewModel book, Work work, Look look, Runnable leave) {
        this.book = book;
        this.picture = new PictureView(look);
        this.findings = new FindingsViewModel(book, work, PICTURE);
        this.leave = leave;
        this.table = new FindingTable(findings);
        this.evidence = new EvidenceList(findings, this::goTo);
        questions.getItems().setAll(Topic.values());
        questions.getStyleClass().add("topics");
        questions.setAccessibleText(Texts.of("window.findings.questions"));
        questions.setAccessibleHelp(Texts.of("window.findings.questionsHelp"));
        questions.setCellFactory(list -> new Question());
        questions.getSelectionModel().selectedItemProperty().addListener((property, before, now) -> {
            if (now != null) {
                findings.look(now);
            }
        });
        answer.getStyleClass().add("finding-sheet");
        middle.getStyleClass().add("told");
        middle.setFitToWidth(true);
        Sentences.scrollByKeys(middle, answer);
        middle.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        HBox.setHgrow(middle, Priority.ALWAYS);
        page.getStyleClass().addAll("page", "findings");
        page.getChildren().setAll(questions, middle, evidence);
        findings.answered().addListener((property, before, now) -> {
            questions.refresh();
            // Another question's answer leaves what somebody reads as it is.
            if (!findings.sheet(findings.topic().get()).equals(seen)) {
                show();
            }
        });
        table.getSelectionModel().selectedIndexProperty().addListener((property, before, now) -> mark(now.intValue()));
        findings.topic().addListener((property, before, now) -> show());
        book.contents().addListener((property, before, now) -> readIfSeen());
        book.model().counts().addListener((property, before, now) -> readIfSeen());
        book.model().stopped().addListener((property, before, now) -> show());
        keys.on("window.findings.pick", () -> questions.requestFocus(), Stroke.of(KeyCode.Q))
                .on("window.findings.toTable", table::begin, Stroke.of(KeyCode.T))
                .on("window.findings.toRecords", evidence::requestFocus, Stroke.of(KeyCode.R))
                .offer("window.findings.save", "window.findings.saveHint", this::save, Stroke.command(KeyCode.S))
                .offer("window.findings.report", "window.findings.reportHint", this::report, Stroke.of(KeyCode.W))
                .pointer("window.pointer.clickRow", "window.findings.rests");
    }

    private void readIfSeen() {
        if (page.getParent() != null) {
            findings.read();
        }
    }

    /** While the model has not counted, what rests on counts says that it is by rule, and how to go on where it was stopped. */
    private void tellOfTheModel() {
        if (book.model().counts().get().isPresent()) {
            return;
        }
        if (!book.model().stopped().get()) {
            answer.getChildren().add(Sentences.line(Texts.of("window.findings.modelCounts"), "muted"));
            return;
        }
        Button again = new Button(Texts.of("window.findings.countAgain"));
        again.setMinWidth(Region.USE_PREF_SIZE);
        again.setAccessibleText(Texts.of("window.findings.countAgain"));
        again.setOnAction(event -> {
            book.model().countAgain();
            show();
        });
        HBox line = new HBox(12, Sentences.line(Texts.of("window.findings.modelStopped"), "muted"), again);
        line.setAlignment(Pos.CENTER_LEFT);
        answer.getChildren().add(line);
    }

    private void show() {
        Topic topic = findings.topic().get();
        Optional<FindingSheet> sheet = findings.sheet(topic);
        seen = sheet;
        answer.getChildren().setAll(Sentences.line(topic.question(), "heading"));
        saved.setText("");
        if (sheet.isEmpty()) {
            answer.getChildren().add(Sentences.line(Texts.of("window.findings.working"), "muted"));
            return;
        }
        answer.getChildren().add(Sentences.line(sheet.get().sentence(), "finding-sentence"));
        if (sheet.get().isStopped()) {
            answer.getChildren().add(againButton());
        }
        if (topic.isOfCounts() && !sheet.get().lines().isEmpty()) {
            tellOfTheModel();
        }
        sheet.get().figure().ifPresent(figure -> {
            picture.show(figure.picture());
            picture.setOnMouseClicked(event -> {
                boolean rows = figure.places().size() == sheet.get().lines().size();
                for (int i = 0; rows && i < figure.places().size(); i++) {
                    if (figure.places().get(i).contains(event.getX(), event.getY())) {
                        table.choose(i);
                    }
                }
            });
            answer.getChildren().add(picture);
        });
        if (!sheet.get().lines().isEmpty()) {
            table.show(sheet.get());
            answer.getChildren().addAll(table, saving());
        }
        if (topic.isPrivate()) {
            answer.getChildren().add(Sentences.line(Texts.of("window.findings.private"), "subheading"));
        }
        sheet.get().remarks().stream()
                .filter(remark -> !remark.isBlank())
                .forEach(remark -> answer.getChildren().add(Sentences.line(TrendWords.sentenceCase(remark), "muted")));
        middle.setVvalue(0);
    }

    private Button againButton() {
        Button again = new Button(Texts.of("window.findings.again"));
        again.setAccessibleText(again.getText());
        again.setOnAction(event -> {
            questions.requestFocus();
            findings.read();
            show();
        });
        return again;
    }

    /** Marks the row of the picture that the line tells of, where each line has its row. */
    private void mark(int line) {
        findings.sheet(findings.topic().get())
                .ifPresent(sheet -> sheet.figure()
                        .filter(figure -> line >= 0
                                && figure.places().size() == sheet.lines().size())
                        .ifPresent(figure -> picture.mark(figure.places().get(line))));
    }

    private HBox saving() {
        Button save = new Button(Texts.of("window.findings.saveButton"));
        save.setAccessibleText(Texts.of("window.findings.save"));
        save.setOnAction(event -> save());
        Button report = new Button(Texts.of("window.findings.reportButton"));
        report.setAccessibleText(Texts.of("window.findings.report"));
        report.setOnAction(event -> report());
        HBox line = new HBox(12, save, report, saved);
        line.setAlignment(Pos.CENTER_LEFT);
        return line;
    }

    private void report() {
        if (book.contents().get().filter(there -> !there.maps().isEmpty()).isEmpty()) {
            saved.setText(Texts.of("window.findings.nothing"));
            return;
        }
        FileChooser chooser = new FileChooser();
        chooser.setTitle(Texts.of("window.findings.report"));
        chooser.setInitialDirectory(folder());
        chooser.setInitialFileName("report-" + book.strip().season().get());
        chooser.getExtensionFilters()
                .addAll(
                        new FileChooser.ExtensionFilter(Texts.of("window.findings.asPdf"), "*.pdf"),
                        new FileChooser.ExtensionFilter(Texts.of("window.findings.asHtml"), "*.html"));
        File file = chooser.showSaveDialog(page.getScene().getWindow());
        if (file != null) {
            report(file.toPath());
        }
    }

    /**
     * Writes the report of the season that the strip shows.
     *
     * @param file where to
     */
    void report(Path file) {
        findings.report(file, saved::setText);
    }

    private @Nullable File folder() {
        Path folder = book.book().file().getParent();
        return folder == null ? null : folder.toFile();
    }

    private void save() {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(Texts.of("window.findings.save"));
        chooser.setInitialDirectory(folder());
        Topic topic = findings.topic().get();
        chooser.setInitialFileName(topic.name().toLowerCase(Locale.ROOT)
                + (topic.isPrivate() ? "-" + Texts.of("window.findings.privateMark") : ""));
        chooser.getExtensionFilters()
                .addAll(
                        new FileChooser.ExtensionFilter(Texts.of("window.findings.asSvg"), "*.svg"),
                        new FileChooser.ExtensionFilter(Texts.of("window.findings.asPng"), "*.png"),
                        new FileChooser.ExtensionFilter(Texts.of("window.findings.asCsv"), "*.csv"));
        File file = chooser.showSaveDialog(page.getScene().getWindow());
        if (file != null) {
            save(file.toPath());
        }
    }

    /**
     * Writes the picture or the table that is looked at.
     *
     * @param file where to; its ending says which: svg, png or csv
     */
    void save(Path file) {
        saved.setText(Texts.of("window.work.saving"));
        findings.save(file, saved::setText);
    }

    private void goTo(Evidence record) {
        if (record.subject().isPresent()) {
            leave.run();
            findings.goTo(record);
        }
    }

    private final class Question extends ListCell<Topic> {
        private final Label asked = Sentences.line("", "key");
        private final Label told = Sentences.line("", "muted");
        private final VBox box = new VBox(2, asked, told);

        Question() {
            setPrefWidth(0);
            setMinHeight(Region.USE_PREF_SIZE);
        }

        @Override
        protected void updateItem(Topic topic, boolean empty) {
            super.updateItem(topic, empty);
            if (empty || topic == null) {
                setGraphic(null);
                return;
            }
            asked.setText(topic.question());
            told.setText(findings.sheet(topic)
                    .map(FindingSheet::brief)
                    .filter(brief -> !brief.isBlank())
                    .map(brief -> Texts.of("window.findings.brief", topic.term(), brief))
                    .orElse(topic.term()));
            setGraphic(box);
            setAccessibleText(topic.question() + " "
                    + findings.sheet(topic).map(FindingSheet::sentence).orElse(Texts.of("window.findings.working")));
        }
    }

    @Override
    public String name() {
        return Texts.of("window.findings.name");
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
        findings.read();
        if (questions.getSelectionModel().getSelectedItem() == null) {
            questions.getSelectionModel().select(findings.topic().get());
        }
        show();
        questions.requestFocus();
    }

    @Override
    public void leave() {
        findings.rest();
    }

    @Override
    public boolean back() {
        boolean looking = !findings.evidence().get().isEmpty();
        table.getSelectionModel().clearSelection();
        findings.look(findings.topic().get());
        questions.requestFocus();
        return looking;
    }
}
