package org.ouzelbook.tracker.exchange.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TableFileTest {
    private static final Set<String> KNOWN = Set.of("date", "km", "note");

    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({
        "UTF-8, '', UTF_8",
        "UTF-8, '\uFEFF', UTF_8_WITH_MARK",
        "UTF-16LE, '\uFEFF', UTF_16_LITTLE",
        "UTF-16BE, '\uFEFF', UTF_16_BIG",
        "windows-1252, '', WINDOWS_1252"
    })
    void tellsHowLettersAreStored(String charset, String mark, Encoding encoding) throws IOException {
        TableFile table = table(mark + "date;km;note\n2026-04-13;8,35;Brücke – “Fels”\n", Charset.forName(charset));

        assertThat(table.bytes().encoding()).isEqualTo(encoding);
        assertThat(table.header()).containsExactly("date", "km", "note");
        assertThat(rows(table).get(0).cells()).containsExactly("2026-04-13", "8,35", "Brücke – “Fels”");
    }

    @ParameterizedTest
    @CsvSource({"','", "';'", "'\t'"})
    void findsTheSeparator(String separator) throws IOException {
        TableFile table = table("date,km,note\n2026-04-13,8,x\n".replace(",", separator), StandardCharsets.UTF_8);

        assertThat(table.separator()).isEqualTo(separator.charAt(0));
    }

    @ParameterizedTest
    @CsvSource({"'\n'", "'\r'", "'\r\n'"})
    void readsEveryLineEnd(String end) throws IOException {
        TableFile table = table("date,km\n2026-04-13,8\n2026-04-14,9".replace("\n", end), StandardCharsets.UTF_8);

        assertThat(rows(table)).hasSize(2);
    }

    @Test
    void countsRowsAsASpreadsheetDoes() throws IOException {
        TableFile table = table("""
                Dipper survey 2026,,

                # walked by A. Brook, with "one quote
                date,km,note
                2026-04-13,8,"two
                lines"

                ,,
                2026-04-14,9,next
                """, StandardCharsets.UTF_8);

        List<CsvRow> rows = rows(table);
        assertThat(table.headerRow()).isEqualTo(4);
        assertThat(rows).extracting(CsvRow::row).containsExactly(5L, 8L);
        assertThat(rows).extracting(CsvRow::line).containsExactly(5L, 9L);
    }

    @Test
    void obeysTheSeparatorLineOfSpreadsheets() throws IOException {
        assertThat(table("sep=;\ndate;km\n2026-04-13;8,5\n", StandardCharsets.UTF_8)
                        .header())
                .containsExactly("date", "km");
    }

    @Test
    void refusesWhatIsNoTextTable() {
        assertThatThrownBy(() -> table("", StandardCharsets.UTF_8)).hasMessage("import.file.empty");
        assertThatThrownBy(() -> table("PK\u0003\u0004 and more", StandardCharsets.UTF_8))
                .hasMessage("import.file.spreadsheet");
        assertThatThrownBy(() -> table("date,km\n\0\0", StandardCharsets.UTF_8)).hasMessage("import.file.noText");
        assertThatThrownBy(() -> table("colour,shape\nred,round\n", StandardCharsets.UTF_8))
                .hasMessage("import.file.noHeader");
    }

    private TableFile table(String text, Charset charset) throws IOException {
        Path file = folder.resolve("table.csv");
        Files.write(file, text.getBytes(charset));
        return TableFile.of(new FileSource.OnDisk("table.csv", file), cells ->
                (int) cells.stream().filter(KNOWN::contains).count());
    }

    private static List<CsvRow> rows(TableFile table) throws IOException {
        List<CsvRow> all = new ArrayList<>();
        try (CsvRows rows = table.rows()) {
            for (Optional<CsvRow> row = rows.next(); row.isPresent(); row = rows.next()) {
                all.add(row.get());
            }
        }
        return all;
    }
}
