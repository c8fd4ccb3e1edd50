package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FailuresTest {
    @TempDir
    private Path folder;

    @Test
    void suggestsTheCommandThatWasMeant() {
        CommandRun run = CommandRun.of("mpa");

        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).contains("“mpa” is not a command. Did you mean", "map", "ouzelbook --help");
    }

    @Test
    void suggestsTheOptionThatWasMeant() {
        CommandRun run = CommandRun.of("map", "book", "--seson", "2026");

        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err())
                .contains("“--seson” is not understood here. Did you mean --season", "ouzelbook map --help");
    }

    @Test
    void asksForWhatIsMissing() {
        CommandRun run = CommandRun.of("map");

        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).startsWith("Please give BOOK.");
    }

    @Test
    void saysWhichValueAnOptionCannotHave() {
        assertThat(CommandRun.of("map", "book", "--season", "last").err()).startsWith("--season cannot be “last”.");
        assertThat(CommandRun.of("map", "book", "--species", "robin").err())
                .startsWith("“robin” is no species that the book knows.");
        assertThat(CommandRun.of("map", "book", "--from", "31.2.2026").err()).startsWith("“31.2.2026” is not a day.");
        assertThat(CommandRun.of("map", "book", "--level", "95").err()).startsWith("“95” is not a confidence level.");
    }

    @Test
    void callsABookThatIsNotThereAProblemOfTheData() {
        CommandRun run = CommandRun.of("map", folder.resolve("nowhere.mv.db"));

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.err()).contains("nowhere.mv.db").doesNotContain("Exception", "\tat ");
        assertThat(run.out()).isEmpty();
    }

    @Test
    void writesDownWhatNobodyForesaw() throws IOException {
        String words = Failures.unforeseen(new IllegalStateException("river ran uphill"), List.of("map", "book"));
        Path details = Path.of(words.replaceFirst("(?s).*written to (.*?\\.txt).*", "$1"));

        assertThat(words).doesNotContain("Exception");
        assertThat(Files.readString(details)).contains("ouzelbook map book", "river ran uphill", "\tat ");
        Files.delete(details);
    }
}
