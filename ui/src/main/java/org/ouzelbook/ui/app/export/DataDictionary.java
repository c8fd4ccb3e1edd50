package org.ouzelbook.ui.app.export;

import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.tracker.exchange.export.DataTable;
import org.ouzelbook.ui.app.Texts;

/** What each column of the tables means. */
final class DataDictionary {
    private DataDictionary() {}

    /** {@return the dictionary, as a table} */
    static DataTable of(List<DataTable> tables) {
        List<List<Object>> rows = new ArrayList<>();
        for (DataTable table : tables) {
            for (String column : table.columns()) {
                rows.add(List.of(table.name(), column, Texts.of("export.column." + column)));
            }
        }
        return new DataTable(
                "dictionary",
                List.of(
                        Texts.of("export.dictionary.table"),
                        Texts.of("export.dictionary.column"),
                        Texts.of("export.dictionary.meaning")),
                rows);
    }

    /** {@return the dictionary as a page of text} */
    static String markdown(DataTable dictionary) {
        StringBuilder page = new StringBuilder();
        page.append("| ").append(String.join(" | ", dictionary.columns())).append(" |\n|---|---|---|\n");
        for (List<Object> row : dictionary.rows()) {
            row.forEach(cell -> page.append("| ")
                    .append(cell.toString().replace("|", "\\|"))
                    .append(' '));
            page.append("|\n");
        }
        return page.toString();
    }
}
