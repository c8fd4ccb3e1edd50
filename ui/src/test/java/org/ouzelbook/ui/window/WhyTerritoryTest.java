package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestSite;
import org.ouzelbook.tracker.domain.NestStage;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.ui.strip.SampleRiver;
import org.ouzelbook.ui.strip.Subject;

/** A territory is told in full, and of its nests no more than that there are some, until somebody asks for them. */
class WhyTerritoryTest {
    private static final LocalDate LOOKED = LocalDate.of(2026, 4, 9);

    private final BookContents contents =
            BookContents.of(withNests(SampleRiver.of2026().records()), Optional.empty(), Progress.NONE);

    private static Nest nest(String label, double km) {
        return new Nest(
                SampleRiver.key(label),
                label,
                new Place(SampleRiver.ARREL.id(), Chainage.ofKm(km), Bank.LEFT, 20, 1),
                Species.DIPPER,
                NestSite.BRIDGE,
                OptionalDouble.empty(),
                Optional.of(LOOKED),
                "");
    }

    private static NestCheck check(Nest nest) {
        return new NestCheck(
                SampleRiver.key("check of " + nest.label()),
                nest.id(),
                LOOKED,
                Optional.empty(),
                NestStage.EGGS,
                "",
                OptionalInt.of(5),
                OptionalInt.empty(),
                OptionalInt.empty(),
                Optional.empty(),
                "");
    }

    /** One in the territory, one in its neighbour, in use on one day. */
    private static SurveyRecords withNests(SurveyRecords plain) {
        List<Nest> nests = List.of(nest("under Mill Bridge", 8.0), nest("behind the fall", 8.9));
        return new SurveyRecords(
                plain.rivers(),
                plain.landmarks(),
                plain.reaches(),
                plain.visits(),
                plain.sightings(),
                nests,
                nests.stream().map(WhyTerritoryTest::check).toList(),
                plain.ringedBirds(),
                plain.kickSamples(),
                plain.decisions());
    }

    private String told(boolean nestsShown) {
        return new WhyWords(contents, season -> Optional.empty(), year -> Optional.empty(), nestsShown)
                .of(new Subject.OfTerritory(2026, SampleRiver.ARREL.id(), "B")).stream()
                        .flatMap(explanation -> explanation.sections().stream())
                        .flatMap(section -> Stream.concat(Stream.of(section.heading()), section.sentences().stream()))
                        .collect(Collectors.joining("\n"));
    }

    @Test
    void tellsItsNestsWhileTheyAreShown() {
        assertThat(told(true)).contains("under Mill Bridge").contains("9 Apr");
    }

    @Test
    void tellsOnlyThatThereAreNestsWhileTheyAreHidden() {
        assertThat(told(false))
                .contains("A nesting attempt belongs to it, which P shows.")
                .contains("Confirmed breeding")
                .contains("because nests of both were in use on the same days")
                .doesNotContain("Mill Bridge")
                .doesNotContain("behind the fall")
                .doesNotContain("9 Apr");
    }

    @Test
    void countsTheSightingsInASentenceAndNamesEachOnlyInTheList() {
        assertThat(told(false).split("b2", -1))
                .as("b2 in the list, and where two birds were seen at once")
                .hasSize(3);
    }
}
