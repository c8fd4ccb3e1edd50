package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class OuzelbookTest {
    @Test
    void explainsItselfWhenCalledBare() {
        CommandRun run = CommandRun.of();

        assertThat(run.exitCode()).isZero();
        assertThat(run.out()).contains("Usage: ouzelbook");
        assertThat(run.err()).isEmpty();
    }

    @Test
    void tellsItsVersion() {
        assertThat(CommandRun.of("--version").out()).startsWith("Ouzelbook ");
    }

    @Test
    void refusesAnUnknownCommandAsWrongUsage() {
        CommandRun run = CommandRun.of("mpa");

        assertThat(run.exitCode()).isEqualTo(2);
        assertThat(run.err()).startsWith("“mpa” is not a command.");
        assertThat(run.out()).isEmpty();
    }
}
