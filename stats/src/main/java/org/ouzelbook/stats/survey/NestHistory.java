package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestOutcome;

/**
 * What the checks of one nest show in one season.
 *
 * @param nest the nest
 * @param checks its checks in the season, by date
 */
record NestHistory(Nest nest, List<NestCheck> checks) {
    /*
     * Days of incubation, in the nest, and led by the parents afterwards; five eggs are laid in as many days. Source: Royal
     * Society for the Protection of Birds, page on dipper nesting and breeding. Other species of the book breed at a like
     * pace, so the windows serve for them too.
     */
    private static final int LAYING = 5;
    private static final int INCUBATION = 16;
    private static final int SHORTEST_NESTLING = 20;
    private static final int LONGEST_NESTLING = 24;
    private static final int LONGEST_DEPENDENT = 18;

    static List<NestHistory> of(SurveyRecords records, List<Nest> nests, int season, MapSettings settings) {
        Map<UUID, List<NestCheck>> ofNests = records.nestChecks().stream()
                .filter(check -> check.date().getYear() == season && settings.inSeason(check.date()))
                .sorted(Comparator.comparing(NestCheck::date))
                .collect(Collectors.groupingBy(NestCheck::nestId));
        List<NestHistory> histories = new ArrayList<>();
        for (Nest nest : nests) {
            List<NestCheck> checks = ofNests.get(nest.id());
            if (checks != null) {
                histories.add(new NestHistory(nest, checks));
            }
        }
        return histories;
    }

    /** Checks that show breeding; none for an old nest. */
    List<NestCheck> signs() {
        return checks.stream()
                .filter(check -> BreedingSigns.of(check).isPresent())
                .toList();
    }

    /** The check with the highest code, the earliest of equals. */
    Optional<NestCheck> strongest() {
        return signs().stream()
                .max(Comparator.<NestCheck, BreedingCode>comparing(
                                check -> BreedingSigns.of(check).orElseThrow())
                        .thenComparing(NestCheck::date, Comparator.reverseOrder()));
    }

    /** Whether this nest and another were certainly in use on one day. */
    boolean activeWith(NestHistory other) {
        List<LocalDate> mine = daysInUse();
        List<LocalDate> others = other.daysInUse();
        return !mine.isEmpty()
                && !others.isEmpty()
                && !mine.get(0).isAfter(others.get(others.size() - 1))
                && !others.get(0).isAfter(mine.get(mine.size() - 1));
    }

    List<LocalDate> daysInUse() {
        return checks.stream()
                .filter(check -> BreedingSigns.of(check)
                        .filter(code -> code.number() >= 13)
                        .isPresent())
                .map(NestCheck::date)
                .toList();
    }

    boolean failed() {
        return checks.stream()
                .anyMatch(check -> check.outcome()
                        .filter(outcome -> outcome == NestOutcome.FAILURE)
                        .isPresent());
    }

    /** Whether a brood that still depends on its parents on a day can have left this nest. */
    boolean canHaveFledged(LocalDate day) {
        if (failed() || daysInUse().isEmpty()) {
            return false;
        }
        LocalDate earliest = LocalDate.MIN;
        LocalDate latest = LocalDate.MAX;
        for (NestCheck check : checks) {
            int code = BreedingSigns.of(check).map(BreedingCode::number).orElse(0);
            if (code == 15) {
                earliest = later(earliest, check.date().plusDays(SHORTEST_NESTLING));
                latest = earlier(latest, check.date().plusDays(LAYING + INCUBATION + LONGEST_NESTLING));
            } else if (code == 16) {
                earliest = later(earliest, check.date());
                latest = earlier(latest, check.date().plusDays(LONGEST_NESTLING));
            }
        }
        return latest.isBefore(LocalDate.MAX)
                && !day.isBefore(earliest)
                && !day.isAfter(latest.plusDays(LONGEST_DEPENDENT));
    }

    private static LocalDate later(LocalDate one, LocalDate other) {
        return one.isAfter(other) ? one : other;
    }

    private static LocalDate earlier(LocalDate one, LocalDate other) {
        return one.isBefore(other) ? one : other;
    }

    UUID id() {
        return nest.id();
    }
}
