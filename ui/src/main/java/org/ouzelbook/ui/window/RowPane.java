package org.ouzelbook.ui.window;

import java.util.List;
import java.util.Optional;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.VBox;
import org.ouzelbook.ui.app.RowText;
import org.ouzelbook.ui.app.Texts;

/** Beside an import: the row that is looked at, cell by cell as it stands in its file, or else how the tables were understood. */
final class RowPane extends ScrollPane {
    private final ImportViewModel imports;
    private final VBox column = new VBox();
    private boolean closed;

    RowPane(ImportViewModel imports) {
        this.imports = imports;
        getStyleClass().addAll("told", "beside");
        column.getStyleClass().add("sentences");
        setFitToWidth(true);
        setHbarPolicy(ScrollBarPolicy.NEVER);
        setContent(column);
        imports.row().addListener((property, before, now) -> {
            closed = false;
            show();
        });
    }

    /** Shows what there is to show. */
    void show() {
        Optional<RowText> row = closed ? Optional.empty() : imports.row().get();
        column.getChildren().clear();
        row.ifPresentOrElse(this::row, this::understood);
        setVvalue(0);
    }

    private void row(RowText row) {
        column.getChildren()
                .add(Sentences.line(
                        row.row() == 0
                                ? ImportQuestion.nameOf(row.file())
                                : Texts.of("window.import.row", ImportQuestion.nameOf(row.file()), row.row()),
                        "heading"));
        for (RowText.Cell cell : row.cells()) {
            column.getChildren().add(Sentences.line(cell.column(), "column-name"));
            Label text = Sentences.line(cell.text().isBlank() ? "–" : cell.text(), "cell-text");
            if (cell.column().equals(imports.meant())) {
                text.getStyleClass().add("meant");
            }
            column.getChildren().add(text);
        }
        if (row.cells().isEmpty()) {
            column.getChildren().add(Sentences.line(Texts.of("window.import.wholeFile"), "muted"));
        }
    }

    private void understood() {
        List<Explanation.Section> sections =
                imports.report().get().map(ImportPage::understood).orElse(List.of());
        if (!sections.isEmpty()) {
            column.getChildren().add(Sentences.line(Texts.of("window.import.understood"), "heading"));
        }
        for (Explanation.Section section : sections) {
            column.getChildren().add(Sentences.line(section.heading(), "subheading"));
            section.sentences().forEach(line -> column.getChildren().add(Sentences.line(line, "sentence")));
        }
    }

    /** Takes the row away. */
    void close() {
        closed = true;
        show();
    }
}
