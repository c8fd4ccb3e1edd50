package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.segmentation.Decided;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * What surveyors decided about one season.
 *
 * @param followed what the map keeps to
 * @param contradicting what it cannot keep to: each contradicts another. A book refuses such decisions, so there are none
 *     unless the records come from elsewhere
 */
record SeasonDecisions(List<Decision> followed, List<Decision> contradicting) {

    static SeasonDecisions of(SurveyRecords records, Species species, int year) {
        List<Decision> all = records.decisions(species, year);
        List<Decision> followed = new ArrayList<>();
        List<Decision> contradicting = new ArrayList<>();
        for (Decision decision : all) {
            (all.stream().anyMatch(decision::contradicts) ? contradicting : followed).add(decision);
        }
        return new SeasonDecisions(List.copyOf(followed), List.copyOf(contradicting));
    }

    private Stream<Decision> all(UUID riverId, DecisionKind kind) {
        return followed.stream()
                .filter(decision -> decision.riverId().equals(riverId))
                .filter(decision -> decision.kind() == kind);
    }

    /** The decisions about a river, as the estimator sees them. */
    Decided on(UUID riverId) {
        return new Decided(
                all(riverId, DecisionKind.BOUNDARY)
                        .map(decision -> decision.stretch().lower().metres())
                        .toList(),
                spans(riverId, DecisionKind.TOGETHER),
                spans(riverId, DecisionKind.NO_TERRITORY));
    }

    private List<Decided.Span> spans(UUID riverId, DecisionKind kind) {
        return all(riverId, kind)
                .map(decision -> new Decided.Span(
                        decision.stretch().lower().metres(),
                        decision.stretch().upper().metres()))
                .toList();
    }

    /** Boundaries and stretches without a territory that meet a piece of water. */
    List<Decision> partings(UUID riverId, Stretch between) {
        return Stream.concat(all(riverId, DecisionKind.BOUNDARY), all(riverId, DecisionKind.NO_TERRITORY))
                .filter(decision -> decision.stretch().intersection(between).isPresent())
                .toList();
    }

    /** Decisions of a kind about a stretch that holds at least one record of a cluster. */
    List<Decision> about(Cluster cluster, DecisionKind kind) {
        return followed.stream()
                .filter(decision -> decision.kind() == kind)
                .filter(decision -> cluster.members().stream().anyMatch(member -> holds(decision, member)))
                .toList();
    }

    /** Whether a decision binds one group of records to another. */
    boolean bindsAcross(Cluster some, Cluster others) {
        List<Decision> binding = about(some, DecisionKind.TOGETHER);
        return about(others, DecisionKind.TOGETHER).stream().anyMatch(binding::contains);
    }

    private static boolean holds(Decision decision, Member member) {
        return decision.riverId().equals(member.place().riverId())
                && decision.stretch().contains(member.place().chainage());
    }

    /** Where a decision applies: a stretch, or one place. */
    static Object where(Decision decision) {
        Chainage lower = decision.stretch().lower();
        return lower.equals(decision.stretch().upper()) ? lower : decision.stretch();
    }

    /** Who decided it, when, and why. */
    static Message words(Decision decision) {
        return decision.note()
                .map(note -> Message.of("map.decided.because", decision.by(), decision.on(), note))
                .orElseGet(() -> Message.of("map.decided", decision.by(), decision.on()));
    }
}
