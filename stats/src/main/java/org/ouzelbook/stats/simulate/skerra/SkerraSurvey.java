package org.ouzelbook.stats.simulate.skerra;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.simulate.fieldwork.FieldSeason;
import org.ouzelbook.stats.simulate.fieldwork.NestSettings;
import org.ouzelbook.stats.simulate.fieldwork.Observer;
import org.ouzelbook.stats.simulate.fieldwork.RingingSettings;
import org.ouzelbook.stats.simulate.fieldwork.SurveySettings;
import org.ouzelbook.stats.simulate.fieldwork.Walk;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

/** Ten seasons of fieldwork on Skerra: who walked what, when, and how often it went wrong. */
final class SkerraSurvey {
    private static final Observer ET = new Observer("E.T.", 0.3);
    private static final Observer MO = new Observer("M.O.", 0.1);
    private static final Observer RH = new Observer("R.H.", -0.35);
    private static final Observer JP = new Observer("J.P.", 0.05);
    private static final int DAYS_BETWEEN_ROUNDS = 18;

    private SkerraSurvey() {}

    static SurveySettings settings(Skerra skerra) {
        return new SurveySettings(
                skerra.courses(),
                SkerraLife.followed(),
                List.of(
                        season(2017, 22, 5, ET, ET, MO, 0.05, 0.1, 0.03),
                        season(2018, 24, 6, ET, ET, MO, 0.05, 0.1, 0.03),
                        season(2019, 21, 5, ET, MO, MO, 0.08, 0.12, 0.05),
                        season(2020, 29, 1, ET, MO, MO, 0, 0, 0),
                        season(2021, 23, 6, ET, MO, MO, 0.06, 0.1, 0.03),
                        season(2022, 20, 6, MO, RH, RH, 0.06, 0.12, 0.05),
                        season(2023, 25, 4, MO, RH, RH, 0.06, 0.15, 0.05),
                        season(2024, 18, 7, JP, RH, MO, 0.06, 0.1, 0.05),
                        season(2025, 24, 5, JP, RH, MO, 0.1, 0.12, 0.06),
                        season(2026, 19, 6, JP, RH, MO, 0.04, 0.1, 0.03)),
                Optional.of(new RingingSettings(
                        Species.DIPPER, 2019, 2026, 0.4, 0.15, List.of("R", "Y", "G", "W", "B", "O"), 0.4, 0.12)),
                Optional.of(new NestSettings(Species.DIPPER, 0.6, 8, 0.75, 0.75)),
                Optional.of(SkerraBed.kicks()));
    }

    private static FieldSeason season(
            int season,
            int februaryDay,
            int rounds,
            Observer lower,
            Observer upper,
            Observer beck,
            double missed,
            double partial,
            double poor) {
        List<LocalDate> days = new ArrayList<>();
        for (int round = 0; round < rounds; round++) {
            days.add(LocalDate.of(season, 2, februaryDay).plusDays((long) round * DAYS_BETWEEN_ROUNDS + round % 3));
        }
        List<Walk> walks = List.of(
                new Walk("L", Skerra.ARREL, Stretch.ofKm(0, 8.9), Direction.UPSTREAM, List.of(lower), 0),
                new Walk("U", Skerra.ARREL, Stretch.ofKm(8.9, 17.6), Direction.UPSTREAM, List.of(upper), 1),
                new Walk("S", Skerra.SORN, Stretch.ofKm(0, 7), Direction.DOWNSTREAM, List.of(beck), 2));
        return new FieldSeason(season, days, walks, missed, partial, poor);
    }
}
