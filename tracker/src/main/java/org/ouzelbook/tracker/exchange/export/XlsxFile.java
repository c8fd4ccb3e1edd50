package org.ouzelbook.tracker.exchange.export;

import java.io.IOException;
import java.io.OutputStream;
import java.io.Writer;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Message;

/**
 * Tables as the sheets of a spreadsheet file: days and times as such, texts always as texts and never as formulas.
 *
 * <p>Source: ECMA-376 (5th edition, 2016), part 1, 12.3, 18.3 and 18.8, and part 2 (packages).
 */
public final class XlsxFile {
    private static final String SHEETS = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private static final String OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private static final String PACKAGE = "http://schemas.openxmlformats.org/package/2006/";
    private static final String TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.";
    private static final LocalDate DAY_ZERO = LocalDate.of(1899, 12, 30);
    private static final double SECONDS_A_DAY = 86_400;
    private static final int MOST_LETTERS = 32_767;
    private static final int MOST_ROWS = 1 << 20;
    private static final int BOLD = 1;
    private static final int DAY = 2;
    private static final int TIME = 3;

    private XlsxFile() {}

    /**
     * {@return what of the tables finds no room in a spreadsheet, which holds 1,048,576 rows a sheet and 32,767 letters a cell; empty
     * if all does}
     *
     * <p>Source: ECMA-376 (5th edition, 2016), part 1, 18.18.16 and 18.3.1.73; Excel specifications and limits, Microsoft.
     *
     * @param tables the tables
     */
    public static Optional<Message> noRoom(List<DataTable> tables) {
        for (DataTable table : tables) {
            if (table.rows().size() >= MOST_ROWS) {
                return Optional.of(
                        Message.of("xlsx.rows", table.name(), table.rows().size(), MOST_ROWS - 1));
            }
            for (int row = 0; row < table.rows().size(); row++) {
                for (int column = 0; column < table.columns().size(); column++) {
                    if (table.rows().get(row).get(column) instanceof String text && text.length() > MOST_LETTERS) {
                        return Optional.of(Message.of(
                                "xlsx.letters",
                                table.name(),
                                row + 2,
                                table.columns().get(column),
                                text.length(),
                                MOST_LETTERS));
                    }
                }
            }
        }
        return Optional.empty();
    }

    /**
     * Writes a spreadsheet file.
     *
     * @param tables the tables, a sheet each
     * @param out where to; it is closed
     * @throws IllegalArgumentException if they find {@link #noRoom}
     * @throws IOException if it cannot be written
     */
    public static void write(List<DataTable> tables, OutputStream out) throws IOException {
        noRoom(tables).ifPresent(why -> {
            throw new IllegalArgumentException("A spreadsheet has no room: " + why);
        });
        try (FixedZip zip = new FixedZip(out)) {
            zip.put("[Content_Types].xml", contentTypes(tables.size()));
            zip.put(
                    "_rels/.rels",
                    relation(relations(), 1, "officeDocument", "xl/workbook.xml")
                            .end());
            zip.put("xl/workbook.xml", workbook(tables));
            XmlText parts = relations();
            for (int i = 1; i <= tables.size(); i++) {
                relation(parts, i, "worksheet", "worksheets/sheet" + i + ".xml");
            }
            zip.put(
                    "xl/_rels/workbook.xml.rels",
                    relation(parts, tables.size() + 1, "styles", "styles.xml").end());
            zip.put("xl/styles.xml", styles());
            for (int i = 1; i <= tables.size(); i++) {
                DataTable table = tables.get(i - 1);
                zip.put("xl/worksheets/sheet" + i + ".xml", text -> sheet(table, text));
            }
        }
    }

    private static String contentTypes(int sheets) {
        XmlText xml = new XmlText()
                .open("Types", "xmlns", PACKAGE + "content-types")
                .empty(
                        "Default",
                        "Extension",
                        "rels",
                        "ContentType",
                        "application/vnd.openxmlformats-package.relationships+xml")
                .empty("Override", "PartName", "/xl/workbook.xml", "ContentType", TYPE + "sheet.main+xml")
                .empty("Override", "PartName", "/xl/styles.xml", "ContentType", TYPE + "styles+xml");
        for (int i = 1; i <= sheets; i++) {
            xml.empty(
                    "Override", "PartName", "/xl/worksheets/sheet" + i + ".xml", "ContentType", TYPE + "worksheet+xml");
        }
        return xml.end();
    }

