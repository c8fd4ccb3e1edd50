package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.ui.strip.Palette;

class LookTest {
    @TempDir
    private Path folder;

    @Test
    void isLightAndMovesUntilAskedOtherwise() {
        Look look = new Look(folder.resolve("look.properties"));

        assertThat(look.dark().get()).isFalse();
        assertThat(look.motion().get()).isTrue();
        assertThat(look.palette()).isSameAs(Palette.LIGHT);
    }

    @Test
    void remembersWhatWasChosen() {
        Path memory = folder.resolve("there").resolve("look.properties");
        Look look = new Look(memory);
        look.switchDark();
        look.switchMotion();

        Look later = new Look(memory);

        assertThat(later.palette()).isSameAs(Palette.DARK);
        assertThat(later.motion().get()).isFalse();
    }

    @Test
    void beginsAfreshWhereItsMemoryCannotBeRead() throws IOException {
        Path memory = folder.resolve("look.properties");
        Files.writeString(memory, "dark=\\u12");

        assertThat(new Look(memory).dark().get()).isFalse();
    }
}
