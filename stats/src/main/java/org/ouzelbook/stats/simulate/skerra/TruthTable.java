package org.ouzelbook.stats.simulate.skerra;

import static org.ouzelbook.stats.simulate.skerra.FieldTable.column;

import java.util.List;
import java.util.stream.Collectors;
import org.ouzelbook.stats.simulate.nature.Attempt;
import org.ouzelbook.stats.simulate.nature.Ground;
import org.ouzelbook.stats.simulate.nature.TruePair;
import org.ouzelbook.tracker.domain.Stretch;

/** What is true: one line for each pair of each season, found or not. */
final class TruthTable {
    private TruthTable() {}

    static byte[] of(SkerraRecords records) {
        Style style = Style.SHEET;
        return new FieldTable<TruePair>(List.of(
                        column("season", pair -> Integer.toString(pair.season())),
                        column("species", pair -> pair.species().englishName()),
                        column("river", pair -> Skerra.name(pair.home().riverId())),
                        column(
                                "from_km",
                                pair -> style.number(
                                        pair.home().stretch().lower().km(), 3)),
                        column(
                                "to_km",
                                pair -> style.number(
                                        pair.home().stretch().upper().km(), 3)),
                        column(
                                "centre_km",
                                pair -> style.number(
                                        pair.home().stretch().middle().km(), 3)),
                        column("and_also", TruthTable::otherArm),
                        column("nest_site", pair -> pair.site().name()),
                        column("nest_km", pair -> style.number(pair.site().at().km(), 2)),
                        column("nests", pair -> Integer.toString(pair.attempts().size())),
                        column("broods_fledged", TruthTable::fledged),
                        column(
                                "young_fledged",
                                pair -> Integer.toString(pair.young().size())),
                        column("fate", TruthTable::fate),
                        column("female", pair -> pair.female().label()),
                        column("male", pair -> pair.male().label())))
                .tidy(style, records.survey.truth().pairs());
    }

    private static String otherArm(TruePair pair) {
        return pair.grounds().stream().skip(1).map(TruthTable::ground).collect(Collectors.joining("; "));
    }

    private static String ground(Ground ground) {
        Stretch stretch = ground.stretch();
        return Skerra.name(ground.riverId()) + " "
                + Style.SHEET.number(stretch.lower().km(), 3) + " to "
                + Style.SHEET.number(stretch.upper().km(), 3);
    }

    private static String fledged(TruePair pair) {
        return Long.toString(pair.attempts().stream()
                .filter(attempt -> attempt.lost().isEmpty())
                .count());
    }

    private static String fate(TruePair pair) {
        if (pair.attempts().isEmpty()) {
            return "no nest";
        }
        return pair.attempts().stream().map(TruthTable::fate).collect(Collectors.joining(", "));
    }

    private static String fate(Attempt attempt) {
        return attempt.lost()
                .map(loss -> loss.cause() == Attempt.Cause.FLOOD ? "washed out" : "lost")
                .orElse("fledged");
    }
}
