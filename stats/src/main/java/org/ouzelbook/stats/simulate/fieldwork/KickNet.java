package org.ouzelbook.stats.simulate.fieldwork;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.stats.simulate.nature.RiverBed;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Place;

/** The kick samples that were taken: Poisson counts about an expectation that varies from sample to sample. */
final class KickNet {
    private static final double BETWEEN_SAMPLES_LOG_SD = 0.35;

    private KickNet() {}

    static List<KickSample> of(KickPlan plan, int firstSeason, int lastSeason, Draws draws) {
        List<KickSample> samples = new ArrayList<>();
        for (int season = firstSeason; season <= lastSeason; season++) {
            addRound(samples, plan, plan.spring().atYear(season), "S", draws);
            addRound(samples, plan, plan.autumn().atYear(season), "A", draws);
        }
        return samples;
    }

    private static void addRound(List<KickSample> samples, KickPlan plan, LocalDate usual, String time, Draws draws) {
        LocalDate day = usual.plusDays(Math.round(draws.branch("kick", usual).between(-6, 6)));
        for (KickPlan.Site site : plan.sites()) {
            Draws chance = draws.branch("kick", usual, site.label());
            if (!chance.happens(plan.missed())) {
                samples.add(sample(plan, site, day, site.label() + "-" + day.getYear() + time, chance));
            }
        }
    }

    private static KickSample sample(KickPlan plan, KickPlan.Site site, LocalDate day, String label, Draws chance) {
        List<KickSample.Taxon> taxa = new ArrayList<>();
        for (RiverBed.Family family : plan.bed().families()) {
            double mean = plan.bed().expected(family, site.riverId(), site.at(), day);
            int count = chance.branch(family.name()).poisson(chance.logNormal(mean, BETWEEN_SAMPLES_LOG_SD));
            if (count > 0) {
                taxa.add(new KickSample.Taxon(family.name(), Integer.toString(count)));
            }
        }
        return new KickSample(
                chance.key(),
                label,
                day,
                new Place(site.riverId(), site.at(), Bank.UNKNOWN, 20, 1),
                OptionalDouble.of(plan.minutes()),
                plan.method(),
                plan.sampler(),
                "",
                taxa);
    }
}
