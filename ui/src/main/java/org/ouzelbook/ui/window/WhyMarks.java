package org.ouzelbook.ui.window;

import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.estimator.score.SampleScore;
import org.ouzelbook.stats.survey.BenthosScore;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.ui.app.ModelShading;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TrendWords;
import org.ouzelbook.ui.strip.BirdScene;
import org.ouzelbook.ui.strip.PlaceScene;
import org.ouzelbook.ui.strip.Subject;

/** What there is to say of a place, a bird, a sample, a nest, and of what the model makes of a territory. */
final class WhyMarks {
    private final BookContents contents;

    WhyMarks(BookContents contents) {
        this.contents = contents;
    }

    /** {@return what there is to say of a subject; empty if it is none of these, or is no longer there} */
    Optional<Explanation> of(Subject subject) {
        if (subject instanceof Subject.OfSample wanted) {
            return contents.records().kickSamples().stream()
                    .filter(sample -> sample.id().equals(wanted.id()))
                    .findFirst()
                    .map(this::sample);
        }
        if (subject instanceof Subject.OfNest wanted) {
            return contents.records().nests().stream()
                    .filter(nest -> nest.id().equals(wanted.id()))
                    .findFirst()
                    .map(this::nest);
        }
        if (subject instanceof Subject.OfRoom room) {
            return Optional.of(new Explanation(
                    Texts.of("window.why.room"),
                    Texts.of("window.why.placeOn", river(room.riverId()), room.water()),
                    List.of(new Explanation.Section("", List.of(Texts.of("window.why.roomMeans"))))));
        }
        if (subject instanceof Subject.OfRiver tributary) {
            return Optional.of(tributary(contents.records().rivers().river(tributary.id())));
        }
        if (subject instanceof Subject.OfUnwalked gap) {
            return Optional.of(unwalked(gap));
        }
        return subject instanceof Subject.OfCrowd crowd ? Optional.of(crowd(crowd)) : Optional.empty();
    }

    private String river(UUID id) {
        return contents.records().rivers().river(id).name();
    }

    private Explanation tributary(River tributary) {
        List<String> lines = new ArrayList<>();
        tributary
                .mouth()
                .ifPresent(mouth -> lines.add(
                        Texts.of("window.why.joins", tributary.name(), river(mouth.riverId()), mouth.chainage())));
        lines.add(Texts.of("window.why.folds"));
        return new Explanation(tributary.name(), "", List.of(new Explanation.Section("", lines)));
    }

    private Explanation unwalked(Subject.OfUnwalked gap) {
        List<String> lines = new ArrayList<>();
        lines.add(gap.day()
                .map(day -> Texts.of("window.why.unwalkedThen", contents.species(), day))
                .orElseGet(() -> Texts.of("window.why.unwalkedAll", contents.species(), Year.of(gap.season()))));
        lines.add(Texts.of("window.why.noAbsence"));
        return new Explanation(
                Texts.of("window.why.unwalked"),
                Texts.of("window.why.placeOn", river(gap.riverId()), gap.water()),
                List.of(new Explanation.Section("", lines)));
    }

    private Explanation crowd(Subject.OfCrowd crowd) {
        List<Sighting> all = contents.records().sightings().stream()
                .filter(sighting -> sighting.species().equals(contents.species())
                        && sighting.place().riverId().equals(crowd.riverId())
                        && crowd.water().contains(sighting.place().chainage())
                        && !sighting.date().isBefore(crowd.from())
                        && !sighting.date().isAfter(crowd.to()))
                .toList();
        List<String> lines =
                new ArrayList<>(all.stream().limit(20).map(this::line).toList());
        if (all.size() > lines.size()) {
            lines.add(Texts.of("window.why.more", all.size() - lines.size()));
        }
        return new Explanation(
                Texts.of("window.why.crowd", all.size()),
                Texts.of("window.why.placeOn", river(crowd.riverId()), crowd.water()),
                List.of(
                        new Explanation.Section("", List.of(Texts.of("window.why.crowdMeans"))),
                        new Explanation.Section(Texts.of("window.why.registrations"), lines)));
    }

    private String line(Sighting sighting) {
        String plain =
                Texts.of("window.why.line", sighting.date(), sighting.place().chainage(), sighting.count());
        return sighting.activities().isEmpty()
                ? plain
                : plain + " · "
                        + Texts.word(sighting.activities().stream().sorted().toList());
    }

    private Explanation sample(KickSample sample) {
        List<String> taxa = sample.taxa().stream()
                .map(taxon -> Texts.of("window.why.taxon", taxon.name(), taxon.abundance()))
                .toList();
        return new Explanation(
                Texts.of("window.why.sample", sample.label()),
                Texts.of(
                        "window.why.sampleWhere",
                        sample.date(),
                        river(sample.place().riverId()),
                        sample.place().chainage()),
                List.of(
                        new Explanation.Section("", scored(BenthosScore.sample(sample))),
                        new Explanation.Section(Texts.of("window.why.warnings"), cautions(sample)),
                        new Explanation.Section(Texts.of("window.why.taxa"), List.of(String.join(", ", taxa)))));
    }

