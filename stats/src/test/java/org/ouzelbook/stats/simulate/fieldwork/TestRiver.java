package org.ouzelbook.stats.simulate.fieldwork;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.stats.simulate.nature.BreedingSettings;
import org.ouzelbook.stats.simulate.nature.Conditions;
import org.ouzelbook.stats.simulate.nature.Course;
import org.ouzelbook.stats.simulate.nature.Nature;
import org.ouzelbook.stats.simulate.nature.NestingSite;
import org.ouzelbook.stats.simulate.nature.PopulationSettings;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

/** A plain river of 12 km with dippers, walked whole by one observer five times a season. */
final class TestRiver {
    static final UUID ID = new UUID(1, 1);

    private TestRiver() {}

    static SurveySettings settings(int seasons, double missed, double partial) {
        Course course = new Course(new River(ID, "Test River", Optional.empty()), 12_000);
        Nature dippers = new Nature(
                Species.DIPPER,
                NestingSite.along(course, 750, 0.35, 0.5, Draws.of(3)),
                PopulationSettings.dipper(),
                BreedingSettings.dipper(),
                Conditions.even());
        Walk walk = new Walk("", ID, Stretch.ofKm(0, 12), Direction.UPSTREAM, List.of(new Observer("AA", 0)), 0);
        List<FieldSeason> plans = new ArrayList<>();
        for (int season = 2001; season < 2001 + seasons; season++) {
            LocalDate first = LocalDate.of(season, 2, 25);
            List<LocalDate> rounds =
                    List.of(first, first.plusDays(18), first.plusDays(36), first.plusDays(54), first.plusDays(72));
            plans.add(new FieldSeason(season, rounds, List.of(walk), missed, partial, 0));
        }
        return new SurveySettings(
                List.of(course),
                List.of(new SurveySettings.Followed(dippers, Detection.dipper())),
                plans,
                Optional.empty(),
                Optional.of(new NestSettings(Species.DIPPER, 0.7, 7, 0.8, 0.7)),
                Optional.empty());
    }
}
