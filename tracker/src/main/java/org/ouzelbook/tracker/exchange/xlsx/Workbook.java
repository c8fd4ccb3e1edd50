package org.ouzelbook.tracker.exchange.xlsx;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.exchange.cell.SerialDates;
import org.ouzelbook.tracker.exchange.file.FileSource;
import org.ouzelbook.tracker.exchange.file.PlainXml;
import org.ouzelbook.tracker.exchange.file.UnreadableFile;

/**
 * A spreadsheet file, read as one text table a visible sheet. Formulas are never worked out: their last result is read.
 *
 * <p>Source: ECMA-376 (5th edition, 2016), part 1, 12.3 and 18.2 (workbooks).
 */
public final class Workbook {
    /** What is read in place of a formula whose result was not kept. */
    public static final String NO_RESULT = "#FORMULA?";

    /** What is read in place of a text that the workbook lacks. */
    public static final String NO_TEXT = "#TEXT?";

    private static final String WORKBOOK = "xl/workbook.xml";

    private final List<Sheet> sheets = new ArrayList<>();
    private SerialDates days = SerialDates.EXCEL_1900;

    private record Sheet(String name, String relation) {}

    private Workbook() {}

    /**
     * {@return whether a file is read as a spreadsheet, by the end of its name}
     *
     * @param source a file
     */
    public static boolean isOne(FileSource source) {
        return source.plainName().endsWith(".xlsx") || source.plainName().endsWith(".xlsm");
    }

    /**
     * {@return the visible sheets of a file, as text tables whose rows have the numbers that the spreadsheet shows}
     *
     * @param source a spreadsheet file
     * @throws UnreadableFile if it is none, is locked, or is too large
     * @throws IOException if it cannot be read
     */
    public static List<FileSource> sheets(FileSource source) throws IOException {
        if (source instanceof FileSource.OnDisk file) {
            return sheets(source.name(), file.path());
        }
        Path unpacked = Files.createTempFile("ouzelbook-", ".xlsx");
        try (InputStream in = source.open()) {
            Files.copy(in, unpacked, StandardCopyOption.REPLACE_EXISTING);
            return sheets(source.name(), unpacked);
        } finally {
            Files.delete(unpacked);
        }
    }

    private static List<FileSource> sheets(String name, Path path) throws IOException {
        try (ZipFile zip = new ZipFile(path.toFile())) {
            Workbook workbook = new Workbook();
            if (Part.read(zip, WORKBOOK, workbook::read).isEmpty()) {
                throw new UnreadableFile(Message.of("import.file.noWorkbook"));
            }
            Map<String, String> parts = Part.read(zip, "xl/_rels/workbook.xml.rels", Workbook::relations)
                    .orElse(Map.of());
            SharedTexts texts =
                    Part.read(zip, "xl/sharedStrings.xml", SharedTexts::of).orElseGet(SharedTexts::new);
            CellForms forms = Part.read(zip, "xl/styles.xml", CellForms::of).orElseGet(CellForms::new);
            List<FileSource> tables = new ArrayList<>();
            for (Sheet sheet : workbook.sheets) {
                String part = parts.getOrDefault(sheet.relation, "");
                String shown = workbook.sheets.size() == 1 ? name : name + "!" + sheet.name;
                tables.add(new FileSource.Table(
                        shown, FileSource.Form.SHEET, new SheetRows(texts, forms, workbook.days).csv(zip, part)));
            }
            return tables;
        } catch (ZipException e) {
            throw new UnreadableFile(Message.of("import.file.noWorkbook"));
        }
    }

    private boolean read(PlainXml xml) throws XMLStreamException {
        while (xml.hasNext()) {
            if (xml.next() != XMLStreamConstants.START_ELEMENT) {
                continue;
            }
            if (xml.getLocalName().equals("workbookPr")
                    && xml.attribute("date1904").filter(Workbook::isTrue).isPresent()) {
                days = SerialDates.EXCEL_1904;
            }
            boolean hidden = xml.attribute("state")
                    .orElse("visible")
                    .toLowerCase(Locale.ROOT)
                    .contains("hidden");
            if (xml.getLocalName().equals("sheet") && !hidden) {
                sheets.add(new Sheet(
                        xml.attribute("name").orElse("sheet"),
                        xml.attribute("id").orElse("")));
            }
        }
        return true;
    }

    private static boolean isTrue(String text) {
        return text.equals("1") || text.equals("true");
    }

    private static Map<String, String> relations(PlainXml xml) throws XMLStreamException {
        Map<String, String> parts = new HashMap<>();
        while (xml.hasNext()) {
            if (xml.next() == XMLStreamConstants.START_ELEMENT
                    && xml.getLocalName().equals("Relationship")) {
                String target = xml.attribute("Target").orElse("");
                parts.put(
                        xml.attribute("Id").orElse(""), target.startsWith("/") ? target.substring(1) : "xl/" + target);
            }
        }
        return parts;
    }
}
