package org.ouzelbook.tracker.exchange.xlsx;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** A workbook written part by part, as spreadsheets write theirs, with whatever is wrong in it. */
public final class PackedWorkbook {
    private static final String SHEETS = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private static final String RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

    private final Map<String, String> parts = new LinkedHashMap<>();
    private final StringBuilder sheets = new StringBuilder();
    private final StringBuilder relations = new StringBuilder();
    private String properties = "";
    private int count;

    public PackedWorkbook part(String name, String xml) {
        parts.put(name, xml);
        return this;
    }

    PackedWorkbook dates1904() {
        properties = "<workbookPr date1904=\"1\"/>";
        return this;
    }

    public PackedWorkbook sheet(String name, String state, String rows) {
        count++;
        sheets.append(
                "<sheet name=\"%s\" sheetId=\"%d\" state=\"%s\" r:id=\"rId%d\"/>".formatted(name, count, state, count));
        relations.append("<Relationship Id=\"rId%d\" Target=\"worksheets/sheet%d.xml\"/>".formatted(count, count));
        return part(
                "xl/worksheets/sheet" + count + ".xml",
                "<worksheet xmlns=\"" + SHEETS + "\"><sheetData>" + rows + "</worksheet>");
    }

    public Path write(Path file) {
        try (OutputStream out = Files.newOutputStream(file);
                ZipOutputStream zip = new ZipOutputStream(out)) {
            put(
                    zip,
                    "xl/workbook.xml",
                    "<workbook xmlns=\"%s\" xmlns:r=\"%s\">%s<sheets>%s</sheets></workbook>"
                            .formatted(SHEETS, RELATIONS, properties, sheets));
            put(zip, "xl/_rels/workbook.xml.rels", "<Relationships>" + relations + "</Relationships>");
            for (Map.Entry<String, String> part : parts.entrySet()) {
                put(zip, part.getKey(), part.getValue());
            }
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void put(ZipOutputStream zip, String name, String xml) throws IOException {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(xml.getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
    }
}
