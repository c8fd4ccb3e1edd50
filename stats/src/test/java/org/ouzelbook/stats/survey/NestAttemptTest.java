package org.ouzelbook.stats.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.survey.BreedingDates.Window;
import org.ouzelbook.stats.survey.NestAttempt.Watch;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.NestSite;
import org.ouzelbook.tracker.domain.NestStage;
import org.ouzelbook.tracker.domain.Species;

/**
 * Attempts read from checks. Dates are counted back by one egg a day, 16 days of incubation from the last egg and 20 to 24 days in the
 * nest (Royal Society for the Protection of Birds, page on dipper nesting and breeding).
 */
class NestAttemptTest {
    private static final Nest NEST = new Nest(
            Notebook.key("N1"),
            "N1",
            Notebook.at(Notebook.ARREL, 14.2),
            Species.DIPPER,
            NestSite.BRIDGE,
            OptionalDouble.empty(),
            Optional.empty(),
            "");

    private final List<NestCheck> checks = new ArrayList<>();

    private NestAttemptTest check(String day, NestStage stage, int eggs, int young, String note) {
        return check(day, stage, eggs, young, note, Optional.empty());
    }

    private NestAttemptTest check(
            String day, NestStage stage, int eggs, int young, String note, Optional<NestOutcome> outcome) {
        checks.add(new NestCheck(
                Notebook.key(day + checks.size()),
                NEST.id(),
                LocalDate.parse("2026-" + day),
                Optional.empty(),
                stage,
                "",
                eggs > 0 ? OptionalInt.of(eggs) : OptionalInt.empty(),
                young > 0 ? OptionalInt.of(young) : OptionalInt.empty(),
                OptionalInt.empty(),
                outcome,
                note));
        return this;
    }

    private NestAttempt attempt() {
        return NestAttempt.of(NEST, checks, BreedingPace.usualFor(Species.DIPPER));
    }

    private static Window window(String from, String to) {
        return new Window(LocalDate.parse("2026-" + from), LocalDate.parse("2026-" + to));
    }

    private static double days(NestAttempt attempt) {
        return attempt.watched().stream().mapToDouble(Watch::days).sum();
    }

    private NestAttemptTest followed() {
        return check("04-12", NestStage.EGGS, 4, 0, "warm")
                .check("04-19", NestStage.UNKNOWN, 0, 0, "adult on")
                .check("04-29", NestStage.YOUNG, 0, 4, "blind")
                .check("05-14", NestStage.YOUNG, 0, 3, "large, feathered");
    }

    /** First egg 4–9 April, since four eggs by 12 April and young of 6 days at most on 29 April: our own arithmetic. */
    @Test
    void followsANestToItsEnd() {
        NestAttempt attempt = followed()
                .check("05-22", NestStage.EMPTY, 0, 0, "lining trodden, droppings", Optional.of(NestOutcome.SUCCESS))
                .attempt();

        assertThat(attempt.problems()).isEmpty();
        assertThat(attempt.dates().orElseThrow().firstEgg()).isEqualTo(window("04-04", "04-09"));
        assertThat(attempt.dates().orElseThrow().hatching()).isEqualTo(window("04-23", "04-28"));
        assertThat(attempt.clutch()).hasValue(4);
        assertThat(attempt.brood()).hasValue(3);
        assertThat(attempt.fledged()).hasValue(3);
        assertThat(days(attempt)).isCloseTo(36, within(1e-9));
        assertThat(attempt.watched().stream()
                        .filter(Watch::seen)
                        .mapToDouble(Watch::days)
                        .sum())
                .isEqualTo(32);
        assertThat(attempt.watched()).allMatch(Watch::survived);
    }

    @Test
    void leavesAnUnknownEndUnknown() {
        NestAttempt early = check("04-12", NestStage.EGGS, 4, 0, "warm")
                .check("05-03", NestStage.YOUNG, 0, 4, "")
                .attempt();
        assertThat(early.outcome()).isEqualTo(NestOutcome.UNKNOWN);
        assertThat(early.fledged()).isEmpty();
        assertThat(days(early)).isEqualTo(21);

        NestAttempt empty = check("05-12", NestStage.EMPTY, 0, 0, "").attempt();
        assertThat(empty.outcome()).isEqualTo(NestOutcome.UNKNOWN);
        assertThat(days(empty)).isEqualTo(21);
    }

