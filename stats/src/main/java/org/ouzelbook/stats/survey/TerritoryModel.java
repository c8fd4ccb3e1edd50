package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import java.util.function.DoublePredicate;
import java.util.stream.Collectors;
import org.ouzelbook.stats.estimator.segmentation.Grain;
import org.ouzelbook.stats.estimator.segmentation.Nature;
import org.ouzelbook.stats.estimator.segmentation.NaturePosterior;
import org.ouzelbook.stats.estimator.segmentation.NaturePrior;
import org.ouzelbook.stats.estimator.segmentation.TreePosterior;
import org.ouzelbook.stats.survey.Admission.DoubtfulAge;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * The count by model: every way of cutting the rivers into territories, each with its probability, given what was met and what
 * was not. What the model needs to know of the species and its surveyors it learns from all seasons and rivers together.
 *
 * <p>Rivers that meet are one tree: a territory may reach through a confluence by any two of the waters that meet there.
 */
public final class TerritoryModel {
    /** Width of a cell, in metres: about as sure as a place in a notebook. */
    private static final double CELL = 50;

    /** Width of a cell where many what-ifs are compared. */
    private static final double COARSE = 100;

    /** No territory is shorter, in metres. Common practice, no source. */
    private static final double SHORTEST = 150;

    /** The longest territory of the model, as a multiple of the longest of the rules, which joins only what was met. */
    private static final double LONGEST = 2;

    /**
     * What is believed of dippers before any record is read. Chance of finding a pair: 0.63 to 0.94, F. D'Amico and G. Hémery
     * (2003), Ibis 145:83–86 (abstract). Length: 1.46 pairs per km where they are dense, E. Fracasso and others (2000), Avocetta
     * 24 (abstract), and twice that length where they are not: common practice, no source; as are all other numbers. Strays are
     * held to a few in a hundred of the birds met: with three or four visits, pairs met once and strays look alike, and a wide
     * prior let a book take a third of its pairs for strays.
     */
    private static final NaturePrior PRIOR = new NaturePrior(
            new Nature(900, 0.4, 0.5, 800, 0.75, 8, 0.6, 0.4, 180, 0.05, 0.3),
            new Nature(0.45, 0.35, 1, 1, 0.7, 0.8, 0.7, 1, 0.5, 0.5, 1));

    private final SurveyRecords records;
    private final Species species;
    private final MapSettings settings;
    private final Grain grain;
    private final NaturePosterior nature;
    private final Learnt learnt;
    private final Map<Key, ModelTree> trees;

    /** Rivers that meet are asked about one after another, but summed once. */
    private Optional<Summed> last = Optional.empty();

    private record Key(int year, UUID river) {}

    private record Summed(Key key, Optional<TreePosterior> posterior) {}

    /**
     * From how much the model learnt.
     *
     * @param riverSeasons rivers that were walked, season by season
     * @param registrations what was met on them
     */
    public record Learnt(int riverSeasons, int registrations) {
        /** {@return whether it is so little that the answer rests mostly on what was believed before} */
        public boolean isLittle() {
            return riverSeasons < 3 || registrations < 30;
        }
    }

    private TerritoryModel(
            SurveyRecords records,
            Species species,
            MapSettings settings,
            Grain grain,
            Map<Key, ModelTree> trees,
            NaturePosterior nature) {
        this.records = records;
        this.species = species;
        this.settings = settings;
        this.grain = grain;
        this.trees = trees;
        this.nature = nature;
        this.learnt = new Learnt(
                trees.size(),
                distinct(trees).stream()
                        .flatMap(tree -> tree.lines().stream())
                        .mapToInt(line -> line.registered().size())
                        .sum());
    }

    /**
     * {@return the model of a species, fitted to all its seasons}
     *
     * @param records all records of the book
     * @param species whose territories
     * @param settings which records take part, and how long a territory can be
     * @param progress hears how far the fit has come, in thousandths, and may stop it
     * @throws CancellationException if it is stopped
     */
    public static TerritoryModel of(SurveyRecords records, Species species, MapSettings settings, Progress progress) {
        double longest = LONGEST * settings.maximumLengthMetres();
        Grain grain = new Grain(CELL, SHORTEST, longest);
        Map<Key, ModelTree> trees = trees(records, species, settings, grain);
        DoublePredicate heard = share -> progress.goOn(Math.round(share * 1000), 1000);
        NaturePosterior nature = NaturePosterior.of(
                distinct(trees).stream().map(ModelTree::waters).toList(), grain, PRIOR, heard);
        return new TerritoryModel(records, species, settings, grain, trees, nature);
    }

