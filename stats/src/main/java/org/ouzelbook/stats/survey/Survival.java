package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.likelihood.Covariate;
import org.ouzelbook.stats.estimator.markresight.CormackJollySeber;
import org.ouzelbook.stats.estimator.markresight.EncounterHistory;
import org.ouzelbook.stats.estimator.markresight.MarkedAnimals;
import org.ouzelbook.stats.survey.RingSighting.Outcome;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.rings.RingRegister;

/**
 * How ringed birds survive from one breeding season to the next, and how far they move: from colour rings read completely in the
 * species' season. A bird read in part is never taken for one of its candidates.
 *
 * @param species whose rings
 * @param seasons the occasions, in order
 * @param animals the encounter histories, by sex where survival or resighting is asked for by it
 * @param fit survival and resighting, or why there are none
 * @param readings every sighting with a ring reading
 * @param moves moves between seasons, by bird
 * @param warnings what would mislead a reader who did not know it
 */
public record Survival(
        Species species,
        List<Integer> seasons,
        MarkedAnimals animals,
        Answer<CormackJollySeber> fit,
        List<RingSighting> readings,
        List<Move> moves,
        List<Message> warnings) {
    /** Survival or resighting of each season for itself. */
    public static final String OCCASION = "occasion";

    /** Survival or resighting by sex. */
    public static final String SEX = "sex";

    /** Copies the lists. */
    public Survival {
        seasons = List.copyOf(seasons);
        readings = List.copyOf(readings);
        moves = List.copyOf(moves);
        warnings = List.copyOf(warnings);
    }

    /**
     * A bird in two seasons.
     *
     * @param bird the bird
     * @param fromSeason the earlier season
     * @param toSeason the later one
     * @param from the middle of its readings then
     * @param to the middle of its readings now
     * @param metres along the water; empty where no water joins the two
     */
    public record Move(RingedBird bird, int fromSeason, int toSeason, Place from, Place to, OptionalDouble metres) {}

    /**
     * What is asked.
     *
     * @param survivalBy {@value #OCCASION}, {@value #SEX}, or names of the season covariates
     * @param resightingBy likewise
     * @param covariates for a name, a value of each interval between seasons, given their number and whether it is for the season at
     *     the end
     */
    public record Model(List<String> survivalBy, List<String> resightingBy, SeasonCovariates covariates) {}

    /** Covariates of seasons by name. */
    @FunctionalInterface
    public interface SeasonCovariates {
        /**
         * {@return a covariate with a value for each interval; empty if there is none of the name}
         *
         * @param name its name
         * @param seasons the seasons
         * @param atEnd whether the season at the interval's end is meant, else the interval itself
         */
        Optional<Covariate> of(String name, List<Integer> seasons, boolean atEnd);
    }

    /**
     * {@return the survival of the ringed birds of a book}
     *
     * @param records the records
     * @param species whose rings
     * @param model what is asked
     * @param level level of the limits, between 0 and 1
     * @throws IllegalArgumentException if the model asks for a covariate that there is not
     */
    public static Survival of(SurveyRecords records, Species species, Model model, double level) {
        RingRegister register = RingRegister.of(records.ringedBirds());
        List<RingSighting> ofAnySpecies = records.sightings().stream()
                .filter(sighting -> !sighting.rings().isBlank())
                .map(sighting -> RingSighting.of(sighting, register))
                .toList();
        List<RingSighting> readings = ofAnySpecies.stream()
                .filter(reading -> reading.sighting().species().equals(species))
                .toList();
        RingedSpecies ringed = RingedSpecies.of(records.ringedBirds(), ofAnySpecies);
        List<BirdSeasons> birds = ringed.of(species).stream()
                .map(bird -> BirdSeasons.of(bird, readings, species))
                .filter(bird -> !bird.places().isEmpty())
                .toList();
        Set<Integer> looked = records.visits().stream()
                .filter(visit -> visit.lookedFor().contains(species) && species.inSeason(visit.date()))
                .map(visit -> visit.date().getYear())
                .collect(Collectors.toSet());
        List<Integer> seasons = seasons(birds, looked);
        boolean bySex = model.survivalBy().contains(SEX) || model.resightingBy().contains(SEX);
        Map<String, List<EncounterHistory>> groups = new LinkedHashMap<>();
        for (BirdSeasons bird : birds) {
            String sex = bySex ? sex(bird.bird().sex()) : "";
            groups.computeIfAbsent(sex, key -> new ArrayList<>())
                    .add(new EncounterHistory(
                            seasons.stream().map(bird.places()::containsKey).toList(), 1));
        }
        List<Boolean> seen = seasons.stream()
                .map(season -> looked.contains(season)
                        || birds.stream().anyMatch(bird -> bird.places().containsKey(season)))
                .toList();
        MarkedAnimals animals = new MarkedAnimals(List.copyOf(groups.values()), seen);
        Terms terms = new Terms(animals, seasons, List.copyOf(groups.keySet()), model.covariates());
        Answer<CormackJollySeber> fit = CormackJollySeber.of(
                animals,
                model.survivalBy().stream().map(name -> terms.of(name, false)).toList(),
                model.resightingBy().stream().map(name -> terms.of(name, true)).toList(),
                level);
        List<Move> moves = birds.stream()
                .flatMap(bird -> bird.moves(records.rivers()).stream())
                .toList();
        return new Survival(
                species,
                seasons,
                animals,
                fit,
                readings,
                moves,
                SurvivalWarnings.of(species, ringed, readings, register, seasons, seen));
    }

    private static List<Integer> seasons(List<BirdSeasons> birds, Set<Integer> looked) {
        int first = birds.stream()
                .flatMap(bird -> bird.places().keySet().stream())
                .min(Integer::compare)
                .orElse(0);
        int last = IntStream.concat(
                        birds.stream()
                                .flatMapToInt(
                                        bird -> bird.places().keySet().stream().mapToInt(Integer::intValue)),
                        looked.stream().mapToInt(Integer::intValue))
                .max()
                .orElse(first);
        return birds.isEmpty()
                ? List.of()
                : IntStream.rangeClosed(first, last).boxed().toList();
    }

    private static String sex(Sex sex) {
        return switch (sex) {
            case FEMALE -> "female";
            case MALE -> "male";
            case UNKNOWN -> "unknown";
        };
    }

    /** Names of a model as covariates of the rows. */
    private record Terms(
            MarkedAnimals animals, List<Integer> seasons, List<String> sexes, SeasonCovariates covariates) {
        Covariate of(String name, boolean atEnd) {
            if (name.equals(SEX)) {
                return animals.byGroup(SEX, sexes);
            }
            int intervals = Math.max(0, seasons.size() - 1);
            if (name.equals(OCCASION)) {
                return animals.byInterval(
                        OCCASION,
                        IntStream.range(0, intervals)
                                .mapToObj(interval -> String.valueOf(seasons.get(interval + (atEnd ? 1 : 0))))
                                .toList());
            }
            return covariates
                    .of(name, seasons, atEnd)
                    .map(animals::byInterval)
                    .orElseThrow(() -> new IllegalArgumentException("No covariate is called " + name));
        }
    }

    /**
     * {@return how many readings told this}
     *
     * @param outcome what they told
     */
    public long readings(Outcome outcome) {
        return readings.stream().filter(one -> one.outcome() == outcome).count();
    }

    /** {@return the median move in metres along the water; empty without moves} */
    public OptionalDouble medianMove() {
        double[] metres = moves.stream()
                .flatMapToDouble(move -> move.metres().stream())
                .sorted()
                .toArray();
        int n = metres.length;
        return n == 0 ? OptionalDouble.empty() : OptionalDouble.of((metres[(n - 1) / 2] + metres[n / 2]) / 2);
    }
}
