package org.ouzelbook.ui.app.export;

import java.time.LocalDate;
import java.time.Year;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.exchange.darwin.Publication;
import org.ouzelbook.tracker.exchange.export.Audience;
import org.ouzelbook.tracker.exchange.export.Records;
import org.ouzelbook.ui.app.Texts;

/** The words that go with published records. */
final class PublicationWords {
    private PublicationWords() {}

    /** {@return how the records are published, in words} */
    static Publication of(Records records, ExportRequest request, LocalDate changed) {
        Publishing said = request.publishing();
        String rivers =
                records.rivers().rivers().stream().map(River::name).sorted().collect(Collectors.joining(", "));
        boolean isPublic = request.audience() == Audience.PUBLIC;
        return new Publication(
                request.audience(),
                said.withNames() || !isPublic,
                said.licence().orElseThrow(),
                changed,
                said.title().isBlank() ? title(records, rivers) : said.title().strip(),
                said.group().isBlank()
                        ? Texts.of("export.publish.group", rivers)
                        : said.group().strip(),
                said.email().strip(),
                List.of(
                        Texts.of(
                                "export.publish.about",
                                rivers,
                                records.visits().size(),
                                records.sightings().size()),
                        Texts.of(isPublic ? "export.publish.generalised" : "export.publish.exact"),
                        Texts.of("export.publish.absences")),
                Texts.of("export.publish.method"),
                new Publication.Words(
                        Texts.of("export.publish.bird.generalised"),
                        Texts.of("export.publish.nest.generalised"),
                        Texts.of("export.publish.bird.withheld"),
                        Texts.of("export.publish.nest.withheld"),
                        Texts.of("export.publish.visit.withheld"),
                        Texts.of("export.publish.protocol"),
                        Texts.of("export.publish.kickSample")));
    }

    private static String title(Records records, String rivers) {
        TreeSet<Integer> years = new TreeSet<>();
        records.visits().forEach(visit -> years.add(visit.date().getYear()));
        records.sightings().forEach(sighting -> years.add(sighting.date().getYear()));
        return years.isEmpty()
                ? Texts.of("export.publish.title.noYears", rivers)
                : years.size() == 1
                        ? Texts.of("export.publish.title.year", rivers, Year.of(years.first()))
                        : Texts.of("export.publish.title.years", rivers, Year.of(years.first()), Year.of(years.last()));
    }
}
