package org.ouzelbook.ui.window;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import javafx.application.Application;
import org.ouzelbook.tracker.domain.Species;

/** The door to the window for those who know no JavaFX. */
public final class RiverWindow {
    private RiverWindow() {}

    /**
     * Opens the window and returns when it is closed. Needs a display, and can be called once in the life of a program.
     *
     * @param book the book to open; the start page if empty
     * @param species the species to show; if empty, the one shown when the book was last left, or the first that is there
     * @param season the season to show; if empty, what was shown when the book was last left, or the last season
     */
    public static void show(Optional<Path> book, Optional<Species> species, OptionalInt season) {
        List<String> wishes = new ArrayList<>();
        book.ifPresent(path -> wishes.add("--book=" + path.toAbsolutePath()));
        species.ifPresent(one -> wishes.add("--species=" + one.scientificName()));
        season.ifPresent(year -> wishes.add("--season=" + year));
        Application.launch(WindowApplication.class, wishes.toArray(String[]::new));
    }
}
