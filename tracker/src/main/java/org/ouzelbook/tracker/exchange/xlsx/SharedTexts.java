package org.ouzelbook.tracker.exchange.xlsx;

import java.util.ArrayList;
import java.util.List;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import org.ouzelbook.tracker.exchange.file.PlainXml;

/** The texts that cells name by number. */
final class SharedTexts {
    private final List<String> texts = new ArrayList<>();

    /** {@return the texts of the part {@code sharedStrings.xml}} */
    static SharedTexts of(PlainXml xml) throws XMLStreamException {
        SharedTexts shared = new SharedTexts();
        while (xml.hasNext()) {
            if (xml.next() == XMLStreamConstants.START_ELEMENT
                    && xml.getLocalName().equals("si")) {
                shared.texts.add(text(xml, "si"));
            }
        }
        return shared;
    }

    /** {@return the text within an element, its runs joined, without the signs that tell how it is spoken} */
    static String text(PlainXml xml, String element) throws XMLStreamException {
        StringBuilder text = new StringBuilder();
        while (xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.END_ELEMENT && xml.getLocalName().equals(element)) {
                return text.toString();
            }
            if (event == XMLStreamConstants.START_ELEMENT) {
                switch (xml.getLocalName()) {
                    case "t" -> text.append(xml.text());
                    case "rPh" -> xml.text();
                    default -> {
                        // fonts of a run
                    }
                }
            }
        }
        return text.toString();
    }

    /** {@return the text of this number; {@link Workbook#NO_TEXT} if the workbook has none, so that its row is told and not lost} */
    String get(int number) {
        return number >= 0 && number < texts.size() ? texts.get(number) : Workbook.NO_TEXT;
    }
}
