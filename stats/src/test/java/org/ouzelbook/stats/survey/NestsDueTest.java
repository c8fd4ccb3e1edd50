package org.ouzelbook.stats.survey;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.survey.NestsDue.Manner;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.NestSite;
import org.ouzelbook.tracker.domain.NestStage;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.river.RiverNetwork;

/**
 * Nests that are to be looked at. Looks about once a week until no live eggs or young remain: nest record handbooks; the days and the
 * distance kept from large young: common practice, no source. Young leave the nest after 20 to 24 days (Royal Society for the Protection
 * of Birds, page on dipper nesting and breeding).
 */
class NestsDueTest {
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

    private NestsDueTest check(String day, NestStage stage, int eggs, int young, Optional<NestOutcome> outcome) {
        checks.add(new NestCheck(
                Notebook.key(day),
                NEST.id(),
                LocalDate.parse("2026-" + day),
                Optional.empty(),
                stage,
                "",
                eggs > 0 ? OptionalInt.of(eggs) : OptionalInt.empty(),
                young > 0 ? OptionalInt.of(young) : OptionalInt.empty(),
                OptionalInt.empty(),
                outcome,
                ""));
        return this;
    }

    private List<NestsDue.Due> dueOn(String day) {
        SurveyRecords records = new SurveyRecords(
                RiverNetwork.of(List.of(Notebook.ARREL), List.of()),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(NEST),
                checks,
                List.of(),
                List.of(),
                List.of());
        return NestsDue.of(records, Species.DIPPER, LocalDate.parse("2026-" + day))
                .due();
    }

    @Test
    void isDueAboutAWeekAfterTheLastLook() {
        NestsDue.Due due = check("04-12", NestStage.EGGS, 4, 0, Optional.empty())
                .dueOn("04-13")
                .get(0);

        assertThat(due.from()).isEqualTo("2026-04-17");
        assertThat(due.to()).isEqualTo("2026-04-20");
        assertThat(due.manner()).isEqualTo(Manner.SHORT_LOOK);
    }

    @Test
    void keepsItsDistanceFromLargeYoung() {
        check("04-12", NestStage.EGGS, 5, 0, Optional.empty());
        check("05-02", NestStage.YOUNG, 0, 4, Optional.empty());

        assertThat(dueOn("05-03").get(0).manner()).isEqualTo(Manner.FROM_AFAR);
    }

    @Test
    void looksForFledgedYoungOnceTheyMustHaveLeft() {
        check("04-12", NestStage.EGGS, 5, 0, Optional.empty());
        check("05-02", NestStage.YOUNG, 0, 4, Optional.empty());

        assertThat(dueOn("06-05").get(0).manner()).isEqualTo(Manner.FOR_FLEDGED);
    }

    @Test
    void isNotDueWhereItEndedOrIsEmptyOrLongPast() {
        assertThat(check("05-02", NestStage.EMPTY, 0, 0, Optional.empty()).dueOn("05-03"))
                .isEmpty();
        checks.clear();
        assertThat(check("05-02", NestStage.YOUNG, 0, 4, Optional.of(NestOutcome.FAILURE))
                        .dueOn("05-03"))
                .isEmpty();
        checks.clear();
        assertThat(check("04-02", NestStage.EGGS, 4, 0, Optional.empty()).dueOn("07-03"))
                .isEmpty();
    }

    @Test
    void knowsNothingOfLooksThatLieAhead() {
        assertThat(check("05-02", NestStage.EGGS, 4, 0, Optional.empty()).dueOn("05-01"))
                .isEmpty();
    }
}