    private static List<String> scored(BenthosScore.Sample scored) {
        SampleScore score = scored.score();
        List<String> lines = new ArrayList<>();
        lines.add(Texts.of(
                "window.why.score",
                score.score(),
                score.scoringTaxa(),
                score.average().isPresent() ? 1 : 0,
                score.average().orElse(0),
                score.unknown().isEmpty() ? 0 : 1));
        lines.add(Texts.of("window.why.ept", score.eptFamilies()));
        List<String> prey = score.prey().entrySet().stream()
                .map(one -> Texts.of(
                        "window.why.preyOf",
                        Texts.of("window.prey." + one.getKey().name()),
                        one.getValue().name()))
                .toList();
        lines.add(
                prey.isEmpty() ? Texts.of("window.why.noPrey") : Texts.of("window.why.prey", String.join(", ", prey)));
        scored.effort()
                .ifPresent(effort -> lines.add(Texts.of(
                        "window.why.effort", effort.minutes(), effort.method().isBlank() ? 0 : 1, effort.method())));
        return lines;
    }

    private static List<String> cautions(KickSample sample) {
        List<String> cautions = new ArrayList<>();
        cautions.add(Texts.of("window.why.sampleEffort"));
        BenthosScore.sample(sample).warnings().forEach(warning -> cautions.add(TrendWords.sentence(Texts.of(warning))));
        cautions.add(Texts.of("benthos.caution"));
        return cautions;
    }

    private Explanation nest(Nest nest) {
        List<String> checks = contents.records().nestChecks().stream()
                .filter(check -> check.nestId().equals(nest.id()))
                .sorted((one, other) -> one.date().compareTo(other.date()))
                .map(WhyMarks::check)
                .toList();
        return new Explanation(
                Texts.of("window.why.nest", nest.label()),
                Texts.of(
                        "window.why.nestWhere",
                        river(nest.place().riverId()),
                        nest.place().chainage(),
                        nest.site()),
                List.of(
                        new Explanation.Section("", List.of(Texts.of("window.why.nestPrivate"))),
                        new Explanation.Section(Texts.of("window.why.checks"), checks)));
    }

    private static String check(NestCheck check) {
        return Texts.of(
                "window.why.check",
                check.date(),
                check.stage(),
                check.eggs().isPresent() ? 1 : 0,
                check.eggs().orElse(0),
                check.young().isPresent() ? 1 : 0,
                check.young().orElse(0),
                check.outcome().map(Texts::word).map(word -> ", " + word).orElse(""));
    }

    /** {@return what there is to say of a place over the years} */
    Explanation place(PlaceScene scene) {
        List<String> years = new ArrayList<>();
        for (int year : scene.years()) {
            List<Visit> passing = scene.passingIn(year);
            years.add(Texts.of("strip.say.passed", Year.of(year), passing.size(), scene.seenOn(passing)));
        }
        return new Explanation(
                scene.place().name(),
                Texts.of(
                        "window.why.placeOn",
                        scene.river().name(),
                        scene.place().around()),
                List.of(
                        new Explanation.Section(
                                "",
                                List.of(Texts.of(
                                        "window.why.everSeen",
                                        scene.species(),
                                        scene.sightings().size()))),
                        new Explanation.Section(Texts.of("window.why.byYear"), years)));
    }

    /** {@return what there is to say of a ringed bird} */
    Explanation bird(BirdScene scene) {
        RingedBird bird = scene.bird();
        List<String> who = new ArrayList<>();
        who.add(Texts.of(
                "window.why.legs", leg(bird.leftUpper(), bird.leftLower()), leg(bird.rightUpper(), bird.rightLower())));
        bird.ringed().ifPresent(day -> who.add(Texts.of("strip.say.ringed", day)));
        bird.hatched().ifPresent(year -> who.add(Texts.of("window.why.hatched", year)));
        if (!bird.note().isBlank()) {
            who.add(Texts.of("window.why.note", bird.note()));
        }
        List<String> readings = scene.readings().stream().map(this::reading).toList();
        return new Explanation(
                bird.label(),
                Texts.of("window.why.birdPrivate", bird.sex()),
                List.of(
                        new Explanation.Section("", who),
                        new Explanation.Section(
                                Texts.of("window.why.readings"),
                                readings.isEmpty() ? List.of(Texts.of("strip.say.neverRead")) : readings)));
    }

    /** A reading, with its river where the book has several: not all of them need be drawn. */
    private String reading(BirdScene.Reading reading) {
        List<String> words = new ArrayList<>();
        words.add(line(reading.sighting()));
        if (contents.records().rivers().rivers().size() > 1) {
            words.add(river(reading.sighting().place().riverId()));
        }
        if (!reading.certain()) {
            words.add(Texts.of("window.why.fitsOthers"));
        }
        return String.join(" · ", words);
    }

    private static String leg(String upper, String lower) {
        String text = (upper + " " + lower).strip();
        return text.isEmpty() ? "–" : text.toUpperCase(Locale.ROOT);
    }

    /** {@return what the model makes of a territory, in sentences} */
    static List<String> byModel(Optional<ModelShading> shading, UUID riverId, String letter) {
        return shading.flatMap(model -> model.of(riverId))
                .flatMap(river -> river.ground(letter)
                        .map(ground -> List.of(
                                Texts.of("window.why.stands", ground.probability()),
                                Texts.of("window.why.ends", ground.lowerEnd(), ground.upperEnd(), river.level()))))
                .orElse(List.of());
    }

    /** {@return what the model counts on one river, in a sentence} */
    static List<String> byModel(Optional<ModelShading> shading, UUID riverId) {
        return shading.flatMap(model -> model.of(riverId))
                .map(river -> List.of(
                        Texts.of("strip.say.model", river.expected(), river.lower(), river.upper(), river.level())))
                .orElse(List.of());
    }
}
