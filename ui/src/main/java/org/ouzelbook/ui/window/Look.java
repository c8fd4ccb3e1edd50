package org.ouzelbook.ui.window;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Properties;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import org.ouzelbook.ui.strip.Palette;

/** How the window looks to the person at the keyboard: light or dark, with motion or without. Remembered from one time to the next. */
final class Look {
    private static final String DARK = "dark";
    private static final String MOTION = "motion";

    private final Path memory;
    private final ReadOnlyBooleanWrapper dark = new ReadOnlyBooleanWrapper();
    private final ReadOnlyBooleanWrapper motion = new ReadOnlyBooleanWrapper(true);

    /**
     * @param memory the file that remembers; it need not exist
     */
    Look(Path memory) {
        this.memory = memory;
        if (Files.isRegularFile(memory)) {
            Properties kept = new Properties();
            try (Reader in = Files.newBufferedReader(memory, StandardCharsets.UTF_8)) {
                kept.load(in);
            } catch (IOException | IllegalArgumentException e) {
                kept.clear();
            }
            dark.set(Boolean.parseBoolean(kept.getProperty(DARK, "false")));
            motion.set(Boolean.parseBoolean(kept.getProperty(MOTION, "true")));
        }
    }

    /** {@return the look of whoever runs the program} */
    static Look ofUser() {
        return new Look(Path.of(System.getProperty("user.home", "."), ".ouzelbook", "look.properties"));
    }

    /** {@return whether the ground is dark} */
    ReadOnlyBooleanProperty dark() {
        return dark.getReadOnlyProperty();
    }

    /** {@return whether things move to keep one's bearings} */
    ReadOnlyBooleanProperty motion() {
        return motion.getReadOnlyProperty();
    }

    /** {@return the colours of the strip} */
    Palette palette() {
        return dark.get() ? Palette.DARK : Palette.LIGHT;
    }

    /** Changes from light to dark, or back. */
    void switchDark() {
        dark.set(!dark.get());
        remember();
    }

    /** Lets things move, or keeps them still. */
    void switchMotion() {
        motion.set(!motion.get());
        remember();
    }

    /** A memory that cannot be written costs a convenience, not a record, so it is let be. */
    private void remember() {
        Properties kept = new Properties();
        kept.setProperty(DARK, String.valueOf(dark.get()));
        kept.setProperty(MOTION, String.valueOf(motion.get()));
        try {
            Files.createDirectories(memory.toAbsolutePath().getParent());
            try (Writer out = Files.newBufferedWriter(memory, StandardCharsets.UTF_8)) {
                kept.store(out, null);
            }
        } catch (IOException e) {
            kept.clear();
        }
    }
}
