package org.ouzelbook.ui.window;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.input.Clipboard;
import javafx.scene.input.ClipboardContent;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.ouzelbook.ui.app.Texts;

/** The calendar: visits due, where one more tells most, what the effort can show, and the cautions before each visit. */
final class CalendarPage implements Page {
    private final CalendarViewModel calendar;
    private final Sentences told = new Sentences();
    private final Sentences effort = new Sentences();
    private final HBox page = new HBox(told, effort);
    private final Keys keys = new Keys("window.calendar.name");

    CalendarPage(BookViewModel book, Work work) {
        this.calendar = new CalendarViewModel(book, work, LocalDate.now(ZoneId.systemDefault()));
        page.getStyleClass().add("page");
        HBox.setHgrow(told, Priority.ALWAYS);
        HBox.setHgrow(effort, Priority.ALWAYS);
        told.setPrefWidth(500);
        effort.setPrefWidth(500);
        calendar.told().addListener((property, before, now) -> now.ifPresent(told::tell));
        calendar.effort().addListener((property, before, now) -> now.ifPresent(effort::tell));
        keys.offer("window.calendar.showNests", "window.calendar.nestsHint", this::switchNests, Stroke.of(KeyCode.P))
                .offer("window.calendar.copy", "window.calendar.copyHint", this::copy, Stroke.command(KeyCode.C));
        calendar.refusal().addListener((property, before, now) -> refuse(now));
        book.contents().addListener((property, before, now) -> {
            if (page.getParent() != null) {
                calendar.read();
            }
        });
    }

    private void switchNests() {
        calendar.nestsShown().set(!calendar.nestsShown().get());
    }

    /** Puts the plan among what can be pasted into a letter, or printed from any editor. */
    private void copy() {
        ClipboardContent text = new ClipboardContent();
        text.putString(calendar.asText());
        Clipboard.getSystemClipboard().setContent(text);
    }

    private void refuse(String why) {
        if (!why.isEmpty()) {
            told.tell(new Explanation(name(), why, List.of()));
            effort.tell(new Explanation("", "", List.of()));
        }
    }

    @Override
    public String name() {
        return Texts.of("window.calendar.name");
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
        calendar.read();
        told.requestFocus();
    }
}
