package org.ouzelbook.ui.window;

import java.util.function.Consumer;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Subject;

/** The records that a number rests on; a click or Enter goes to one on the strip. */
final class EvidenceList extends VBox {
    private final ListView<Evidence> list = new ListView<>();
    private final Label heading = Sentences.line("", "heading");
    private final Label hint = Sentences.line("", "muted");

    /**
     * @param findings says which records
     * @param go goes to one
     */
    EvidenceList(FindingsViewModel findings, Consumer<Evidence> go) {
        getStyleClass().addAll("beside", "evidence");
        list.setAccessibleText(Texts.of("window.findings.records"));
        list.setAccessibleHelp(Texts.of("window.findings.goThere"));
        list.setCellFactory(view -> new Line());
        setVgrow(list, Priority.ALWAYS);
        getChildren().setAll(heading, hint, list);
        list.setOnMouseClicked(event -> {
            if (event.getClickCount() == 1 && list.getSelectionModel().getSelectedItem() != null) {
                go.accept(list.getSelectionModel().getSelectedItem());
            }
        });
        list.setOnKeyPressed(event -> {
            if (event.getCode() == KeyCode.ENTER && list.getSelectionModel().getSelectedItem() != null) {
                go.accept(list.getSelectionModel().getSelectedItem());
                event.consume();
            }
        });
        findings.evidence().addListener((property, before, now) -> show(findings));
        show(findings);
    }

    private void show(FindingsViewModel findings) {
        boolean none = findings.evidence().get().isEmpty();
        heading.setText(Texts.of("window.findings.restsOn"));
        hint.setText(Texts.of(none ? "window.findings.chooseLine" : "window.findings.goThere"));
        list.setVisible(!none);
        list.getItems().setAll(findings.evidence().get());
    }

    @Override
    public void requestFocus() {
        list.requestFocus();
    }

    private static final class Line extends ListCell<Evidence> {
        Line() {
            setWrapText(true);
            setPrefWidth(0);
            setMinHeight(Region.USE_PREF_SIZE);
        }

        @Override
        protected void updateItem(Evidence record, boolean empty) {
            super.updateItem(record, empty);
            setText(empty || record == null ? "" : record.words());
            getStyleClass().removeAll("territory", "single");
            boolean territory = !empty
                    && record != null
                    && record.subject()
                            .filter(Subject.OfTerritory.class::isInstance)
                            .isPresent();
            getStyleClass().add(territory ? "territory" : "single");
        }
    }
}