    @Test
    void countsALossAsAnIntervalWithALoss() {
        NestAttempt attempt = check("04-02", NestStage.EGGS, 5, 0, "warm")
                .check("04-08", NestStage.EMPTY, 0, 0, "washed out", Optional.of(NestOutcome.FAILURE))
                .attempt();

        assertThat(attempt.watched()).containsExactly(new Watch(6, 0, false, true));
        assertThat(attempt.fledged()).hasValue(0);
    }

    @Test
    void hasNoDaysForANestFoundOnTheDayItFailed() {
        NestAttempt attempt = check("04-08", NestStage.EMPTY, 0, 0, "washed out", Optional.of(NestOutcome.FAILURE))
                .attempt();

        assertThat(attempt.watched()).isEmpty();
        assertThat(attempt.problems()).isEmpty();
        assertThat(attempt.dates()).isEmpty();
    }

    /** Chicks of 10 days on 2 May, five eggs: first egg 2 April with 16 days of incubation. Here the age is known to lie in 8–15 days. */
    @Test
    void countsBackFromTheAgeOfYoung() {
        NestAttempt attempt = check("04-10", NestStage.EGGS, 5, 0, "warm")
                .check("05-02", NestStage.YOUNG, 0, 5, "primaries in pin")
                .attempt();

        assertThat(attempt.dates().orElseThrow().firstEgg())
                .isEqualTo(window("03-28", "04-04"))
                .satisfies(
                        window -> assertThat(LocalDate.of(2026, 4, 2)).isBetween(window.earliest(), window.latest()));
    }

    @Test
    void datesALayingClutchToTheDay() {
        NestAttempt attempt = check("03-20", NestStage.EGGS, 2, 0, "")
                .check("03-27", NestStage.EGGS, 5, 0, "")
                .check("04-02", NestStage.EGGS, 5, 0, "")
                .attempt();

        assertThat(attempt.clutch()).hasValue(5);
        assertThat(attempt.dates().orElseThrow().firstEgg()).isEqualTo(window("03-18", "03-19"));
    }

    @Test
    void knowsNoClutchThatWasCountedOnce() {
        assertThat(check("03-20", NestStage.EGGS, 3, 0, "").attempt().clutch()).isEmpty();
    }

    @Test
    void tellsWhatCannotHaveBeenSo() {
        assertThat(problem(check("04-20", NestStage.YOUNG, 0, 4, "").check("04-27", NestStage.EGGS, 4, 0, "")))
                .isEqualTo("nests.problem.youngBeforeEggs");
        assertThat(problem(check("04-01", NestStage.EGGS, 1, 0, "").check("04-02", NestStage.EGGS, 4, 0, "")))
                .isEqualTo("nests.problem.growth");
        assertThat(problem(check("04-01", NestStage.EGGS, 4, 0, "warm").check("04-20", NestStage.YOUNG, 0, 6, "")))
                .isEqualTo("nests.problem.young");
        assertThat(problem(check("04-01", NestStage.EGGS, 4, 0, "warm", Optional.of(NestOutcome.FAILURE))
                        .check("04-09", NestStage.EGGS, 4, 0, "warm")))
                .isEqualTo("nests.problem.afterEnd");
        assertThat(problem(check("04-01", NestStage.EGGS, 4, 0, "warm")
                        .check("04-05", NestStage.EMPTY, 0, 0, "")
                        .check("04-12", NestStage.EGGS, 3, 0, "")))
                .isEqualTo("nests.problem.emptyBetween");
        assertThat(problem(check("04-01", NestStage.EGGS, 4, 0, "")
                        .check("04-08", NestStage.EMPTY, 0, 0, "", Optional.of(NestOutcome.SUCCESS))))
                .isEqualTo("nests.problem.dates");
        assertThat(problem(check("04-01", NestStage.EMPTY, 0, 0, "", Optional.of(NestOutcome.SUCCESS))
                        .check("04-08", NestStage.EMPTY, 0, 0, "", Optional.of(NestOutcome.FAILURE))))
                .isEqualTo("nests.problem.outcomes");
    }

    private String problem(NestAttemptTest noted) {
        NestAttempt attempt = noted.attempt();
        checks.clear();
        assertThat(attempt.watched()).isEmpty();
        assertThat(attempt.dates()).isEmpty();
        return attempt.problems().stream().map(Message::key).findFirst().orElse("none");
    }
}
