package org.ouzelbook.ui.window;

import java.io.File;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import org.ouzelbook.tracker.exchange.TableResult;
import org.ouzelbook.ui.app.ImportReport;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.TallyFigure;
import org.ouzelbook.ui.strip.TallyFigure.Fate;
import org.ouzelbook.ui.strip.TallyFigure.Part;

/** An import as a page to read: what would be added, what is asked, what is wrong; then to take it in, or leave it. */
final class ImportPage implements Page {
    private static final double BAR = 720;

    private final ImportViewModel imports;
    private final BookViewModel book;
    private final PictureView tally;
    private final VBox questions = new VBox();
    private final ProblemList problems;
    private final RowPane row;
    private final FlowPane buttons = new FlowPane(10, 10);
    private final VBox main = new VBox();
    private final HBox page = new HBox();
    private final Keys keys = new Keys("window.import.name");

    ImportPage(BookViewModel book, Work work, Look look) {
        this.book = book;
        this.tally = new PictureView(look);
        this.imports = new ImportViewModel(book, work, LocalDate.now(ZoneId.systemDefault()));
        this.problems = new ProblemList(imports);
        this.row = new RowPane(imports);
        main.getStyleClass().add("page-main");
        questions.getStyleClass().add("questions");
        page.getStyleClass().add("page");
        HBox.setHgrow(main, Priority.ALWAYS);
        page.getChildren().setAll(main, row);
        imports.report().addListener((property, before, now) -> show());
        imports.refusal().addListener((property, before, now) -> show());
        keys.offer("window.import.choose", "window.import.chooseHint", this::choose, Stroke.of(KeyCode.O))
                .offer("window.import.take", "window.import.takeHint", imports::accept, Stroke.of(KeyCode.A))
                .pointer("window.pointer.drop", "window.import.dropped");
        show();
    }

    private void show() {
        Optional<ImportReport> report = imports.report().get();
        List<Node> lines = new ArrayList<>();
        lines.add(Sentences.line(title(report), "heading"));
        if (!imports.refusal().get().isEmpty()) {
            lines.add(Sentences.line(imports.refusal().get(), "sentence"));
        } else {
            lines.add(Sentences.line(
                    report.map(ImportPage::ending).orElseGet(() -> Texts.of("window.import.invite")), "muted"));
        }
        report.filter(one -> one.read() > 0).ifPresent(one -> {
            tally.show(TallyFigure.of(parts(one), BAR, Texts.of("window.import.tally")));
            lines.add(tally);
        });
        report.ifPresent(one -> one.rivers()
                .forEach(river -> lines.add(Sentences.line(
                        Texts.of(
                                river.added() ? "import.told.river.new" : "import.told.river.known",
                                river.name(),
                                river.km()),
                        "sentence"))));
        List<ImportQuestion> open = imports.questions();
        questions.getChildren().setAll(open.stream().map(this::question).toList());
        if (!open.isEmpty()) {
            lines.add(Sentences.line(Texts.of("import.told.questions"), "subheading"));
            lines.add(questions);
        }
        problems.show();
        if (!problems.getItems().isEmpty()) {
            lines.add(problems);
            VBox.setVgrow(problems, Priority.ALWAYS);
        }
        buttons(report);
        lines.add(buttons);
        main.getChildren().setAll(lines);
        row.show();
        if (page.getScene() != null) {
            focus(open);
        }
    }

    private void focus(List<ImportQuestion> open) {
        if (open.isEmpty()) {
            buttons.getChildren().stream().findFirst().ifPresent(Node::requestFocus);
        } else {
            questions.lookupAll(".button").stream().findFirst().ifPresent(Node::requestFocus);
        }
    }

    private String title(Optional<ImportReport> report) {
        if (imports.files().isEmpty()) {
            return name();
        }
        List<String> names = imports.files().stream()
                .map(file -> String.valueOf(file.getFileName()))
                .toList();
        boolean done = report.filter(ImportReport::imported).isPresent();
        return Texts.of(done ? "window.import.titleDone" : "window.import.title", Texts.word(names));
    }

    private static String ending(ImportReport report) {
        if (report.imported()) {
            boolean onlyRivers = report.added() == 0 && !report.addsNothing();
            String told = Texts.of(onlyRivers ? "import.told.riversDone" : "window.import.done", report.added());
            return report.rejectedFiles().isEmpty()
                    ? told
                    : told + " " + Texts.of("import.told.leftOut", report.rejectedFiles());
        }
        if (report.addsNothing() && report.isClean()) {
            return Texts.of(report.heldNothing() ? "import.told.nothingThere" : "import.told.nothingNew");
        }
        String read = Texts.of("window.import.read", report.read());
        return report.isClean() ? read : read + " " + Texts.of("window.import.staysOut");
    }

