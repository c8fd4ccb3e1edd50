package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.time.Year;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.NestSite;
import org.ouzelbook.tracker.domain.NestStage;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.river.MeasuredLine;
import org.ouzelbook.tracker.river.RiverNetwork;

/** Records as scripts read them, one record type for each kind that has no answer of its own. */
public final class ShownRecords {
    private ShownRecords() {}

    /**
     * A river.
     *
     * @param river its name
     * @param mouthOn the river that it joins
     * @param mouthKm where on that river
     * @param fromKm lower end of its newest line
     * @param toKm upper end of its newest line
     * @param lengthKm length of its newest line, in km
     * @param lineVersion version of that line
     * @param source where that line came from
     */
    public record RiverLine(
            String river,
            Optional<String> mouthOn,
            Optional<Chainage> mouthKm,
            Optional<Chainage> fromKm,
            Optional<Chainage> toKm,
            Optional<Double> lengthKm,
            Optional<Integer> lineVersion,
            Optional<String> source) {
        static RiverLine of(River river, RiverNetwork network) {
            Optional<org.ouzelbook.tracker.domain.RiverLine> line = network.line(river.id());
            Optional<MeasuredLine> measured = line.map(MeasuredLine::of);
            return new RiverLine(
                    river.name(),
                    river.mouth().map(mouth -> network.river(mouth.riverId()).name()),
                    river.mouth().map(River.Confluence::chainage),
                    measured.map(one -> one.extent().lower()),
                    measured.map(one -> one.extent().upper()),
                    measured.map(one -> one.length() / 1000),
                    line.map(org.ouzelbook.tracker.domain.RiverLine::version),
                    line.map(org.ouzelbook.tracker.domain.RiverLine::source));
        }
    }

    /**
     * A landmark.
     *
     * @param landmark its name
     * @param kind what it is
     * @param river name of its river
     * @param km distance from the mouth
     * @param uncertaintyMetres how well the km is known, in metres
     * @param aliases other names
     * @param nestSite whether birds are known to nest there
     */
    public record LandmarkLine(
            String landmark,
            LandmarkKind kind,
            String river,
            Chainage km,
            double uncertaintyMetres,
            List<String> aliases,
            boolean nestSite) {
        static LandmarkLine of(Landmark landmark, String river) {
            return new LandmarkLine(
                    landmark.name(),
                    landmark.kind(),
                    river,
                    landmark.place().chainage(),
                    landmark.place().uncertaintyMetres(),
                    landmark.aliases(),
                    landmark.nestSite());
        }
    }

    /**
     * A reach.
     *
     * @param reach its name
     * @param river name of its river
     * @param fromKm lower end
     * @param toKm upper end
     * @param lengthKm its length, in km
     */
    public record ReachLine(String reach, String river, Chainage fromKm, Chainage toKm, double lengthKm) {
        static ReachLine of(Reach reach, String river) {
            return new ReachLine(
                    reach.name(),
                    river,
                    reach.stretch().lower(),
                    reach.stretch().upper(),
                    reach.stretch().length() / 1000);
        }
    }

    /**
     * A nest, and how its last check found it.
     *
     * @param nest its label
     * @param river name of its river
     * @param km distance from the mouth
     * @param bank the side, looking downstream
     * @param species whose it is
     * @param site what it is built on
     * @param heightMetres height above the water, in metres
     * @param found the date when it was found
     * @param checks how many checks it had
     * @param lastCheck the date of the last
     * @param lastStage what that found
     * @param outcome how the attempt ended, as the last check that says so
     * @param note anything else
     */
    public record NestLine(
            String nest,
            String river,
            Chainage km,
            Bank bank,
            Species species,
            NestSite site,
            OptionalDouble heightMetres,
            Optional<LocalDate> found,
            int checks,
            Optional<LocalDate> lastCheck,
            Optional<NestStage> lastStage,
            Optional<NestOutcome> outcome,
            String note) {
        static NestLine of(Nest nest, String river, List<NestCheck> checks) {
            Optional<NestCheck> last = checks.isEmpty() ? Optional.empty() : Optional.of(checks.get(checks.size() - 1));
            return new NestLine(
                    nest.label(),
                    river,
                    nest.place().chainage(),
                    nest.place().bank(),
                    nest.species(),
                    nest.site(),
                    nest.heightMetres(),
                    nest.found(),
                    checks.size(),
                    last.map(NestCheck::date),
                    last.map(NestCheck::stage),
                    checks.stream().flatMap(check -> check.outcome().stream()).reduce((earlier, later) -> later),
                    nest.note());
        }
    }

    /**
     * A ringed bird.
     *
     * @param bird its label
     * @param leftUpper rings above the joint of the left leg
     * @param leftLower rings below it
     * @param rightUpper rings above the joint of the right leg
     * @param rightLower rings below it
     * @param ring number of the metal ring
     * @param sex its sex
     * @param hatched the year in which it hatched
     * @param ringed the date when it was ringed
     * @param note anything else
     */
    public record BirdLine(
            String bird,
            String leftUpper,
            String leftLower,
            String rightUpper,
            String rightLower,
            String ring,
            Sex sex,
            Optional<Year> hatched,
            Optional<LocalDate> ringed,
            String note) {
        static BirdLine of(RingedBird bird) {
            return new BirdLine(
                    bird.label(),
                    bird.leftUpper(),
                    bird.leftLower(),
                    bird.rightUpper(),
                    bird.rightLower(),
                    bird.ring(),
                    bird.sex(),
                    bird.hatched(),
                    bird.ringed(),
                    bird.note());
        }
    }

    /**
     * A kick sample.
     *
     * @param sample its label
     * @param date the local date
     * @param river name of its river
     * @param km distance from the mouth
     * @param minutes active kicking time, in minutes
     * @param sampler who took it
     * @param method how it was taken
     * @param taxa what was found, in the order of the sheet
     * @param note anything else
     */
    public record SampleLine(
            String sample,
            LocalDate date,
            String river,
            Chainage km,
            OptionalDouble minutes,
            String sampler,
            String method,
            List<KickSample.Taxon> taxa,
            String note) {
        static SampleLine of(KickSample sample, String river) {
            return new SampleLine(
                    sample.label(),
                    sample.date(),
                    river,
                    sample.place().chainage(),
                    sample.minutes(),
                    sample.sampler(),
                    sample.method(),
                    sample.taxa(),
                    sample.note());
        }
    }

    /**
     * A file that was imported.
     *
     * @param file its name
     * @param rows how many of its rows have records in the book now
     * @param sha256 the SHA-256 of its bytes
     */
    public record FileLine(String file, int rows, String sha256) {}
}
