package org.ouzelbook.ui.cli;

import java.time.DateTimeException;
import java.time.MonthDay;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.ui.app.WrongRequest;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;

/** Which days of the year are in season, for every command that reads only those. */
final class SeasonWindow {
    @Option(names = "--season-from", paramLabel = "MM-DD", converter = DayOfYear.class)
    private @Nullable MonthDay seasonFrom;

    @Option(names = "--season-to", paramLabel = "MM-DD", converter = DayOfYear.class)
    private @Nullable MonthDay seasonTo;

    /**
     * {@return the settings with what was given}
     *
     * @param usual the usual settings
     * @throws WrongRequest if the season ends before it starts
     */
    MapSettings change(MapSettings usual) {
        MonthDay from = seasonFrom == null ? usual.seasonFrom() : seasonFrom;
        MonthDay to = seasonTo == null ? usual.seasonTo() : seasonTo;
        if (from.isAfter(to)) {
            throw new WrongRequest(Message.of("cli.rules.seasonBackwards", DayOfYear.word(from), DayOfYear.word(to)));
        }
        return usual.withSeason(from, to);
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
