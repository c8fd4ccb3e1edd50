package org.ouzelbook.ui.window;

import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.ouzelbook.ui.app.Texts;

/** The seal of the season: sealing it when it is reported, the sealed answer, and what differs today. */
final class SealPage implements Page {
    private final SealViewModel seal;
    private final Sentences told = new Sentences();
    private final Button turn = new Button();
    private final VBox page = new VBox(told, turn);
    private final Keys keys = new Keys("window.seal.name");

    SealPage(BookViewModel book, Work work) {
        this.seal = new SealViewModel(book, work);
        page.getStyleClass().add("column-page");
        VBox.setVgrow(told, Priority.ALWAYS);
        turn.setOnAction(event -> seal.turn());
        seal.told().addListener((property, before, now) -> {
            now.ifPresent(told::tell);
            turn.setText(Texts.of(seal.sealed().get() ? "window.seal.remove" : "window.seal.seal"));
            turn.setAccessibleText(turn.getText());
        });
        book.strip().season().addListener((property, before, now) -> readIfSeen());
        book.model().counts().addListener((property, before, now) -> readIfSeen());
        keys.on("window.seal.turn", seal::turn, Stroke.command(KeyCode.ENTER));
    }

    private void readIfSeen() {
        if (page.getParent() != null) {
            seal.read();
        }
    }

    @Override
    public String name() {
        return Texts.of("window.seal.name");
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
        seal.read();
        turn.requestFocus();
    }
}
