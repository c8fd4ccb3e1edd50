package org.ouzelbook.ui.window;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Properties;
import org.ouzelbook.tracker.domain.Species;

/** Where the window stood and what was looked at in each book, remembered in a small text file of the person at the keyboard. */
final class Desk {
    private static final double LEAST_WIDTH = 1000;
    private static final double LEAST_HEIGHT = 600;
    private static final double MOST = 20000;

    private final Path memory;
    private final Properties kept = new Properties();

    /**
     * @param memory the file that remembers; it need not exist, and one that cannot be read is as good as none
     */
    Desk(Path memory) {
        this.memory = memory;
        if (Files.isRegularFile(memory)) {
            try (Reader in = Files.newBufferedReader(memory, StandardCharsets.UTF_8)) {
                kept.load(in);
            } catch (IOException | IllegalArgumentException e) {
                kept.clear();
            }
        }
    }

    /** {@return the memory of whoever runs the program} */
    static Desk ofUser() {
        return new Desk(Path.of(System.getProperty("user.home", "."), ".ouzelbook", "window.properties"));
    }

    /**
     * Where the window stood.
     *
     * @param x its left side, in pixels
     * @param y its top, in pixels
     * @param width its width, in pixels
     * @param height its height, in pixels
     * @param full whether it filled the screen
     */
    record Place(double x, double y, double width, double height, boolean full) {}

    /**
     * What was looked at in a book.
     *
     * @param species the species
     * @param place where the strip was left
     */
    record View(Species species, StripPlace place) {}

    /** {@return where the window stood; empty if nobody knows, or it makes no sense} */
    Optional<Place> place() {
        try {
            Place place = new Place(
                    number("x"), number("y"), number("width"), number("height"), Boolean.parseBoolean(text("full")));
            boolean sound = place.width() >= LEAST_WIDTH
                    && place.height() >= LEAST_HEIGHT
                    && place.width() < MOST
                    && place.height() < MOST
                    && Math.abs(place.x()) < MOST
                    && Math.abs(place.y()) < MOST;
            return sound ? Optional.of(place) : Optional.empty();
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }

    private String text(String key) {
        return kept.getProperty("stand-" + key, "");
    }

    private double number(String key) {
        return Double.parseDouble(text(key));
    }

    /**
     * {@return what was looked at in a book; empty if nobody knows}
     *
     * @param book the file of the book
     */
    Optional<View> view(Path book) {
        String[] parts = kept.getProperty("view." + book.toAbsolutePath(), "").split("\\|", 2);
        return parts.length < 2
                ? Optional.empty()
                : Species.named(parts[0])
                        .flatMap(species -> StripPlace.read(parts[1]).map(place -> new View(species, place)));
    }

    /**
     * Remembers where the window stands.
     *
     * @param place where
     */
    void keep(Place place) {
        kept.setProperty("stand-x", String.valueOf(place.x()));
        kept.setProperty("stand-y", String.valueOf(place.y()));
        kept.setProperty("stand-width", String.valueOf(place.width()));
        kept.setProperty("stand-height", String.valueOf(place.height()));
        kept.setProperty("stand-full", String.valueOf(place.full()));
        write();
    }

    /**
     * Remembers what is looked at in a book.
     *
     * @param book the file of the book
     * @param view what
     */
    void keep(Path book, View view) {
        kept.setProperty(
                "view." + book.toAbsolutePath(),
                view.species().scientificName() + "|" + view.place().written());
        write();
    }

    /** A memory that cannot be written costs a convenience, not a record, so it is let be. */
    private void write() {
        try {
            Files.createDirectories(memory.toAbsolutePath().getParent());
            try (Writer out = Files.newBufferedWriter(memory, StandardCharsets.UTF_8)) {
                kept.store(out, null);
            }
        } catch (IOException e) {
            return;
        }
    }
}