    private static XmlText relations() {
        return new XmlText().open("Relationships", "xmlns", PACKAGE + "relationships");
    }

    private static XmlText relation(XmlText xml, int id, String type, String target) {
        return xml.empty("Relationship", "Id", "rId" + id, "Type", OFFICE + "/" + type, "Target", target);
    }

    private static String workbook(List<DataTable> tables) {
        XmlText xml = new XmlText()
                .open("workbook", "xmlns", SHEETS, "xmlns:r", OFFICE)
                .open("sheets");
        for (int i = 1; i <= tables.size(); i++) {
            xml.empty("sheet", "name", tables.get(i - 1).name(), "sheetId", i, "r:id", "rId" + i);
        }
        return xml.end();
    }

    private static String styles() {
        XmlText xml = new XmlText()
                .open("styleSheet", "xmlns", SHEETS)
                .open("numFmts", "count", 2)
                .empty("numFmt", "numFmtId", 164, "formatCode", "yyyy-mm-dd")
                .empty("numFmt", "numFmtId", 165, "formatCode", "hh:mm")
                .close()
                .open("fonts", "count", 2)
                .empty("font")
                .open("font")
                .empty("b")
                .close()
                .close()
                .open("fills", "count", 2)
                .open("fill")
                .empty("patternFill", "patternType", "none")
                .close()
                .open("fill")
                .empty("patternFill", "patternType", "gray125")
                .close()
                .close()
                .open("borders", "count", 1)
                .empty("border")
                .close()
                .open("cellStyleXfs", "count", 1)
                .empty("xf", "numFmtId", 0, "fontId", 0, "fillId", 0, "borderId", 0)
                .close()
                .open("cellXfs", "count", 4);
        int[] formats = {0, 0, 164, 165};
        for (int style = 0; style < formats.length; style++) {
            int font = style == BOLD ? 1 : 0;
            xml.empty(
                    "xf",
                    "numFmtId",
                    formats[style],
                    "fontId",
                    font,
                    "fillId",
                    0,
                    "borderId",
                    0,
                    "xfId",
                    0,
                    "applyNumberFormat",
                    1,
                    "applyFont",
                    font);
        }
        xml.close().open("cellStyles", "count", 1).empty("cellStyle", "name", "Normal", "xfId", 0, "builtinId", 0);
        return xml.end();
    }

    private static void sheet(DataTable table, Writer out) throws IOException {
        XmlText xml = new XmlText()
                .open("worksheet", "xmlns", SHEETS)
                .open("sheetViews")
                .open("sheetView", "workbookViewId", 0)
                .empty("pane", "ySplit", 1, "topLeftCell", "A2", "activePane", "bottomLeft", "state", "frozen")
                .close()
                .close()
                .open("sheetData")
                .open("row");
        table.columns().forEach(column -> text(xml, column, BOLD));
        xml.close();
        for (List<Object> row : table.rows()) {
            xml.open("row");
            row.forEach(cell -> cell(xml, cell));
            xml.close().drainTo(out);
        }
        xml.end(out);
    }

    private static void cell(XmlText xml, Object cell) {
        if (cell instanceof LocalDate day) {
            number(xml, (double) ChronoUnit.DAYS.between(DAY_ZERO, day), DAY);
        } else if (cell instanceof LocalTime time) {
            number(xml, time.toSecondOfDay() / SECONDS_A_DAY, TIME);
        } else if (cell instanceof String text) {
            text(xml, text, 0);
        } else {
            number(xml, cell, 0);
        }
    }

    private static void number(XmlText xml, Object number, int style) {
        styled(xml, style).element("v", Numbers.text(number)).close();
    }

    private static void text(XmlText xml, String text, int style) {
        if (text.isEmpty()) {
            xml.empty("c");
            return;
        }
        styled(xml, style, "t", "inlineStr")
                .open("is")
                .element("t", text, "xml:space", "preserve")
                .close()
                .close();
    }

    /** Opens a cell. The plain style is not named: beside a degree its number would read as another. */
    private static XmlText styled(XmlText xml, int style, Object... attributes) {
        List<Object> all = new ArrayList<>(List.of(attributes));
        if (style != 0) {
            all.addAll(List.of("s", style));
        }
        return xml.open("c", all.toArray());
    }
}
