package org.ouzelbook.ui.window;

import java.time.Year;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.beans.binding.Bindings;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.StripView;

/** The top: which river, species and season; and, on the right, the finding before everything else. */
final class HeaderPane extends VBox {
    private final BookViewModel book;
    private final Label river = new Label();
    private final Label season = new Label();
    private final Label what = new Label();
    private final Label count = new Label();
    private final Label range = new Label();
    private final Label beside = new Label();
    private final HBox crumbs = new HBox(6);
    private final ComboBox<Species> species = new ComboBox<>();
    private boolean filling;

    HeaderPane(BookViewModel book) {
        this.book = book;
        getStyleClass().add("header");
        setAlignment(Pos.TOP_RIGHT);
        river.getStyleClass().add("title");
        what.getStyleClass().add("muted");
        count.getStyleClass().add("finding");
        species();
        Button earlier = button("‹", "window.earlier", book.strip()::earlier);
        Button later = button("›", "window.later", book.strip()::later);
        season.getStyleClass().add("season");
        crumbs.setAlignment(Pos.BASELINE_LEFT);
        crumbs.getStyleClass().add("crumbs");
        Region room = new Region();
        HBox.setHgrow(room, Priority.ALWAYS);
        // A long name gives way, the finding never does.
        what.setMinWidth(0);
        beside.getStyleClass().add("muted");
        for (Region whole : List.of(species, crumbs, earlier, season, later, count, range, beside)) {
            whole.setMinWidth(USE_PREF_SIZE);
        }
        // Where nothing is counted there is no season to go to.
        for (Region way : List.of(crumbs, earlier, later)) {
            way.visibleProperty()
                    .bind(Bindings.createBooleanBinding(
                            () -> book.finding().get().isPresent(), book.finding()));
            way.managedProperty().bind(way.visibleProperty());
        }
        HBox first = new HBox(10, river, species, crumbs, earlier, season, later, what, room, count, range);
        first.setAlignment(Pos.BASELINE_LEFT);
        getChildren().addAll(first, beside);
        book.contents().addListener((property, before, now) -> {
            now.ifPresent(this::fill);
            lead(book.strip().path().get());
        });
        book.finding().addListener((property, before, now) -> show(now));
        book.strip().path().addListener((property, before, now) -> lead(now));
    }

    /** The way back out, view by view. */
    private void lead(List<StripView> path) {
        crumbs.getChildren().clear();
        if (book.contents().get().isEmpty()) {
            return;
        }
        for (StripView view : path.subList(0, path.size() - 1)) {
            String words = view instanceof StripView.AllSeasons
                    ? Texts.of("window.crumb.seasons")
                    : view instanceof StripView.OneSeason one
                            ? Texts.word(Year.of(one.year()))
                            : view instanceof StripView.OnePlace place ? place.name() : Texts.of("window.crumb.bird");
            Button crumb = new Button(words);
            crumb.getStyleClass().add("crumb");
            crumb.setAccessibleText(Texts.of("window.crumb.back", words));
            crumb.setFocusTraversable(false);
            crumb.setOnAction(event -> book.strip().go(view));
            crumbs.getChildren().addAll(crumb, new Label("›"));
        }
    }

    private static Button button(String words, String name, Runnable action) {
        Button button = new Button(words);
        button.getStyleClass().add("quiet");
        button.setAccessibleText(Texts.of(name));
        button.setOnAction(event -> action.run());
        return button;
    }

    private void species() {
        species.getStyleClass().add("quiet");
        species.setAccessibleText(Texts.of("window.species"));
        species.setConverter(new StringConverter<>() {
            @Override
            public String toString(Species one) {
                return one == null ? "" : one.englishName();
            }

            @Override
            public Species fromString(String name) {
                return Species.named(name).orElseThrow();
            }
        });
        species.valueProperty().addListener((property, before, now) -> {
            if (now != null && !filling) {
                book.read(Optional.of(now));
            }
        });
    }

    private void fill(BookContents contents) {
        filling = true;
        List<Species> there = contents.speciesThere().isEmpty() ? Species.all() : contents.speciesThere();
        species.getItems().setAll(there);
        species.setValue(contents.species());
        filling = false;
        String name = contents.records().rivers().rivers().stream()
                .filter(one -> one.mouth().isEmpty())
                .map(River::name)
                .collect(Collectors.joining(" · "));
        river.setText(name);
        river.setTooltip(new Tooltip(name));
    }

    private void show(Optional<Finding> finding) {
        season.setText(finding.map(Finding::when).orElse(""));
        what.setText(finding.map(Finding::what).orElse(""));
        count.setText(finding.map(Finding::count).orElse(""));
        range.setText(finding.map(Finding::range).orElse(""));
        beside.setText(finding.map(Finding::beside).orElse(""));
    }
}
