package org.ouzelbook.ui.cli;

import java.time.DateTimeException;
import java.time.MonthDay;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.ui.app.WrongRequest;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;

/** The mapping rules that can be set, for every command that counts territories. What is not given keeps its usual value. */
final class RuleOptions {
    @Option(names = "--minimum-registrations", paramLabel = "NUMBER")
    private @Nullable Integer minimumRegistrations;

    @Option(names = "--spread-days", paramLabel = "DAYS")
    private @Nullable Integer spreadDays;

    @Option(names = "--max-length-km", paramLabel = "KM")
    private @Nullable Double maximumLengthKm;

    @Option(names = "--season-from", paramLabel = "MM-DD", converter = DayOfYear.class)
    private @Nullable MonthDay seasonFrom;

    @Option(names = "--season-to", paramLabel = "MM-DD", converter = DayOfYear.class)
    private @Nullable MonthDay seasonTo;

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
        MonthDay from = seasonFrom == null ? usual.seasonFrom() : seasonFrom;
        MonthDay to = seasonTo == null ? usual.seasonTo() : seasonTo;
        if (from.isAfter(to)) {
            throw new WrongRequest(Message.of("cli.rules.seasonBackwards", DayOfYear.word(from), DayOfYear.word(to)));
        }
        MapSettings changed = usual.withSeason(from, to)
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

    /** A day of every year, as {@code 02-15}. */
    static final class DayOfYear implements ITypeConverter<MonthDay> {
        @Override
        public MonthDay convert(String day) {
            try {
                return MonthDay.parse("--" + day);
            } catch (DateTimeException e) {
                throw new WrongRequest(Message.of("cli.rules.dayOfYear", day));
            }
        }

        static String word(MonthDay day) {
            return day.toString().substring("--".length());
        }
    }
}
