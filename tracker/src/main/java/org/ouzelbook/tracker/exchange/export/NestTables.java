package org.ouzelbook.tracker.exchange.export;

import static org.ouzelbook.tracker.exchange.export.RecordTables.row;
import static org.ouzelbook.tracker.exchange.export.RecordTables.table;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.Place;

/** The tables that are never public: nests, their checks, and ringed birds. */
record NestTables(Records records, Function<Place, List<Object>> place) {
    List<DataTable> tables() {
        Map<UUID, String> labels = records.nests().stream().collect(Collectors.toMap(Nest::id, Nest::label));
        return List.of(
                table(
                        "nests",
                        "nest river km latitude longitude uncertainty_m bank species site height_m found note",
                        records.nests(),
                        nest -> row(
                                nest.label(),
                                place.apply(nest.place()),
                                nest.species().englishName(),
                                Words.of(nest.site()),
                                Words.of(nest.heightMetres()),
                                nest.found(),
                                nest.note())),
                table(
                        "nest_checks",
                        "nest date time stage eggs young adults outcome note",
                        records.nestChecks(),
                        check -> row(
                                labels.getOrDefault(check.nestId(), ""),
                                check.date(),
                                check.time(),
                                check.stageText().isBlank() ? Words.of(check.stage()) : check.stageText(),
                                Words.of(check.eggs()),
                                Words.of(check.young()),
                                Words.of(check.adults()),
                                check.outcome().map(outcome -> outcome.name().toLowerCase(Locale.ROOT)),
                                check.note())),
                table(
                        "ringed_birds",
                        "bird left_upper left_lower right_upper right_lower ring sex hatched ringed note",
                        records.ringedBirds(),
                        bird -> row(
                                bird.label(),
                                bird.leftUpper(),
                                bird.leftLower(),
                                bird.rightUpper(),
                                bird.rightLower(),
                                bird.ring(),
                                Words.of(bird.sex()),
                                bird.hatched().map(year -> year.getValue()),
                                bird.ringed(),
                                bird.note())));
    }
}
