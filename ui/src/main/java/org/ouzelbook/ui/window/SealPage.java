package org.ouzelbook.ui.window;

import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.ouzelbook.ui.app.Texts;

/** The seal of the season: sealing it when it is reported, the sealed answer, and what differs today. */
final class SealPage implements Page {
    private final SealViewModel seal;
    private final Sentences told = new Sentences();
    private final Button turn = new Button();
    private final Label title = Sentences.line("", "heading");
    private final Label state = Sentences.line("", "muted");
    private final VBox page = new VBox(10, title, state, turn, told);
    private final Keys keys = new Keys("window.seal.name");

    SealPage(BookViewModel book, Work work) {
        this.seal = new SealViewModel(book, work);
        page.getStyleClass().add("column-page");
        VBox.setVgrow(told, Priority.ALWAYS);
        turn.setOnAction(event -> seal.turn());
        seal.told().addListener((property, before, now) -> {
            now.ifPresent(this::tell);
            turn.setText(Texts.of(seal.sealed().get() ? "window.seal.remove" : "window.seal.seal"));
            turn.setAccessibleText(turn.getText());
        });
        book.strip().season().addListener((property, before, now) -> readIfSeen());
        book.model().counts().addListener((property, before, now) -> readIfSeen());
        keys.on("window.seal.turn", seal::turn, Stroke.command(KeyCode.ENTER));
    }

    /** What can be done stands beside what is, above everything that was sealed. */
    private void tell(Explanation words) {
        title.setText(words.title());
        state.setText(words.subtitle());
        told.tell(new Explanation("", "", words.sections()));
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
