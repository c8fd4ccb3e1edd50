package org.ouzelbook.tracker.exchange.xlsx;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.QuoteStrategies;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipFile;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.exchange.cell.SerialDates;
import org.ouzelbook.tracker.exchange.file.PlainXml;
import org.ouzelbook.tracker.exchange.file.UnreadableFile;

/**
 * The rows of one sheet, turned into a text table with the same numbers of rows. A cell that is merged over several rows says
 * the same in each of them, as a person reads it. A formula whose result was never stored becomes {@code #FORMULA?}, beside the errors
 * that spreadsheets write themselves.
 *
 * <p>Source: ECMA-376 (5th edition, 2016), part 1, 18.3.1 (worksheets).
 */
final class SheetRows {
    private static final int MOST_ROWS = 1_048_576;
    private static final int MOST_COLUMNS = 16_384;
    private static final int MOST_CHARACTERS = 100_000_000;
    private static final Pattern CELL = Pattern.compile("([A-Z]{1,3})(\\d{1,7})");
    private static final Pattern MERGED = Pattern.compile(CELL.pattern() + ":" + CELL.pattern());

    private final SharedTexts texts;
    private final CellForms forms;
    private final SerialDates days;
    private final List<Down> merged = new ArrayList<>();
    private final Map<Down, String> mergedText = new HashMap<>();
    private final StringWriter csv = new StringWriter();
    private final CsvWriter writer =
            CsvWriter.builder().quoteStrategy(QuoteStrategies.ALWAYS).build(csv);
    private int written;

    /** A cell that reaches down over others. */
    private record Down(int column, int top, int bottom) {}

    SheetRows(SharedTexts texts, CellForms forms, SerialDates days) {
        this.texts = texts;
        this.forms = forms;
        this.days = days;
    }

    /** {@return the sheet as a text table in UTF-8} */
    byte[] csv(ZipFile zip, String part) throws IOException {
        Part.read(zip, part, this::findMerged);
        Part.read(zip, part, this::write);
        writer.flush();
        return csv.toString().getBytes(StandardCharsets.UTF_8);
    }

    private boolean findMerged(PlainXml xml) throws XMLStreamException {
        while (xml.hasNext()) {
            if (xml.next() == XMLStreamConstants.START_ELEMENT
                    && xml.getLocalName().equals("mergeCell")) {
                Matcher range = MERGED.matcher(xml.attribute("ref").orElse(""));
                if (range.matches()) {
                    int top = Integer.parseInt(range.group(2));
                    int bottom = Integer.parseInt(range.group(4));
                    if (bottom > top && bottom <= MOST_ROWS) {
                        merged.add(new Down(column(range.group(1)), top, bottom));
                    }
                }
            }
        }
        return true;
    }

    private boolean write(PlainXml xml) throws XMLStreamException, IOException {
        int row = 0;
        List<String> cells = new ArrayList<>();
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.START_ELEMENT && xml.getLocalName().equals("row")) {
                int next = Part.number(xml.attribute("r"), row + 1);
                if (next <= row || next > MOST_ROWS) {
                    throw new UnreadableFile(Message.of("import.file.noSheet", next));
                }
                row = next;
                cells.clear();
            } else if (event == XMLStreamConstants.START_ELEMENT
                    && xml.getLocalName().equals("c")) {
                Matcher reference = CELL.matcher(xml.attribute("r").orElse(""));
                int column = reference.matches() ? column(reference.group(1)) : cells.size();
                if (column >= MOST_COLUMNS) {
                    throw new UnreadableFile(Message.of("import.file.noSheet", row));
                }
                set(cells, column, cell(xml));
            } else if (event == XMLStreamConstants.END_ELEMENT
                    && xml.getLocalName().equals("row")) {
                write(row, cells);
            }
        }
        return true;
    }

    private static int column(String letters) {
        int column = 0;
        for (int i = 0; i < letters.length(); i++) {
            column = column * 26 + letters.charAt(i) - 'A' + 1;
        }
        return column - 1;
    }

    private static void set(List<String> cells, int column, String text) {
        while (cells.size() <= column) {
            cells.add("");
        }
        cells.set(column, text);
    }

    private String cell(PlainXml xml) throws XMLStreamException {
        String type = xml.attribute("t").orElse("n");
        int style = Part.number(xml.attribute("s"), 0);
        String text = "";
        boolean formula = false;
        boolean result = false;
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.END_ELEMENT && xml.getLocalName().equals("c")) {
                break;
            }
            if (event == XMLStreamConstants.START_ELEMENT) {
                formula |= xml.getLocalName().equals("f");
                result |= xml.getLocalName().equals("v");
                switch (xml.getLocalName()) {
                    case "v" -> text = xml.text();
                    case "is" -> text = SharedTexts.text(xml, "is");
                    default -> xml.text();
                }
            }
        }
        if (formula && !result) {
            return Workbook.NO_RESULT;
        }
        return switch (type) {
            case "s" -> text.isBlank() ? "" : texts.get(Part.number(Optional.of(text), -1));
            case "b" -> text.equals("1") ? "yes" : "no";
            case "n" -> text.isEmpty() ? "" : forms.of(style).written(text, days);
            default -> text;
        };
    }

    private void write(int row, List<String> cells) throws IOException {
        for (Down down : merged) {
            if (row == down.top && down.column < cells.size()) {
                mergedText.put(down, cells.get(down.column));
            } else if (row > down.top && row <= down.bottom && mergedText.containsKey(down)) {
                set(cells, down.column, mergedText.get(down));
            }
        }
        if (cells.stream().allMatch(String::isBlank)) {
            return;
        }
        for (; written < row - 1; written++) {
            writer.writeRecord("");
        }
        writer.writeRecord(cells);
        written = row;
        if (csv.getBuffer().length() > MOST_CHARACTERS) {
            throw new UnreadableFile(Message.of("import.file.tooLarge", MOST_CHARACTERS >> 20));
        }
    }
}
