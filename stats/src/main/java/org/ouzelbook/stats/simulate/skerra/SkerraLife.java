package org.ouzelbook.stats.simulate.skerra;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.UUID;
import org.ouzelbook.stats.simulate.fieldwork.Detection;
import org.ouzelbook.stats.simulate.fieldwork.SurveySettings.Followed;
import org.ouzelbook.stats.simulate.nature.BreedingSettings;
import org.ouzelbook.stats.simulate.nature.Conditions;
import org.ouzelbook.stats.simulate.nature.Flood;
import org.ouzelbook.stats.simulate.nature.Nature;
import org.ouzelbook.stats.simulate.nature.NestingSite;
import org.ouzelbook.stats.simulate.nature.PopulationSettings;
import org.ouzelbook.stats.simulate.nature.SeasonEffect;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.NestSite;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * The birds of Skerra and what befell them: a dry summer in 2018, sheep dip in Sorn Beck in October 2021, a spate in April
 * 2025. Dates of the other species are general handbook knowledge, from memory.
 */
final class SkerraLife {
    private static final Stretch WHOLE_ARREL = Stretch.ofKm(0, 18.5);
    private static final Stretch WHOLE_SORN = Stretch.ofKm(0, 7.5);
    private static final Stretch SORN_BELOW_THE_DIP = Stretch.ofKm(0, 4.15);
    private static final Stretch ARREL_BELOW_SORN = Stretch.ofKm(2, 7);

    private SkerraLife() {}

    static List<Followed> followed() {
        return List.of(dippers(), wagtails(), kingfishers(), sandpipers());
    }

    private static Followed dippers() {
        List<NestingSite> sites = List.of(
                arrel("Harbour Bridge", 0.80, NestSite.BRIDGE, 0.2),
                arrel("Mill Bridge", 2.45, NestSite.BRIDGE, 0.8),
                arrel("Otter Stone", 3.90, NestSite.ROCK, 0.6),
                arrel("Alder Wall", 4.60, NestSite.WALL, -0.3),
                arrel("Kirk Bridge", 5.50, NestSite.BRIDGE, 1.0),
                arrel("Beckfoot", 6.82, NestSite.TREE, 1.3),
                arrel("Stepping Stones", 7.80, NestSite.BANK, -0.2),
                arrel("Long Weir", 8.90, NestSite.WEIR, 1.0),
                arrel("Heron Rock", 9.85, NestSite.ROCK, 0.2),
                arrel("Quarry Wall", 10.60, NestSite.WALL, 0.1),
                arrel("Drovers' Bridge", 11.40, NestSite.BRIDGE, 0.9),
                arrel("Twin Boulders", 12.50, NestSite.ROCK, 0),
                arrel("Salmon Leap", 13.30, NestSite.FALL, 0.8),
                arrel("Old Sluice", 14.10, NestSite.WALL, 0.1),
                arrel("Larch Bridge", 15.00, NestSite.BRIDGE, 0.6),
                arrel("Shepherd's Ford", 15.90, NestSite.BANK, -0.6),
                arrel("Peat Falls", 16.70, NestSite.FALL, 0.3),
                arrel("Moss Crag", 17.72, NestSite.ROCK, 1.6),
                sorn("Sorn Bridge", 0.90, NestSite.BRIDGE, 0.5),
                sorn("Bobbin Mill", 1.60, NestSite.WALL, 0.5),
                sorn("Aqueduct", 2.40, NestSite.BRIDGE, 0.9),
                sorn("White Linn", 3.20, NestSite.FALL, 0.4),
                sorn("Dipping Pool", 4.10, NestSite.BANK, -0.2),
                sorn("Cuckoo Bridge", 5.00, NestSite.BRIDGE, 0.6),
                sorn("Little Force", 5.90, NestSite.FALL, 0.2),
                sorn("Top Fold", 6.70, NestSite.WALL, -0.6));
        PopulationSettings usual = PopulationSettings.dipper();
        PopulationSettings population = new PopulationSettings(
                0.65,
                0.82,
                0.34,
                usual.closestMetres(),
                usual.medianLengthMetres(),
                usual.lengthLogSd(),
                usual.yearlyLogSd(),
                1500,
                usual.grownSurvival(),
                usual.homeRecruits());
        return new Followed(
                new Nature(Species.DIPPER, sites, population, BreedingSettings.dipper(), dipperSeasons()),
                Detection.dipper());
    }

