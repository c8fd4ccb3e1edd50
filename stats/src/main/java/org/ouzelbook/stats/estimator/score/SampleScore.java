package org.ouzelbook.stats.estimator.score;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;

/**
 * What one kick sample scores by a table of family scores.
 *
 * <p>The score is the sum of the scores of the families found, each family once and merged families as one; the number of
 * scoring taxa counts them alike; the average score per taxon is their ratio, and undefined where nothing scores. Families of
 * mayflies, stoneflies and caddis flies are counted as they are listed, merged or not. A name that the table does not know is
 * never left out in silence: then every figure is only a lower limit.
 *
 * <p>Source: P. D. Armitage, D. Moss, J. F. Wright and M. T. Furse (1983), Water Res. 17:333–347.
 *
 * @param table the table that scored it
 * @param score the sum, called BMWP by the usual table
 * @param scoringTaxa how many different taxa score
 * @param average score over scoring taxa; empty where none scores
 * @param eptFamilies families of mayflies, stoneflies and caddis flies
 * @param eptIndividuals animals of those families; empty if one was not counted
 * @param individuals all animals; empty if a taxon was not counted
 * @param prey the abundance class of each group of prey that was found
 * @param notScoring names that the table knows and gives no score
 * @param unknown names that the table does not know, each with the most similar ones
 * @param fromMemory scoring taxa whose score was written from memory
 */
public record SampleScore(
        ScoreTable table,
        int score,
        int scoringTaxa,
        OptionalDouble average,
        int eptFamilies,
        OptionalLong eptIndividuals,
        OptionalLong individuals,
        Map<PreyGroup, AbundanceClass> prey,
        List<String> notScoring,
        Map<String, List<String>> unknown,
        List<String> fromMemory) {
    /** Copies the collections. */
    public SampleScore {
        prey = Collections.unmodifiableMap(new EnumMap<>(prey.isEmpty() ? new EnumMap<>(PreyGroup.class) : prey));
        notScoring = List.copyOf(notScoring);
        unknown = Collections.unmodifiableMap(new LinkedHashMap<>(unknown));
        fromMemory = List.copyOf(fromMemory);
    }

    /**
     * {@return what a sample scores}
     *
     * @param found the lines of its sheet; one taxon on several lines is taken together
     * @param table the scores
     */
    public static SampleScore of(List<FoundTaxon> found, ScoreTable table) {
        Map<String, Integer> scores = new LinkedHashMap<>();
        Set<String> ept = new LinkedHashSet<>();
        List<FoundTaxon> eptLines = new ArrayList<>();
        Map<PreyGroup, List<FoundTaxon>> prey = new EnumMap<>(PreyGroup.class);
        Set<String> notScoring = new LinkedHashSet<>();
        Map<String, List<String>> unknown = new LinkedHashMap<>();
        for (FoundTaxon line : found) {
            Optional<ScoreTable.Taxon> known = table.taxon(line.name());
            if (known.isEmpty()) {
                unknown.put(line.name(), table.nearest(line.name()));
                continue;
            }
            ScoreTable.Taxon taxon = known.get();
            taxon.scoredAs()
                    .ifPresentOrElse(
                            as -> scores.put(as, taxon.score().orElseThrow()), () -> notScoring.add(taxon.name()));
            if (taxon.order().isPresent()) {
                ept.add(taxon.name());
                eptLines.add(line);
            }
            PreyGroup.of(taxon)
                    .ifPresent(group -> prey.computeIfAbsent(group, key -> new ArrayList<>())
                            .add(line));
        }
        int sum = scores.values().stream().mapToInt(Integer::intValue).sum();
        Map<PreyGroup, AbundanceClass> classes = new EnumMap<>(PreyGroup.class);
        prey.forEach((group, lines) -> classes.put(group, together(lines)));
        return new SampleScore(
                table,
                sum,
                scores.size(),
                scores.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of((double) sum / scores.size()),
                ept.size(),
                total(eptLines),
                total(found),
                classes,
                List.copyOf(notScoring),
                unknown,
                scores.keySet().stream()
                        .filter(name -> table.taxon(name).orElseThrow().evidence() == ScoreTable.Evidence.MEMORY)
                        .toList());
    }

    /** The class of several lines: of their sum where all were counted, else the highest. */
    private static AbundanceClass together(List<FoundTaxon> lines) {
        OptionalLong sum = total(lines);
        return sum.isPresent()
                ? AbundanceClass.of(sum.getAsLong())
                : lines.stream()
                        .map(FoundTaxon::abundance)
                        .max(AbundanceClass::compareTo)
                        .orElseThrow();
    }

    private static OptionalLong total(List<FoundTaxon> lines) {
        return lines.stream().anyMatch(line -> line.count().isEmpty())
                ? OptionalLong.empty()
                : OptionalLong.of(lines.stream()
                        .mapToLong(line -> line.count().orElseThrow())
                        .sum());
    }

    /** {@return the ranks of the prey groups' classes together, A as 1 to D as 4; descriptive only} */
    public int preyRanks() {
        return prey.values().stream().mapToInt(AbundanceClass::rank).sum();
    }
}
