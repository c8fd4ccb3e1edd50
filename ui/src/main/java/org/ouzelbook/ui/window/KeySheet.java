package org.ouzelbook.ui.window;

import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The page of keys: what each place of the window hears, in two columns. */
final class KeySheet extends HBox {
    private static final double HOW = 168;
    private static final double DOES = 250;

    /**
     * @param places the keys of each place, the nearest first
     */
    KeySheet(List<Keys> places) {
        getStyleClass().add("key-sheet");
        List<Keys> told =
                places.stream().filter(place -> !place.lines().isEmpty()).toList();
        int all = told.stream().mapToInt(place -> place.lines().size() + 2).sum();
        VBox left = new VBox();
        VBox right = new VBox();
        int set = 0;
        for (Keys place : told) {
            int size = place.lines().size() + 2;
            (set == 0 || set + size / 2 < all / 2.0 ? left : right)
                    .getChildren()
                    .add(place(place));
            set += size;
        }
        getChildren().add(left);
        if (!right.getChildren().isEmpty()) {
            getChildren().add(right);
        }
    }

    private static VBox place(Keys keys) {
        Label heading = new Label(keys.place());
        heading.getStyleClass().add("subheading");
        GridPane lines = new GridPane();
        lines.getStyleClass().add("lines");
        int row = 0;
        for (Keys.Line line : keys.lines()) {
            lines.add(words(line.how(), "key", HOW), 0, row);
            lines.add(words(line.does(), "sentence", DOES), 1, row);
            row++;
        }
        return new VBox(heading, lines);
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