    private static List<ModelTree> distinct(Map<Key, ModelTree> trees) {
        return trees.values().stream().distinct().toList();
    }

    private static Map<Key, ModelTree> trees(
            SurveyRecords records, Species species, MapSettings settings, Grain grain) {
        boolean notes = notesBirdsAtOnce(records, species);
        List<Map<Key, ModelTree>> bySeason = years(records, species).parallelStream()
                .map(year -> trees(Season.of(records, species, year, settings, Water.ALL), records, notes, grain))
                .toList();
        Map<Key, ModelTree> trees = new LinkedHashMap<>();
        bySeason.forEach(trees::putAll);
        return trees;
    }

    private static Map<Key, ModelTree> trees(Season season, SurveyRecords records, boolean notes, Grain grain) {
        Field field = field(season);
        Map<UUID, ModelLine> lines = new LinkedHashMap<>();
        for (River river : records.rivers().rivers()) {
            water(records, river)
                    .flatMap(water -> ModelLine.of(season, field, river.id(), water, grain.longest(), notes))
                    .ifPresent(line -> lines.put(river.id(), line));
        }
        Map<Key, ModelTree> trees = new LinkedHashMap<>();
        for (ModelTree tree : ModelTree.all(season, field, lines)) {
            boolean whole = tree.lines().size() == 1
                    || posterior(tree, grain, PRIOR.centre()).isPresent();
            for (ModelLine line : tree.lines()) {
                trees.put(new Key(season.year(), line.river()), whole ? tree : ModelTree.of(line));
            }
        }
        return trees;
    }

    private static Optional<TreePosterior> posterior(ModelTree tree, Grain grain, Nature nature) {
        return TreePosterior.of(tree.waters(), grain, List.of(new NaturePosterior.Draw(nature, 1)));
    }

    /** {@return the same model, with what it learnt, of records without the surveyor's decisions} */
    public TerritoryModel withoutDecisions() {
        SurveyRecords without = records.withoutDecisions();
        return new TerritoryModel(without, species, settings, grain, trees(without, species, settings, grain), nature);
    }

    /** Whether anybody ever noted that two birds were seen at once; if not, that it was not noted says nothing. */
    private static boolean notesBirdsAtOnce(SurveyRecords records, Species species) {
        return records.sightings().stream()
                .anyMatch(sighting -> sighting.species().equals(species)
                        && !sighting.simultaneousWith().isEmpty());
    }

    private static List<Integer> years(SurveyRecords records, Species species) {
        return records.visits().stream()
                .filter(visit -> visit.lookedFor().contains(species))
                .map(visit -> visit.date().getYear())
                .distinct()
                .sorted()
                .toList();
    }

    private static Field field(Season season) {
        Admission admission = Admission.of(season.sightings(), season.settings(), DoubtfulAge.USUAL);
        return Field.of(admission.admitted(), season);
    }

    /**
     * All the water of a river: its line, or where it has none, all that was ever walked, down to its mouth on another river and
     * up to its tributaries.
     */
    private static Optional<Stretch> water(SurveyRecords records, River river) {
        Optional<Stretch> drawn = records.rivers().measuredLine(river.id()).map(line -> line.extent());
        if (drawn.isPresent()) {
            return drawn;
        }
        List<Chainage> known = new ArrayList<>();
        records.visits().stream()
                .filter(visit -> visit.riverId().equals(river.id()))
                .flatMap(visit -> visit.walked().stream())
                .forEach(walked -> known.addAll(List.of(walked.lower(), walked.upper())));
        if (known.isEmpty()) {
            return Optional.empty();
        }
        river.mouth().ifPresent(mouth -> known.add(new Chainage(0)));
        records.rivers()
                .tributaries(river.id())
                .forEach(tributary -> known.add(tributary.mouth().orElseThrow().chainage()));
        return Optional.of(new Stretch(Collections.min(known), Collections.max(known)));
    }

    /** {@return what the model learnt of the species and its surveyors} */
    public NaturePosterior nature() {
        return nature;
    }

    /**
     * {@return the name of a river}
     *
     * @param river key of the river
     */
    public String riverName(UUID river) {
        return records.rivers().river(river).name();
    }

