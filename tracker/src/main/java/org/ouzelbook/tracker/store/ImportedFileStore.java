package org.ouzelbook.tracker.store;

import static org.ouzelbook.tracker.store.Table.text;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.ImportedFile;
import org.ouzelbook.tracker.domain.Origin;

/** Keeps which files were imported, and which of their rows a record came from. */
final class ImportedFileStore {
    static final EntryTable<ImportedFile> FILES = new EntryTable<>(
            ImportedFile.class,
            Table.ofRecords("imported_file", text("name"), text("sha256")),
            (file, row) -> row.set("name", file.name()).set("sha256", file.sha256()),
            row -> new ImportedFile(row.id(), row.text("name"), row.text("sha256")));

    private ImportedFileStore() {}

    static List<ImportedFile> files(Database database) {
        return FILES.all(database, "step, name");
    }

    static Optional<ImportedFile> withContent(Database database, String sha256) {
        return FILES.where(database, "WHERE sha256 = ?", sha256).stream().findFirst();
    }

    /** {@return the file and row that a record of the table came from; empty if it was not imported} */
    static Optional<Origin> origin(Database database, Table table, UUID id) {
        return table.row(database, id)
                .flatMap(row -> row.optionalKey("source_id")
                        .flatMap(file -> FILES.byId(database, file))
                        .map(file -> new Origin(file, row.whole("source_row"))));
    }

    /** {@return the rows of the file that records of any kind came from} */
    static BitSet rows(Database database, ImportedFile file) {
        BitSet rows = new BitSet();
        for (EntryTable<?> entries : Schema.ENTRIES) {
            database.each(
                    "SELECT source_row FROM " + entries.table() + " WHERE source_id = ?",
                    result -> result.getInt(1),
                    rows::set,
                    file.id());
        }
        return rows;
    }
}
