package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Species;

/** What the window remembers. */
class DeskTest {
    @TempDir
    private Path folder;

    @Test
    void remembersWhereTheWindowStoodAndWhatWasLookedAt() {
        Path memory = folder.resolve("deep").resolve("window.properties");
        Path book = folder.resolve("arrel: a|b=c.mv.db");
        Desk desk = new Desk(memory);
        desk.keep(new Desk.Place(10, 20, 1400, 800, true));
        desk.keep(book, new Desk.View(Species.KINGFISHER, 2024));

        Desk later = new Desk(memory);

        assertThat(later.place()).contains(new Desk.Place(10, 20, 1400, 800, true));
        assertThat(later.view(book)).contains(new Desk.View(Species.KINGFISHER, 2024));
        assertThat(later.view(folder.resolve("other.mv.db"))).isEmpty();
    }

    @Test
    void takesNoNonsenseFromItsFile() throws IOException {
        Path memory = folder.resolve("window.properties");
        Files.writeString(memory, "stand-x=far\nstand-y=0\nstand-width=3\nstand-height=\n");
        assertThat(new Desk(memory).place()).isEmpty();

        Files.writeString(memory, "stand-x=0\nstand-y=0\nstand-width=3\nstand-height=4\n");
        assertThat(new Desk(memory).place()).isEmpty();

        Files.writeString(memory, "stand-x=\\u00zz");
        assertThat(new Desk(memory).place()).isEmpty();
    }
}