    /** {@return from how much it learnt that} */
    public Learnt learnt() {
        return learnt;
    }

    /**
     * {@return the territories of one river in one season; empty where no effective visit of that season went, or where what is
     * known contradicts itself}
     *
     * @param year the calendar year
     * @param river key of the river
     * @param water which of the territories count
     */
    public Optional<ModelCount> count(int year, UUID river, Water water) {
        return counts(year, river, List.of(water)).stream().findFirst();
    }

    /**
     * {@return the same for several waters, in their order; empty where there is no count}
     *
     * @param year the calendar year
     * @param river key of the river
     * @param waters which of the territories count
     */
    List<ModelCount> counts(int year, UUID river, List<Water> waters) {
        ModelTree tree = trees.get(new Key(year, river));
        if (tree == null || waters.isEmpty()) {
            return List.of();
        }
        return summed(new Key(year, lowest(year, river)), tree).stream()
                .flatMap(posterior -> waters.stream().map(water -> new ModelCount(posterior, tree, river, water)))
                .toList();
    }

    private synchronized Optional<TreePosterior> summed(Key key, ModelTree tree) {
        if (last.isEmpty() || !last.get().key().equals(key)) {
            last = Optional.of(new Summed(key, TreePosterior.of(tree.waters(), grain, nature.draws())));
        }
        return last.get().posterior();
    }

    /**
     * {@return the river at the mouth of all that meet with a river in one season; that river itself, if none does}
     *
     * @param year the calendar year
     * @param river key of the river
     */
    UUID lowest(int year, UUID river) {
        ModelTree tree = trees.get(new Key(year, river));
        return tree == null ? river : tree.lines().get(0).river();
    }

    /**
     * {@return what one more visit would tell of the territories of one river in one season, perhaps one without a visit so far; empty if
     * what is known contradicts itself}
     *
     * @param year the calendar year
     * @param river key of the river
     * @param counted water of that river; a territory counts whose middle lies there
     */
    Optional<NextVisit> nextVisit(int year, UUID river, List<Stretch> counted) {
        if (counted.isEmpty()) {
            return Optional.empty();
        }
        Optional<ModelLine> known = Optional.ofNullable(trees.get(new Key(year, river)))
                .map(tree -> tree.lines().get(tree.place(river)));
        return water(records, records.rivers().river(river))
                .map(water -> ModelLine.asFarAs(known, counted, water, grain.longest()))
                .flatMap(line -> NextVisit.of(
                        line,
                        grain.withCell(COARSE),
                        nature.mode(),
                        metres -> counted.stream().anyMatch(stretch -> stretch.contains(new Chainage(metres)))));
    }

    /**
     * How much the expected number of territories of a river and season rests on single sightings; by the most probable nature
     * and on coarse cells.
     *
     * @param withAll the number with every sighting
     * @param without the number without one, by the key of that sighting
     */
    public record Influence(double withAll, Map<UUID, Double> without) {
        /** Copies the map. */
        public Influence {
            without = Map.copyOf(without);
        }
    }

    /**
     * {@return how much the expected number rests on single sightings}
     *
     * @param year the calendar year
     * @param river key of the river
     * @param water which of the territories count
     */
    public Influence influence(int year, UUID river, Water water) {
        ModelTree tree = trees.get(new Key(year, river));
        if (tree == null) {
            return new Influence(0, Map.of());
        }
        Season season = Season.of(records, species, year, settings, Water.ALL);
        Field field = field(season);
        Stretch whole = water(records, records.rivers().river(river)).orElseThrow();
        boolean notes = notesBirdsAtOnce(records, species);
        Map<UUID, Double> without = tree.lines().get(tree.place(river)).registered().parallelStream()
                .map(Sighting::id)
                .collect(Collectors.toMap(id -> id, id -> {
                    Field rest = field.without(Set.of(id));
                    return ModelLine.of(season, rest, river, whole, grain.longest(), notes)
                            .map(line -> expected(tree.with(line, rest), river, water))
                            .orElse(0.0);
                }));
        return new Influence(expected(tree, river, water), without);
    }

    private double expected(ModelTree tree, UUID river, Water water) {
        return posterior(tree, grain.withCell(COARSE), nature.mode())
                .map(posterior -> new ModelCount(posterior, tree, river, water).expected())
                .orElse(0.0);
    }
}
