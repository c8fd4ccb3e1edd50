package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import picocli.CommandLine.Model.CommandSpec;

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

    @Test
    void everyCommandIsExplainedWithExamples() {
        assertThat(HelpKeys.commandLine().getSubcommands()).isNotEmpty().allSatisfy((name, command) -> {
            CommandSpec spec = command.getCommandSpec();
            assertThat(spec.usageMessage().header()).as("header of " + name).isNotEmpty();
            assertThat(spec.usageMessage().footer()).as("examples of " + name).isNotEmpty();
            assertThat(spec.args())
                    .allSatisfy(argument -> assertThat(argument.description())
                            .as(name + " " + argument.paramLabel() + " " + argument)
                            .isNotEmpty());
        });
    }
}
