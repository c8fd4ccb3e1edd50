package org.ouzelbook.stats.simulate.skerra;

import static org.ouzelbook.stats.simulate.skerra.FieldTable.column;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Sex;

/** Landmarks, nests, rings and kick samples, each kept by one person for all the years. */
final class OtherTables {
    private final SkerraRecords records;

    OtherTables(SkerraRecords records) {
        this.records = records;
    }

    byte[] landmarks() {
        Style style = Style.SHEET;
        return new FieldTable<KnownPlace>(List.of(
                        column("name", KnownPlace::name),
                        column("river", place -> Skerra.name(place.riverId())),
                        column("km", place -> style.number(place.km(), 2)),
                        column("kind", KnownPlace::kindWord),
                        column("aliases", place -> String.join("; ", place.aliases())),
                        column("nest_site", place -> place.nests() ? "yes" : "no")))
                .tidy(style, KnownPlace.all());
    }

    byte[] nests() {
        Style style = Style.OFFICE;
        return new FieldTable<Nest>(List.of(
                        column("Nest No", Nest::label),
                        column("River", nest -> Skerra.name(nest.place().riverId())),
                        column(
                                "km",
                                nest -> style.number(nest.place().chainage().km(), 2)),
                        column("Bank", nest -> Words.full(nest.place().bank())),
                        column("Species", nest -> nest.species().englishName()),
                        column("Site", nest -> Words.full(nest.site())),
                        column(
                                "Height (m)",
                                nest -> style.number(nest.heightMetres().orElseThrow(), 1)),
                        column("Found", nest -> nest.found().map(style::day).orElse("")),
                        column("Notes", Nest::note)))
                .tidy(style, records.survey.nests());
    }

    byte[] nestChecks() {
        Style style = Style.OFFICE;
        Map<UUID, String> labels = records.survey.nests().stream().collect(Collectors.toMap(Nest::id, Nest::label));
        return new FieldTable<NestCheck>(List.of(
                        column(
                                "Nest No",
                                check -> Optional.ofNullable(labels.get(check.nestId()))
                                        .orElseThrow()),
                        column("Date", check -> style.day(check.date())),
                        column("Time", check -> check.time().map(style::clock).orElse("")),
                        column("Stage", check -> Words.full(check.stage())),
                        column("Eggs", check -> count(check.eggs())),
                        column("Young", check -> count(check.young())),
                        column(
                                "Outcome",
                                check -> check.outcome().map(Words::full).orElse("")),
                        column("Notes", NestCheck::note)))
                .tidy(style, records.survey.nestChecks());
    }

    private static String count(OptionalInt count) {
        return count.isPresent() ? Integer.toString(count.getAsInt()) : "";
    }

    byte[] ringedBirds() {
        Style style = Style.SHEET;
        return new FieldTable<RingedBird>(List.of(
                        column("bird", RingedBird::label),
                        column("left_upper", RingedBird::leftUpper),
                        column("left_lower", RingedBird::leftLower),
                        column("right_upper", RingedBird::rightUpper),
                        column("right_lower", RingedBird::rightLower),
                        column("ring", RingedBird::ring),
                        column("sex", bird -> bird.sex() == Sex.UNKNOWN ? "" : Words.full(bird.sex())),
                        column(
                                "hatched",
                                bird -> bird.hatched().map(Object::toString).orElse("")),
                        column("ringed", bird -> bird.ringed().map(style::day).orElse("")),
                        column("note", RingedBird::note)))
                .tidy(style, records.survey.ringedBirds());
    }

    byte[] kickSamples() {
        Style style = Style.OLD_OFFICE;
        List<SheetLine> lines = records.survey.kickSamples().stream()
                .flatMap(sample -> sample.taxa().stream().map(taxon -> new SheetLine(sample, taxon)))
                .toList();
        Function<SheetLine, KickSample> sample = SheetLine::sample;
        return new FieldTable<SheetLine>(List.of(
                        column("Sample", sample.andThen(KickSample::label)),
                        column("Date", line -> style.day(line.sample.date())),
                        column("River", line -> Skerra.name(line.sample.place().riverId())),
                        column(
                                "km",
                                line -> style.number(
                                        line.sample.place().chainage().km(), 1)),
                        column("Family", line -> line.taxon.name()),
                        column("Abundance", line -> line.taxon.abundance()),
                        column(
                                "Minutes",
                                line -> style.number(line.sample.minutes().orElseThrow(), 0)),
                        column("Method", sample.andThen(KickSample::method)),
                        column("Sampled by", sample.andThen(KickSample::sampler))))
                .tidy(style, lines);
    }

    private record SheetLine(KickSample sample, KickSample.Taxon taxon) {}
}