    private static Conditions dipperSeasons() {
        return new Conditions(
                List.of(
                        new SeasonEffect(2019, 2019, Skerra.ARREL, WHOLE_ARREL, -0.3, -0.4, -0.4, 1),
                        new SeasonEffect(2019, 2019, Skerra.SORN, WHOLE_SORN, -0.5, -0.8, -0.6, 1),
                        new SeasonEffect(2022, 2022, Skerra.SORN, SORN_BELOW_THE_DIP, -0.8, -5, -6, 2),
                        new SeasonEffect(2023, 2023, Skerra.SORN, SORN_BELOW_THE_DIP, 0, -1.5, -3, 1.5),
                        new SeasonEffect(2024, 2024, Skerra.SORN, SORN_BELOW_THE_DIP, 0, 0, -1.2, 1.2),
                        new SeasonEffect(2022, 2022, Skerra.ARREL, ARREL_BELOW_SORN, -0.5, -3.2, -4, 1.6),
                        new SeasonEffect(2023, 2023, Skerra.ARREL, ARREL_BELOW_SORN, 0, -0.8, -2, 1.2)),
                List.of(new Flood(LocalDate.of(2025, 4, 14), 0.6)));
    }

    private static Followed wagtails() {
        List<NestingSite> sites = List.of(
                arrel("Mill Weir", 2.70, NestSite.WEIR, 0.6),
                arrel("Kirk Bridge", 5.52, NestSite.BRIDGE, 0.3),
                arrel("Long Weir", 8.92, NestSite.WEIR, 0.8),
                arrel("Quarry Wall", 10.62, NestSite.WALL, 0.2),
                arrel("Salmon Leap", 13.25, NestSite.ROCK, 0.4),
                arrel("Old Sluice", 14.12, NestSite.WALL, 0),
                sorn("Bobbin Mill", 1.62, NestSite.WALL, 0.6),
                sorn("White Linn", 3.15, NestSite.ROCK, 0.2),
                sorn("Little Force", 5.85, NestSite.ROCK, 0));
        PopulationSettings population = new PopulationSettings(0.6, 0.75, 0.4, 500, 700, 0.25, 0.15, 1300, 0.5, 0.1);
        BreedingSettings breeding = new BreedingSettings(
                MonthDay.of(4, 22), 8, 0.5, 4.9, 0.6, 13, 13, 12, 0.012, 0.6, 0.5, MonthDay.of(6, 25));
        Detection detection =
                new Detection(0.8, 0.4, MonthDay.of(5, 5), 0.5, 0.3, 0.55, 120, 0.3, 0.04, 0.02, 15, 0.015, 0.05);
        return new Followed(
                new Nature(Species.GREY_WAGTAIL, sites, population, breeding, Conditions.even()), detection);
    }

    private static Followed kingfishers() {
        List<NestingSite> sites = List.of(
                arrel("the sand bank below Mill Weir", 2.10, NestSite.BANK, 1.8),
                arrel("the high bank above Stepping Stones", 8.20, NestSite.BANK, 0.8));
        PopulationSettings population = new PopulationSettings(0.6, 0.65, 0.4, 2000, 2600, 0.2, 0.15, 4000, 0.3, 0.05);
        BreedingSettings breeding =
                new BreedingSettings(MonthDay.of(4, 18), 9, 0, 6.2, 0.7, 20, 25, 4, 0.008, 0.6, 0.5, MonthDay.of(7, 1));
        Detection detection =
                new Detection(0.5, 0.4, MonthDay.of(4, 15), 0.2, 0.2, 0.4, 200, 0.3, 0.1, 0, 20, 0.006, 0.04);
        return new Followed(new Nature(Species.KINGFISHER, sites, population, breeding, Conditions.even()), detection);
    }

    private static Followed sandpipers() {
        List<NestingSite> sites = List.of(
                arrel("the shingle below Twin Boulders", 12.20, NestSite.OTHER, 0.4),
                arrel("the island above Old Sluice", 14.60, NestSite.OTHER, 0.3),
                arrel("the gravel at Shepherd's Ford", 15.95, NestSite.OTHER, 0.5));
        PopulationSettings population = new PopulationSettings(0.7, 0.75, 0.4, 500, 700, 0.2, 0.15, 1200, 0.75, 0.1);
        BreedingSettings breeding =
                new BreedingSettings(MonthDay.of(5, 10), 5, 0, 3.9, 0.3, 21, 0, 25, 0.012, 0.3, 0, MonthDay.of(6, 10));
        Detection detection =
                new Detection(0.85, 0.3, MonthDay.of(5, 20), 3.2, 0.3, 0.5, 120, 0.3, 0.1, 0.03, 15, 0, 0.03);
        return new Followed(
                new Nature(Species.COMMON_SANDPIPER, sites, population, breeding, Conditions.even()), detection);
    }

    private static NestingSite arrel(String name, double km, NestSite kind, double quality) {
        return site(name, Skerra.ARREL, km, kind, quality);
    }

    private static NestingSite sorn(String name, double km, NestSite kind, double quality) {
        return site(name, Skerra.SORN, km, kind, quality);
    }

    private static NestingSite site(String name, UUID riverId, double km, NestSite kind, double quality) {
        Bank bank = Math.round(km * 100) % 3 == 0 ? Bank.LEFT : Bank.RIGHT;
        return new NestingSite(name, riverId, new Chainage(Math.round(km * 1000)), bank, kind, quality);
    }
}
