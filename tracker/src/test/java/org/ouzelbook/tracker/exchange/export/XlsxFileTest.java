package org.ouzelbook.tracker.exchange.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.ouzelbook.tracker.domain.Message;

/**
 * What finds no room in a spreadsheet: Excel specifications and limits (Microsoft) gives 1,048,576 rows a sheet, of which one is the
 * heading here, and 32,767 characters a cell.
 */
class XlsxFileTest {
    private static DataTable table(List<List<Object>> rows) {
        return new DataTable("visits", List.of("visit", "note"), rows);
    }

    @Test
    void hasRoomForAsManyRowsAsASheet() {
        List<Object> row = List.of("v", "");

        assertThat(XlsxFile.noRoom(List.of(table(Collections.nCopies(1_048_575, row)))))
                .isEmpty();
        assertThat(XlsxFile.noRoom(List.of(table(Collections.nCopies(1_048_576, row)))))
                .contains(Message.of("xlsx.rows", "visits", 1_048_576, 1_048_575));
    }

    @Test
    void cutsNoTextThatIsTooLongForACell() throws IOException {
        DataTable fits = table(List.of(List.of("a", "x".repeat(32_767))));
        DataTable tooLong = table(List.of(List.of("a", ""), List.of("b", "x".repeat(32_768))));
        ByteArrayOutputStream out = new ByteArrayOutputStream();

        assertThat(XlsxFile.noRoom(List.of(fits))).isEmpty();
        assertThat(XlsxFile.noRoom(List.of(fits, tooLong)))
                .isEqualTo(Optional.of(Message.of("xlsx.letters", "visits", 3, "note", 32_768, 32_767)));
        assertThatThrownBy(() -> XlsxFile.write(List.of(tooLong), out)).isInstanceOf(IllegalArgumentException.class);
        assertThat(out.size()).isZero();
    }
}
