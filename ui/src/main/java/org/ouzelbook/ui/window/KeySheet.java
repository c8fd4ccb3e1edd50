package org.ouzelbook.ui.window;

import java.util.ArrayList;
import java.util.List;
import javafx.geometry.VPos;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;

/** The page of keys: what each place of the window hears, in columns of about the same height. */
final class KeySheet extends HBox {
    private static final int COLUMNS = 3;
    private static final double HOW = 112;
    private static final double DOES = 256;

    /** Letters that one line of the wider part takes; only balances the columns. */
    private static final int LETTERS = 40;

    /** A line of the sheet: a heading, or keys and what they do. */
    private record Row(List<Label> labels, int height) {}

    /**
     * @param places the keys of each place, the nearest first
     */
    KeySheet(List<Keys> places) {
        getStyleClass().add("key-sheet");
        List<Row> rows = new ArrayList<>();
        for (Keys place : places) {
            if (!place.lines().isEmpty()) {
                rows.add(new Row(List.of(words(place.place(), "subheading", HOW + DOES)), 2));
                place.lines().forEach(line -> rows.add(row(line)));
            }
        }
        int all = rows.stream().mapToInt(Row::height).sum();
        int set = 0;
        GridPane column = null;
        for (Row row : rows) {
            // A heading never stands alone at the foot of a column: it is as high as two lines.
            if (column == null || set + row.height() / 2 >= all * getChildren().size() / (double) COLUMNS) {
                column = new GridPane();
                column.getStyleClass().add("lines");
                getChildren().add(column);
            }
            add(row, column);
            set += row.height();
        }
    }

    private static Row row(Keys.Line line) {
        int lines = 1 + (line.does().length() - 1) / LETTERS;
        return new Row(List.of(words(line.how(), "key", HOW), words(line.does(), "sentence", DOES)), lines);
    }

    private static void add(Row row, GridPane column) {
        int at = column.getRowCount();
        row.labels().forEach(label -> GridPane.setValignment(label, VPos.TOP));
        for (int place = 0; place < row.labels().size(); place++) {
            column.add(row.labels().get(place), place, at, row.labels().size() == 1 ? 2 : 1, 1);
        }
    }

    private static Label words(String text, String style, double width) {
        Label label = new Label(text);
        label.setWrapText(true);
        label.setPrefWidth(width);
        label.setMinHeight(Region.USE_PREF_SIZE);
        label.getStyleClass().add(style);
        return label;
    }
}
