package org.ouzelbook.ui.window;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Region;
import org.ouzelbook.tracker.exchange.Problem;
import org.ouzelbook.ui.app.Texts;

/** What is wrong or odd in the rows of an import; the row that is chosen is shown beside it, as it stands in its file. */
final class ProblemList extends ListView<ProblemList.Entry> {
    private static final int OF_ONE_REASON = 200;

    private final ImportViewModel imports;

    /**
     * One line of the list: a heading, or a problem.
     *
     * @param heading a heading; blank for a problem
     * @param problem the problem, or for a heading the first below it
     */
    record Entry(String heading, Problem problem) {
        String words() {
            if (!heading.isBlank()) {
                return heading;
            }
            String where = problem.row() == 0
                    ? ImportQuestion.nameOf(problem.file())
                    : Texts.of("window.import.row", ImportQuestion.nameOf(problem.file()), problem.row());
            String cell = problem.cell().isBlank()
                    ? ""
                    : Texts.of(
                            "window.import.cell",
                            problem.column().strip(),
                            problem.cell().replaceAll("\\s+", " ").strip());
            return Texts.of("window.import.problem", where, cell, Texts.of(problem.message()));
        }
    }

    ProblemList(ImportViewModel imports) {
        this.imports = imports;
        getStyleClass().add("problems");
        setAccessibleText(Texts.of("window.import.list"));
        setAccessibleHelp(Texts.of("window.import.listHelp"));
        setMinHeight(120);
        setCellFactory(list -> new Line());
        getSelectionModel().selectedItemProperty().addListener((property, before, now) -> {
            if (now != null && now.heading().isBlank()) {
                imports.look(now.problem());
            }
        });
        setOnKeyPressed(event -> {
            if (event.getCode() == KeyCode.ENTER && getSelectionModel().getSelectedItem() != null) {
                imports.look(getSelectionModel().getSelectedItem().problem());
                event.consume();
            }
        });
    }

    /** Lists what there is to list. */
    void show() {
        List<Entry> entries = new ArrayList<>();
        String heading = "";
        for (ImportViewModel.Group group : imports.groups()) {
            if (!group.heading().equals(heading)) {
                heading = group.heading();
                entries.add(new Entry(heading, group.first().get(0)));
            }
            group.first().stream().limit(OF_ONE_REASON).forEach(problem -> entries.add(new Entry("", problem)));
            long more = group.count() - Math.min(OF_ONE_REASON, group.first().size());
            if (more > 0) {
                entries.add(new Entry(
                        Texts.of("window.import.more", more), group.first().get(0)));
            }
        }
        getItems().setAll(entries);
    }

    private static final class Line extends ListCell<Entry> {
        Line() {
            setWrapText(true);
            setPrefWidth(0);
            setMinHeight(Region.USE_PREF_SIZE);
        }

        @Override
        protected void updateItem(Entry entry, boolean empty) {
            super.updateItem(entry, empty);
            boolean heading = !empty && entry != null && !entry.heading().isBlank();
            getStyleClass().removeAll("subheading");
            if (heading) {
                getStyleClass().add("subheading");
            }
            setText(empty || entry == null ? "" : entry.words());
        }
    }
}
