package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.river.RiverNetwork;

/**
 * A surveyor's decision, as people and scripts read it.
 *
 * @param number its place among all decisions of the book, from 1 up; another may have it once one was made or removed
 * @param season the year of the season
 * @param species whose territories
 * @param river name of the river
 * @param kind what was decided
 * @param fromKm lower end, in km from the mouth
 * @param toKm upper end; of a boundary, the same
 * @param note the reason
 * @param by who decided it
 * @param on when
 */
public record DecisionAnswer(
        int number,
        Year season,
        Species species,
        String river,
        DecisionKind kind,
        Chainage fromKm,
        Chainage toKm,
        Optional<String> note,
        String by,
        LocalDate on) {

    /** {@return all decisions of a book, numbered} */
    static List<DecisionAnswer> all(List<Decision> decisions, RiverNetwork network) {
        List<DecisionAnswer> answers = new ArrayList<>();
        for (Decision decision : decisions) {
            answers.add(of(answers.size() + 1, decision, network));
        }
        return answers;
    }

    static DecisionAnswer of(int number, Decision decision, RiverNetwork network) {
        return new DecisionAnswer(
                number,
                Year.of(decision.season()),
                decision.species(),
                network.river(decision.riverId()).name(),
                decision.kind(),
                decision.stretch().lower(),
                decision.stretch().upper(),
                decision.note(),
                decision.by(),
                decision.on());
    }

    /** {@return where it applies: a stretch or one place, as it is written everywhere} */
    public String km() {
        return fromKm.equals(toKm) ? Texts.word(fromKm) : Texts.word(fromKm) + "–" + Texts.word(toKm);
    }

    /** {@return the decision in a few words, as the history tells it} */
    public Message words() {
        return Message.of("book.entry.decision", kind, km(), species, season);
    }
}
