package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatNoException;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** What {@code open} says before any window is shown; the window itself is tested where it is made. */
class OpenCommandTest {
    @Test
    void saysThatThereIsNoBookBeforeItAsksForADisplay(@TempDir Path folder) {
        CommandRun run = CommandRun.of("open", folder.resolve("nowhere.mv.db"));

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.err()).contains("nowhere.mv.db");
    }

    /** Without a book the window begins where one is chosen or begun. */
    @Test
    void wantsNoBook() {
        assertThatNoException().isThrownBy(() -> new CommandLine(new OpenCommand(Terminal.ofSystem())).parseArgs());
    }

    @Test
    void missesADisplayOnlyWhereNoneIsNamed() {
        assertThat(Display.missing("Linux", name -> "")).isPresent();
        assertThat(Display.missing("Linux", name -> name.equals("DISPLAY") ? ":1" : ""))
                .isEmpty();
        assertThat(Display.missing("Linux", name -> name.equals("WAYLAND_DISPLAY") ? "wayland-0" : ""))
                .isEmpty();
        assertThat(Display.missing("Windows 11", name -> "")).isEmpty();
    }
}