    private static List<Part> parts(ImportReport report) {
        return List.of(
                new Part(
                        report.added(),
                        Texts.of(report.imported() ? "import.told.added" : "import.told.toAdd", report.added()),
                        Fate.NEW),
                new Part(report.duplicates(), Texts.of("import.told.duplicates", report.duplicates()), Fate.THERE),
                new Part(report.noneSeen(), Texts.of("import.told.noneSeen", report.noneSeen()), Fate.THERE),
                new Part(report.open(), Texts.of("import.told.open", report.open()), Fate.OPEN),
                new Part(report.rejected(), Texts.of("import.told.rejected", report.rejected()), Fate.OUT));
    }

    private Node question(ImportQuestion question) {
        FlowPane answers = new FlowPane(8, 6);
        for (ImportQuestion.Choice choice : question.choices()) {
            answers.getChildren().add(button(choice.words(), () -> imports.answer(choice.answer())));
        }
        question.written().ifPresent(written -> {
            TextField field = new TextField();
            field.setPromptText(written.prompt());
            field.setAccessibleText(written.prompt());
            field.setAccessibleHelp(question.words());
            field.setPrefColumnCount(12);
            field.setOnAction(event -> written.answer().apply(field.getText()).ifPresent(imports::answer));
            answers.getChildren().add(field);
        });
        Button rows = new Button(question.rows());
        rows.getStyleClass().setAll("link");
        rows.setAccessibleText(question.rows());
        rows.setOnAction(event -> imports.look(question.first()));
        VBox box = new VBox(3, Sentences.line(question.words(), "sentence"), rows, answers);
        box.setAccessibleText(question.words());
        return box;
    }

    private static Button button(String words, Runnable action) {
        Button button = new Button(words);
        button.setAccessibleText(words);
        button.setOnAction(event -> action.run());
        return button;
    }

    private void buttons(Optional<ImportReport> report) {
        buttons.getChildren().clear();
        if (imports.isReady()) {
            Button take =
                    button(Texts.of("window.import.add", report.orElseThrow().added()), imports::accept);
            take.getStyleClass().add("main");
            buttons.getChildren().add(take);
        }
        if (report.filter(ImportReport::imported).isPresent()) {
            buttons.getChildren().add(button(Texts.of("window.import.undo"), () -> {
                imports.forget();
                book.undo();
            }));
        }
        buttons.getChildren().add(button(Texts.of("window.import.chooseButton"), this::choose));
        if (report.filter(ImportReport::rehearsal).isPresent()) {
            buttons.getChildren().add(button(Texts.of("window.import.leave"), imports::forget));
        }
    }

    private void choose() {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(Texts.of("window.import.choose"));
        chooser.setInitialDirectory(Optional.ofNullable(book.book().file().getParent())
                .map(Path::toFile)
                .orElse(null));
        List<File> chosen = chooser.showOpenMultipleDialog(page.getScene().getWindow());
        if (chosen != null && !chosen.isEmpty()) {
            take(chosen.stream().map(File::toPath).toList());
        }
    }

    /**
     * Rehearses the import of files that were dropped or chosen.
     *
     * @param files files, folders and zips
     */
    void take(List<Path> files) {
        imports.rehearse(files);
    }

    /** {@return what is told of how each table was understood} */
    static List<Explanation.Section> understood(ImportReport report) {
        return report.files().stream().map(ImportPage::understood).toList();
    }

    private static Explanation.Section understood(TableResult table) {
        List<String> lines = new ArrayList<>();
        lines.add(Texts.of(
                "import.told.columns",
                table.understood().columns().stream()
                        .map(column -> column.name().equalsIgnoreCase(column.meaning())
                                ? column.name()
                                : Texts.of("import.told.column", column.name(), column.meaning()))
                        .toList()));
        table.understood()
                .dateOrder()
                .ifPresent(order -> lines.add(table.understood()
                        .dateCell()
                        .map(cell -> Texts.of("import.told.dates", order, cell.row(), cell.text()))
                        .orElseGet(() -> Texts.of("import.told.datesAnswered", order))));
        if (!table.understood().unknownColumns().isEmpty()) {
            lines.add(Texts.of(
                    table.understood().keepsUnknownColumns()
                            ? "import.told.unknownColumns"
                            : "import.told.unknownColumnsLost",
                    table.understood().unknownColumns(),
                    table.understood().kind()));
        }
        if (table.totals() > 0) {
            lines.add(Texts.of("import.told.totals", table.totals()));
        }
        if (table.attached() > 0) {
            lines.add(Texts.of("import.told.attached", table.attached()));
        }
        if (table.importedBefore()) {
            lines.add(Texts.of("import.told.importedBefore"));
        }
        return new Explanation.Section(
                Texts.of(
                        "import.told.table",
                        ImportQuestion.nameOf(table.file()),
                        table.understood().kind(),
                        table.read()),
                lines);
    }

    @Override
    public String name() {
        return Texts.of("window.import.name");
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
        show();
    }

    @Override
    public boolean back() {
        boolean looking = imports.row().get().isPresent();
        row.close();
        return looking;
    }
}
