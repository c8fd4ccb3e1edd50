package org.ouzelbook.stats.estimator.occupancy;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.likelihood.Covariate;
import org.ouzelbook.stats.estimator.likelihood.Design;
import org.ouzelbook.stats.estimator.likelihood.Parts;

/**
 * What each part of an occupancy model depends on; without covariates it is constant.
 *
 * @param occupancy of occupancy in the first season: a row for each site
 * @param colonisation of colonisation between seasons: a row for each site and each season but the last, the seasons of a site
 *     together
 * @param extinction of local extinction between seasons: the same rows
 * @param detection of detection: a row for each visit
 */
public record OccupancyModel(
        List<Covariate> occupancy,
        List<Covariate> colonisation,
        List<Covariate> extinction,
        List<Covariate> detection) {
    /** Name of the first part. */
    public static final String OCCUPANCY = "occupancy";
    /** Name of the second part, of many seasons. */
    public static final String COLONISATION = "colonisation";
    /** Name of the third part, of many seasons. */
    public static final String EXTINCTION = "extinction";
    /** Name of the last part. */
    public static final String DETECTION = "detection";

    /** Copies the lists. */
    public OccupancyModel {
        occupancy = List.copyOf(occupancy);
        colonisation = List.copyOf(colonisation);
        extinction = List.copyOf(extinction);
        detection = List.copyOf(detection);
    }

    /** {@return the model in which everything is constant} */
    public static OccupancyModel constant() {
        return new OccupancyModel(List.of(), List.of(), List.of(), List.of());
    }

    /** {@return this model and all that have some of its parts constant instead, this one first} */
    public List<OccupancyModel> simpler() {
        Set<OccupancyModel> models = new LinkedHashSet<>();
        for (int kept = 15; kept >= 0; kept--) {
            models.add(new OccupancyModel(
                    (kept & 8) > 0 ? occupancy : List.of(),
                    (kept & 4) > 0 ? colonisation : List.of(),
                    (kept & 2) > 0 ? extinction : List.of(),
                    (kept & 1) > 0 ? detection : List.of()));
        }
        return List.copyOf(models);
    }

    /** The parts for these visits, or why they cannot be told apart: occupancy, the two of many seasons, detection. */
    Answer<Parts> parts(SiteVisits visits) {
        int changes = visits.sites() * (visits.seasons() - 1);
        List<Parts.Part> parts = new ArrayList<>();
        List<Wanted> wanted = new ArrayList<>();
        wanted.add(new Wanted(OCCUPANCY, occupancy, visits.sites()));
        if (visits.seasons() > 1) {
            wanted.add(new Wanted(COLONISATION, colonisation, changes));
            wanted.add(new Wanted(EXTINCTION, extinction, changes));
        }
        wanted.add(new Wanted(DETECTION, detection, visits.visits().size()));
        for (Wanted one : wanted) {
            Answer<Design> design = one.covariates.isEmpty()
                    ? Answer.of(Design.constant(one.rows))
                    : Design.of(one.rows, Covariate.columns(one.covariates));
            if (design instanceof Answer.NotEstimable<Design> not) {
                return new Answer.NotEstimable<>(not.because());
            }
            parts.add(new Parts.Part(one.name, design.found().orElseThrow()));
        }
        return Answer.of(Parts.of(parts.toArray(Parts.Part[]::new)));
    }

    private record Wanted(String name, List<Covariate> covariates, int rows) {}
}
