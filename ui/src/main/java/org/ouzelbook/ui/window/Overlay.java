package org.ouzelbook.ui.window;

import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.ouzelbook.ui.app.Texts;

/** A sheet over the window, for the legend, the keys and the cautions; Escape or a click beside it takes it away. */
final class Overlay extends StackPane {
    private Node before = this;

    Overlay() {
        getStyleClass().add("overlay");
        setVisible(false);
        setManaged(false);
        setOnMouseClicked(event -> {
            if (event.getTarget() == this) {
                hide();
            }
        });
        setOnKeyPressed(event -> {
            if (event.getCode() == KeyCode.ESCAPE) {
                hide();
                event.consume();
            }
        });
    }

    /**
     * Shows a sheet.
     *
     * @param title its title
     * @param content what stands on it
     * @param button what the button that takes it away says
     */
    void show(String title, Node content, String button) {
        before = getScene().getFocusOwner() == null ? this : getScene().getFocusOwner();
        Label heading = new Label(title);
        heading.getStyleClass().add("heading");
        Button close = new Button(button);
        close.setOnAction(event -> hide());
        close.setAccessibleText(button);
        ScrollPane within = new ScrollPane(content);
        within.getStyleClass().add("told");
        within.setFitToWidth(true);
        within.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        within.setMinHeight(0);
        VBox sheet = new VBox(heading, within, close);
        sheet.addEventFilter(KeyEvent.KEY_PRESSED, event -> scroll(within, event));
        sheet.getStyleClass().add("sheet");
        sheet.setMaxSize(USE_PREF_SIZE, USE_PREF_SIZE);
        sheet.setAlignment(Pos.TOP_LEFT);
        sheet.setAccessibleText(title);
        getChildren().setAll(sheet);
        setVisible(true);
        setManaged(true);
        close.requestFocus();
    }

    /**
     * Shows a text: lines of one part as paragraphs, lines of two parts, with a tab between, side by side.
     *
     * @param title key of the title
     * @param text key of the text
     * @param button key of what the button says
     */
    void tell(String title, String text, String button) {
        GridPane lines = new GridPane();
        lines.getStyleClass().add("lines");
        int row = 0;
        for (String line : Texts.of(text).split("\n+", -1)) {
            String[] parts = line.split("\t", -1);
            for (int column = 0; column < parts.length; column++) {
                Label words = new Label(parts[column]);
                words.setWrapText(true);
                words.setMinHeight(USE_PREF_SIZE);
                words.setPrefWidth(parts.length == 1 ? 640 : column == 0 ? 190 : 450);
                words.getStyleClass().add(parts.length > 1 && column == 0 ? "key" : "sentence");
                lines.add(words, column, row, parts.length == 1 ? 2 : 1, 1);
            }
            row++;
        }
        show(Texts.of(title), lines, Texts.of(button));
    }

    /** Moves a sheet that is taller than the window by the keys, while its button has the keyboard. */
    private static void scroll(ScrollPane within, KeyEvent event) {
        double by = switch (event.getCode()) {
            case UP -> -0.1;
            case DOWN -> 0.1;
            case PAGE_UP -> -0.5;
            case PAGE_DOWN -> 0.5;
            default -> 0;
        };
        if (by != 0) {
            within.setVvalue(Math.min(Math.max(within.getVvalue() + by, 0), 1));
            event.consume();
        }
    }

    void hide() {
        setVisible(false);
        setManaged(false);
        getChildren().clear();
        before.requestFocus();
    }
}
