package org.ouzelbook.stats.survey;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.survey.Territory.Evidence;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.NestCheck;

/** Grades the breeding evidence of a cluster: the highest code of its records in season, or code 4 from two of them. */
final class Grading {
    private static final BreedingCode HELD_TERRITORY = new BreedingCode(4);

    private Grading() {}

    static Optional<Evidence> of(Cluster cluster, MapSettings settings) {
        BreedingCode highest = cluster.members().stream()
                .map(Member::code)
                .max(BreedingCode::compareTo)
                .orElseThrow();
        List<Member.Seen> held = heldTerritory(cluster, settings);
        List<UUID> records = new ArrayList<>();
        if (!held.isEmpty() && highest.compareTo(HELD_TERRITORY) <= 0) {
            highest = HELD_TERRITORY;
            held.forEach(seen -> records.add(seen.id()));
        }
        List<UUID> further = new ArrayList<>();
        for (Member member : byDate(cluster)) {
            UUID record = recordOf(member);
            if (records.contains(record)) {
                continue;
            }
            if (member.code().equals(highest)) {
                records.add(record);
            } else if (member.code().evidenceClass().equals(highest.evidenceClass())) {
                further.add(record);
            }
        }
        return highest.number() == 0 ? Optional.empty() : Optional.of(new Evidence(highest, records, further));
    }

    /** The first territorial record and the last, if they are far enough apart; else none. */
    static List<Member.Seen> heldTerritory(Cluster cluster, MapSettings settings) {
        List<Member.Seen> territorial = cluster.sightings().stream()
                .filter(seen -> BreedingSigns.isTerritorial(seen.sighting()))
                .toList();
        if (territorial.size() < 2) {
            return List.of();
        }
        Member.Seen first = territorial.get(0);
        Member.Seen last = territorial.get(territorial.size() - 1);
        return ChronoUnit.DAYS.between(first.first(), last.first()) >= settings.territorialSpreadDays()
                ? List.of(first, last)
                : List.of();
    }

    /** The members whose records gave the code, in their order. */
    static List<Member> behind(Cluster cluster, Evidence evidence) {
        return evidence.records().stream()
                .flatMap(record -> cluster.members().stream()
                        .filter(member -> recordOf(member).equals(record)))
                .toList();
    }

    private static List<Member> byDate(Cluster cluster) {
        return cluster.members().stream()
                .sorted((one, other) -> one.first().compareTo(other.first()))
                .toList();
    }

    /** The sighting, or the check of the nest, that shows the code of a member. */
    private static UUID recordOf(Member member) {
        return member instanceof Member.Nesting nesting
                ? nesting.history().strongest().map(NestCheck::id).orElseThrow()
                : member.id();
    }
}
