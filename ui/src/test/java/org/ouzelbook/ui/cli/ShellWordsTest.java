package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class ShellWordsTest {
    @Test
    void quotesOnlyWhatWouldFallApart() {
        assertThat(ShellWords.of("map", Path.of("demo/arrel-water.mv.db"), "--season", 2026))
                .isEqualTo("ouzelbook map demo/arrel-water.mv.db --season 2026");
        assertThat(ShellWords.of("map", "my river.mv.db", "--river", "Sorn Beck"))
                .isEqualTo("ouzelbook map \"my river.mv.db\" --river \"Sorn Beck\"");
    }
}
