package org.ouzelbook.stats.simulate.skerra;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import org.ouzelbook.stats.simulate.fieldwork.KickPlan;
import org.ouzelbook.stats.simulate.nature.RiverBed;
import org.ouzelbook.stats.simulate.nature.RiverBed.Family;
import org.ouzelbook.stats.simulate.nature.Spill;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Stretch;

/** The river bed of Skerra, and the sheep dip that killed its insects and shrimps but not its worms and snails. */
final class SkerraBed {
    private static final LocalDate DIP = LocalDate.of(2021, 10, 11);

    private SkerraBed() {}

    static KickPlan kicks() {
        List<KickPlan.Site> sites = List.of(
                new KickPlan.Site("A1", Skerra.ARREL, Chainage.ofKm(1.2)),
                new KickPlan.Site("A2", Skerra.ARREL, Chainage.ofKm(5.3)),
                new KickPlan.Site("A3", Skerra.ARREL, Chainage.ofKm(8.8)),
                new KickPlan.Site("A4", Skerra.ARREL, Chainage.ofKm(14.0)),
                new KickPlan.Site("S1", Skerra.SORN, Chainage.ofKm(0.4)),
                new KickPlan.Site("S2", Skerra.SORN, Chainage.ofKm(5.2)));
        List<Spill> spills = List.of(
                new Spill(DIP, Skerra.SORN, Stretch.ofKm(0, 4.15), 4.5, 330),
                new Spill(DIP, Skerra.ARREL, Stretch.ofKm(2, 6.95), 2.6, 250),
                new Spill(DIP, Skerra.ARREL, Stretch.ofKm(0, 1.99), 0.9, 200));
        return new KickPlan(
                new RiverBed(families(), spills),
                sites,
                MonthDay.of(4, 22),
                MonthDay.of(10, 20),
                3,
                "kick, 1 mm net, then 1 minute by hand",
                "S.K.",
                0.04);
    }

    private static List<Family> families() {
        return List.of(
                new Family("Baetidae", 120, 1.0),
                new Family("Heptageniidae", 60, 1.0),
                new Family("Ephemerellidae", 9, 1.0),
                new Family("Leptophlebiidae", 1.3, 1.0),
                new Family("Caenidae", 2.2, 0.8),
                new Family("Leuctridae", 22, 1.0),
                new Family("Perlodidae", 7, 1.0),
                new Family("Chloroperlidae", 2.5, 1.0),
                new Family("Nemouridae", 9, 0.9),
                new Family("Hydropsychidae", 34, 0.9),
                new Family("Rhyacophilidae", 9, 0.9),
                new Family("Polycentropodidae", 1.1, 0.9),
                new Family("Limnephilidae", 8, 0.8),
                new Family("Sericostomatidae", 5, 0.8),
                new Family("Lepidostomatidae", 1.6, 0.8),
                new Family("Gammaridae", 55, 1.0),
                new Family("Elmidae", 26, 0.6),
                new Family("Simuliidae", 40, 0.9),
                new Family("Tipulidae", 5, 0.4),
                new Family("Chironomidae", 60, 0.2),
                new Family("Ancylidae", 8, 0.0),
                new Family("Lymnaeidae", 0.8, 0.0),
                new Family("Planariidae", 1.4, 0.1),
                new Family("Glossiphoniidae", 0.6, 0.0),
                new Family("Sphaeriidae", 1.2, 0.0),
                new Family("Oligochaeta", 24, -0.12));
    }
}
