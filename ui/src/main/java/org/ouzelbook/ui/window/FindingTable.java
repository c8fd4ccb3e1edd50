package org.ouzelbook.ui.window;

import java.util.Comparator;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import org.ouzelbook.ui.app.Texts;

/** The table behind a picture; the line that is chosen opens the records that it rests on. */
final class FindingTable extends TableView<FindingSheet.Line> {
    private static final double LINE = 27;
    private static final int MOST_LINES = 12;
    private static final double HEADER = 38;
    private static final double ROOM = 18;
    private static final double NAME_ROOM = 34;
    private static final double WIDEST = 340;

    /** So many of the longest cells are measured: the longest is not always the widest. */
    private static final int MEASURED = 40;

    FindingTable(FindingsViewModel findings) {
        getStyleClass().add("finding-table");
        setAccessibleText(Texts.of("window.findings.table"));
        setAccessibleHelp(Texts.of("window.findings.chooseLine"));
        setFixedCellSize(LINE);
        setColumnResizePolicy(UNCONSTRAINED_RESIZE_POLICY);
        getSelectionModel().selectedItemProperty().addListener((property, before, now) -> {
            if (now != null) {
                findings.look(now);
            }
        });
    }

    /**
     * Shows the table of a finding.
     *
     * @param sheet the finding
     */
    void show(FindingSheet sheet) {
        getSelectionModel().clearSelection();
        getColumns().clear();
        for (int i = 0; i < sheet.columns().size(); i++) {
            int place = i;
            TableColumn<FindingSheet.Line, String> column =
                    new TableColumn<>(sheet.columns().get(i));
            column.setCellValueFactory(
                    line -> new ReadOnlyStringWrapper(line.getValue().cells().get(place)));
            boolean number = sheet.lines().stream()
                    .allMatch(line -> line.cells().get(place).matches("[–0-9.+-]*|[0-9.]+–[0-9.]+"));
            column.getStyleClass().add(number ? "number" : "words");
            column.setPrefWidth(width(sheet, place));
            column.setSortable(false);
            column.setReorderable(false);
            getColumns().add(column);
        }
        getItems().setAll(sheet.lines());
        int lines = Math.min(MOST_LINES, sheet.lines().size());
        setPrefHeight(LINE * lines + HEADER);
        setMinHeight(getPrefHeight());
    }

    /** Takes the keyboard, at the first line if none is chosen. */
    void begin() {
        if (getSelectionModel().isEmpty()) {
            choose(0);
        }
        requestFocus();
    }

    private static double width(FindingSheet sheet, int column) {
        Font letters = Font.font("Source Sans 3", 15);
        double name = wide(sheet.columns().get(column), Font.font("Source Sans 3", 13)) + NAME_ROOM - ROOM;
        return sheet.lines().stream()
                        .map(line -> line.cells().get(column))
                        .distinct()
                        .sorted(Comparator.comparingInt(String::length).reversed())
                        .limit(MEASURED)
                        .mapToDouble(cell -> Math.min(WIDEST, wide(cell, letters)))
                        .reduce(name, Math::max)
                + ROOM;
    }

    private static double wide(String words, Font letters) {
        Text text = new Text(words);
        text.setFont(letters);
        return Math.ceil(text.getLayoutBounds().getWidth());
    }

    /**
     * Chooses a line.
     *
     * @param line its place, from 0
     */
    void choose(int line) {
        if (line < getItems().size()) {
            getSelectionModel().select(line);
            scrollTo(line);
            requestFocus();
        }
    }
}
