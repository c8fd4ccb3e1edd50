package org.ouzelbook.stats.simulate.fieldwork;

import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.simulate.nature.Course;
import org.ouzelbook.stats.simulate.nature.Nature;

/**
 * Everything a simulated survey is made from, except chance.
 *
 * @param courses the rivers
 * @param followed the species that live there and are looked for
 * @param seasons the field seasons, in order; at least one
 * @param ringing the ringing project, if there is one
 * @param nests how nests are looked after, if they are
 * @param kicks the kick samples, if any are taken
 */
public record SurveySettings(
        List<Course> courses,
        List<Followed> followed,
        List<FieldSeason> seasons,
        Optional<RingingSettings> ringing,
        Optional<NestSettings> nests,
        Optional<KickPlan> kicks) {
    /**
     * Copies the lists.
     *
     * @throws IllegalArgumentException if there is no season
     */
    public SurveySettings {
        courses = List.copyOf(courses);
        followed = List.copyOf(followed);
        seasons = List.copyOf(seasons);
        if (seasons.isEmpty()) {
            throw new IllegalArgumentException("A survey has at least one season");
        }
    }

    int firstSeason() {
        return seasons.get(0).season();
    }

    int lastSeason() {
        return seasons.get(seasons.size() - 1).season();
    }

    /**
     * A species, how it lives and how it is found.
     *
     * @param nature how it lives
     * @param detection how it is found
     */
    public record Followed(Nature nature, Detection detection) {}
}
