package org.ouzelbook.tracker.store;

import static org.ouzelbook.tracker.store.Table.date;
import static org.ouzelbook.tracker.store.Table.text;
import static org.ouzelbook.tracker.store.Table.texts;
import static org.ouzelbook.tracker.store.Table.whole;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.ouzelbook.tracker.domain.Seal;
import org.ouzelbook.tracker.domain.Species;

/** Keeps what was answered about seasons when they were reported. */
final class SealStore {
    static final EntryTable<Seal> SEALS = new EntryTable<>(
            Seal.class,
            Table.ofRecords(
                    "seal",
                    text("species"),
                    whole("season"),
                    text("program"),
                    new Table.Column("last_step", ColumnType.LONG),
                    texts("setting_names"),
                    texts("setting_values"),
                    texts("figure_names"),
                    texts("figure_values"),
                    texts("sentences"),
                    text("sealed_by"),
                    date("sealed_on")),
            (seal, row) -> row.set("species", seal.species().scientificName())
                    .set("season", seal.season())
                    .set("program", seal.program())
                    .set("last_step", seal.step())
                    .set("setting_names", names(seal.settings()))
                    .set("setting_values", values(seal.settings()))
                    .set("figure_names", names(seal.figures()))
                    .set("figure_values", values(seal.figures()))
                    .set("sentences", seal.sentences())
                    .set("sealed_by", seal.by())
                    .set("sealed_on", seal.on()),
            row -> new Seal(
                    row.id(),
                    SpeciesNames.species(row.text("species")),
                    row.whole("season"),
                    row.text("program"),
                    row.number("last_step"),
                    figures(row.texts("setting_names"), row.texts("setting_values")),
                    figures(row.texts("figure_names"), row.texts("figure_values")),
                    row.texts("sentences"),
                    row.text("sealed_by"),
                    row.date("sealed_on")));

    private SealStore() {}

    private static List<String> names(List<Seal.Figure> figures) {
        return figures.stream().map(Seal.Figure::name).toList();
    }

    private static List<String> values(List<Seal.Figure> figures) {
        return figures.stream().map(Seal.Figure::value).toList();
    }

    private static List<Seal.Figure> figures(List<String> names, List<String> values) {
        return IntStream.range(0, names.size())
                .mapToObj(place -> new Seal.Figure(names.get(place), values.get(place)))
                .toList();
    }

    static List<Seal> seals(Database database) {
        return SEALS.all(database, "season, species");
    }

    static Optional<Seal> seal(Database database, Species species, int season) {
        return SEALS.where(database, "WHERE species = ? AND season = ?", species.scientificName(), season).stream()
                .findFirst();
    }
}
