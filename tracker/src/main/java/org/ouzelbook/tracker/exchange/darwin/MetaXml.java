package org.ouzelbook.tracker.exchange.darwin;

import java.util.List;
import org.ouzelbook.tracker.exchange.export.XmlText;

/**
 * The description of an archive's files.
 *
 * <p>Source: Darwin Core text guide, TDWG: within a file the order is files, id or coreid, fields.
 */
final class MetaXml {
    private MetaXml() {}

    static String text(List<ArchiveTable> tables, Licence licence) {
        XmlText xml = new XmlText().open("archive", "xmlns", "http://rs.tdwg.org/dwc/text/", "metadata", "eml.xml");
        for (int i = 0; i < tables.size(); i++) {
            file(xml, tables.get(i), i == 0, licence);
        }
        return xml.end();
    }

    private static void file(XmlText xml, ArchiveTable table, boolean core, Licence licence) {
        xml.open(
                core ? "core" : "extension",
                "encoding",
                "UTF-8",
                "fieldsTerminatedBy",
                "\\t",
                "linesTerminatedBy",
                "\\n",
                "fieldsEnclosedBy",
                "",
                "ignoreHeaderLines",
                1,
                "rowType",
                table.file().rowType());
        xml.open("files").element("location", table.file().fileName()).close();
        xml.empty(core ? "id" : "coreid", "index", 0);
        for (int column = core ? 0 : 1; column < table.terms().size(); column++) {
            xml.empty(
                    "field",
                    "index",
                    column,
                    "term",
                    ArchiveTable.address(table.terms().get(column)));
        }
        if (core) {
            xml.empty("field", "term", ArchiveTable.address("dcterms:license"), "default", licence.url());
        }
        xml.close();
    }
}
