package org.ouzelbook.ui.cli;

import org.jspecify.annotations.Nullable;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.ui.app.WrongRequest;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The mapping rules that can be set, for every command that counts territories. What is not given keeps its usual value. */
final class RuleOptions {
    @Option(names = "--minimum-registrations", paramLabel = "NUMBER")
    private @Nullable Integer minimumRegistrations;

    @Option(names = "--spread-days", paramLabel = "DAYS")
    private @Nullable Integer spreadDays;

    @Option(names = "--max-length-km", paramLabel = "KM")
    private @Nullable Double maximumLengthKm;

    @Mixin
    private SeasonWindow window = new SeasonWindow();

    /**
     * {@return the settings with what was given}
     *
     * @param usual the usual settings
     * @throws WrongRequest if a rule is out of its range
     */
    MapSettings change(MapSettings usual) {
        check(
                minimumRegistrations == null || minimumRegistrations >= 1,
                "--minimum-registrations",
                minimumRegistrations);
        check(spreadDays == null || spreadDays >= 0, "--spread-days", spreadDays);
        check(
                maximumLengthKm == null || (maximumLengthKm > 0 && maximumLengthKm <= 100),
                "--max-length-km",
                maximumLengthKm);
        MapSettings changed = window.change(usual)
                .withSpreadAndLength(
                        spreadDays == null ? usual.minimumSpreadDays() : spreadDays,
                        maximumLengthKm == null ? usual.maximumLengthMetres() : maximumLengthKm * 1000);
        return minimumRegistrations == null ? changed : changed.withMinimumRegistrations(minimumRegistrations);
    }

    private static void check(boolean right, String option, @Nullable Object value) {
        if (!right) {
            throw new WrongRequest(Message.of("cli.wrong.value", option, String.valueOf(value)));
        }
    }
}
