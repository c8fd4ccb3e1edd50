package org.ouzelbook.tracker.exchange.xlsx;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.xml.stream.XMLStreamException;
import org.ouzelbook.tracker.exchange.file.PlainXml;

/** The forms of cells by the number of their style. */
final class CellForms {
    private final List<CellForm> byStyle = new ArrayList<>();

    /** {@return the forms of the part {@code styles.xml}} */
    static CellForms of(PlainXml xml) throws XMLStreamException {
        CellForms forms = new CellForms();
        Map<Integer, String> codes = new HashMap<>();
        boolean cells = false;
        while (xml.hasNext()) {
            xml.next();
            if (xml.isStartElement()) {
                int id = Part.number(xml.attribute("numFmtId"), 0);
                switch (xml.getLocalName()) {
                    case "numFmt" -> codes.put(id, xml.attribute("formatCode").orElse(""));
                    case "cellXfs" -> cells = true;
                    case "xf" -> {
                        if (cells) {
                            forms.byStyle.add(CellForm.of(id, codes.getOrDefault(id, "")));
                        }
                    }
                    default -> {
                        // fonts, fills and borders mean nothing here
                    }
                }
            } else if (xml.isEndElement() && xml.getLocalName().equals("cellXfs")) {
                cells = false;
            }
        }
        return forms;
    }

    CellForm of(int style) {
        return style >= 0 && style < byStyle.size() ? byStyle.get(style) : CellForm.NUMBER;
    }
}
