package org.ouzelbook.tracker.exchange.xlsx;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.tracker.exchange.cell.SerialDates;
import org.ouzelbook.tracker.exchange.file.FileSource;

class WorkbookTest {
    private static final String STYLES = """
            <styleSheet><numFmts><numFmt numFmtId="164" formatCode="[$-809]dd\\/mm\\/yyyy;@"/>
            <numFmt numFmtId="165" formatCode="hh:mm"/><numFmt numFmtId="166" formatCode="0.00&quot; d&quot;"/></numFmts>
            <cellStyleXfs><xf numFmtId="14"/></cellStyleXfs>
            <cellXfs><xf numFmtId="0"/><xf numFmtId="164"/><xf numFmtId="165"/><xf numFmtId="166"/><xf numFmtId="22"/></cellXfs>
            </styleSheet>""";

    @TempDir
    Path folder;

    private List<String> lines(PackedWorkbook workbook) throws IOException {
        List<FileSource> sheets = sheets(workbook);
        assertThat(sheets).hasSize(1);
        try (InputStream in = sheets.get(0).open()) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .replace("\"", "")
                    .lines()
                    .toList();
        }
    }

    private List<FileSource> sheets(PackedWorkbook workbook) throws IOException {
        Path file = workbook.write(folder.resolve("notes.xlsx"));
        return Workbook.sheets(new FileSource.OnDisk("notes.xlsx", file));
    }

    /** 46097 is 16 March 2026: 25569 is 1 January 1970 in the system of 1900 (ECMA-376), and 20 528 days passed since. */
    @Test
    void readsDaysTimesNumbersAndTextsInRowsAsTheSpreadsheetNumbersThem() throws IOException {
        PackedWorkbook workbook = new PackedWorkbook()
                .part("xl/styles.xml", STYLES)
                .part(
                        "xl/sharedStrings.xml",
                        "<sst><si><t>Mill Bridge</t></si><si><r><t>otter </t></r><r><t>stone</t></r><rPh><t>x</t></rPh></si></sst>")
                .sheet("2026", "visible", """
                        <row r="1"><c r="A1" t="inlineStr"><is><t>date</t></is></c><c r="C1" t="str"><v>km</v></c></row>
                        <row r="4"><c r="A4" s="1"><v>46097</v></c><c r="B4" s="2"><v>0.3611111111111111</v></c>
                        <c r="C4"><f>A1+1</f><v>8.4000000000000004</v></c><c r="D4" t="s"><v>0</v></c><c r="E4" t="s"><v>1</v></c>
                        <c r="F4" t="b"><v>1</v></c><c r="G4" t="e"><v>#REF!</v></c><c r="H4" s="3"><v>2.5</v></c>
                        <c r="I4" s="4"><v>46097.3611111111</v></c><c r="J4"><v>12345678</v></c></row></sheetData>""");

        assertThat(lines(workbook))
                .containsExactly(
                        "date,,km",
                        "",
                        "",
                        "2026-03-16,08:40,8.4,Mill Bridge,otter stone,yes,#REF!,2.5,2026-03-16T08:40,12345678");
    }

    @Test
    void countsDaysFrom1904WhereTheWorkbookDoes() throws IOException {
        PackedWorkbook workbook = new PackedWorkbook()
                .dates1904()
                .part("xl/styles.xml", STYLES)
                .sheet("a", "visible", "<row><c s=\"1\"><v>44635</v></c></row></sheetData>");

        assertThat(lines(workbook)).containsExactly("2026-03-16");
    }

    @Test
    void repeatsACellMergedDownInEachOfItsRows() throws IOException {
        PackedWorkbook workbook = new PackedWorkbook().sheet("a", "visible", """
                <row r="1"><c r="A1" t="str"><v>day</v></c><c r="B1"><v>1</v></c></row>
                <row r="2"><c r="B2"><v>2</v></c></row><row r="3"><c r="B3"><v>3</v></c></row></sheetData>
                <mergeCells><mergeCell ref="A1:A2"/></mergeCells>""");

        assertThat(lines(workbook)).containsExactly("day,1", "day,2", ",3");
    }

    @Test
    void leavesOutHiddenSheetsAndNamesTheOthers() throws IOException {
        List<FileSource> sheets = sheets(new PackedWorkbook()
                .sheet("visits", "visible", "</sheetData>")
                .sheet("lists", "veryHidden", "</sheetData>")
                .sheet("birds", "visible", "</sheetData>"));

        assertThat(sheets).extracting(FileSource::name).containsExactly("notes.xlsx!visits", "notes.xlsx!birds");
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            <row r="1048577"/></sheetData>,                               import.file.noSheet
            <row r="2"/><row r="2"/></sheetData>,                         import.file.noSheet
            <row r="1"><c r="ZZZ1"><v>1</v></c></row></sheetData>,        import.file.noSheet
            <row r="1"><c,                                                import.file.brokenXml
            """)
    void refusesSheetsBeyondReason(String rows, String key) {
        assertThatThrownBy(() -> sheets(new PackedWorkbook().sheet("a", "visible", rows)))
                .hasMessage(key);
    }

    @Test
    void refusesEntitiesWhereverTheyStand() {
        PackedWorkbook workbook = new PackedWorkbook()
                .part(
                        "xl/sharedStrings.xml",
                        "<!DOCTYPE sst [<!ENTITY x SYSTEM \"file:///etc/passwd\">]><sst><si><t>&x;</t></si></sst>")
                .sheet("a", "visible", "</sheetData>");

        assertThatThrownBy(() -> sheets(workbook)).hasMessage("import.file.doctype");
    }

    @Test
    void saysThatAFileIsNoWorkbook() throws IOException {
        Path file = folder.resolve("notes.xlsx");
        Files.writeString(file, "PK? no.");

        assertThatThrownBy(() -> Workbook.sheets(new FileSource.OnDisk("notes.xlsx", file)))
                .hasMessage("import.file.noWorkbook");
    }

    /** ECMA-376 part 1, 18.8.30. */
    @ParameterizedTest
    @CsvSource(textBlock = """
            0,   General,              NUMBER
            10,  ,                     NUMBER
            14,  ,                     DAY
            20,  ,                     TIME
            22,  ,                     DAY_AND_TIME
            164, '#,##0.00',           NUMBER
            164, '[Red]0.0',           NUMBER
            164, '0\\ "days"',         NUMBER
            164, 'mmm yyyy',           DAY
            164, 'd mmmm',             DAY
            164, '[h]:mm',             TIME
            164, 'yyyy-mm-dd hh:mm',   DAY_AND_TIME
            """)
    void tellsDaysFromNumbersByTheirFormat(int id, String code, CellForm form) {
        assertThat(CellForm.of(id, code == null ? "" : code)).isEqualTo(form);
    }

    @Test
    void keepsNumbersThatAreNoDays() {
        assertThat(CellForm.DAY.written("-3", SerialDates.EXCEL_1900)).isEqualTo("-3");
        assertThat(CellForm.DAY.written("1E300", SerialDates.EXCEL_1900)).isEqualTo("1E300");
        assertThat(CellForm.NUMBER.written("0.30000000000000004", SerialDates.EXCEL_1900))
                .isEqualTo("0.3");
    }
}
