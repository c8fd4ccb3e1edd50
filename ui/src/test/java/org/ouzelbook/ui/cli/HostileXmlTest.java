package org.ouzelbook.ui.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * XML that fetches other files or swells: in whatever form it comes, it is refused before any of it is read.
 *
 * <p>Source of the tricks: OWASP, XML External Entity Prevention.
 */
class HostileXmlTest {
    private static final String FETCHES = "<!DOCTYPE l [<!ENTITY x SYSTEM \"file:///etc/passwd\">]>";
    private static final String FETCHES_BY_PARAMETER =
            "<!DOCTYPE l [<!ENTITY % p SYSTEM \"http://127.0.0.1:9/x.dtd\"> %p;]>";
    private static final String ELSEWHERE = "<!DOCTYPE l SYSTEM \"http://127.0.0.1:9/x.dtd\">";
    private static final String SWELLS = """
            <!DOCTYPE l [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;&b;&b;&b;&b;">\
            <!ENTITY x "&c;&c;&c;&c;&c;&c;&c;&c;&c;&c;&c;">]>""";

    @TempDir
    Path folder;

    private HostileFiles files;

    @BeforeEach
    void makeABook() {
        files = HostileFiles.in(folder);
    }

    @ParameterizedTest
    @ValueSource(strings = {FETCHES, FETCHES_BY_PARAMETER, ELSEWHERE, SWELLS})
    void isRefusedAsAWalk(String type) {
        files.refuses(
                files.file("a.gpx", type + "<gpx><wpt lat=\"57.23\" lon=\"-6.4\"><name>DI &x;</name></wpt></gpx>"),
                "document type");
    }

    @ParameterizedTest
    @ValueSource(strings = {FETCHES, FETCHES_BY_PARAMETER, ELSEWHERE, SWELLS})
    void isRefusedAsAGlobe(String type) {
        String kml = type
                + "<kml><Placemark><name>&x;</name><Point><coordinates>-6.4,57.23</coordinates></Point></Placemark></kml>";

        files.refuses(files.file("a.kml", kml), "document type");
        files.refuses(files.zip("a.kmz", Map.of("doc.kml", kml)), "document type");
    }

    @ParameterizedTest
    @ValueSource(strings = {FETCHES, FETCHES_BY_PARAMETER, ELSEWHERE, SWELLS})
    void isRefusedAsASpreadsheet(String type) {
        files.refuses(
                files.zip(
                        "a.xlsx",
                        Map.of(
                                "[Content_Types].xml",
                                "<Types/>",
                                "xl/workbook.xml",
                                type + "<workbook>&x;</workbook>")),
                "document type");
    }

    /** A cell may point to a text that the workbook does not have; its row is told, not lost. */
    @Test
    void aSpreadsheetThatLacksATextIsToldByItsRow() {
        String main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
        String office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
        String rows = "<row r=\"1\"><c r=\"A1\" t=\"s\"><v>0</v></c><c r=\"B1\" t=\"s\"><v>1</v></c>"
                + "<c r=\"C1\" t=\"s\"><v>2</v></c></row><row r=\"2\"><c r=\"A2\" t=\"s\"><v>3</v></c><c r=\"B2\"><v>3.1</v></c>"
                + "<c r=\"C2\" t=\"s\"><v>99</v></c></row>";
        Path file = files.zip(
                "a.xlsx",
                Map.of(
                        "xl/workbook.xml",
                        "<workbook xmlns=\"" + main + "\" xmlns:r=\"" + office
                                + "\"><sheets><sheet name=\"S\" sheetId=\"1\" r:id=\"rId1\"/></sheets></workbook>",
                        "xl/_rels/workbook.xml.rels",
                        "<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\">"
                                + "<Relationship Id=\"rId1\" Type=\"" + office
                                + "/worksheet\" Target=\"worksheets/sheet1.xml\"/><Relationship Id=\"rId2\" Type=\""
                                + office
                                + "/sharedStrings\" Target=\"sharedStrings.xml\"/></Relationships>",
                        "xl/sharedStrings.xml",
                        "<sst xmlns=\"" + main + "\"><si><t>date</t></si><si><t>km</t></si><si><t>species</t></si>"
                                + "<si><t>2026-03-02</t></si></sst>",
                        "xl/worksheets/sheet1.xml",
                        "<worksheet xmlns=\"" + main + "\"><sheetData>" + rows + "</sheetData></worksheet>"));

        files.refuses(file, "a.xlsx:2:species", "lacks the text");
    }

    @ParameterizedTest
    @ValueSource(strings = {FETCHES, FETCHES_BY_PARAMETER, ELSEWHERE, SWELLS})
    void isRefusedAsAnArchive(String type) {
        files.refuses(files.zip("a.zip", Map.of("meta.xml", type + "<archive>&x;</archive>")), "document type");
    }

    @Test
    void isRefusedInOtherLetters() {
        byte[] wide = (FETCHES + "<gpx><wpt lat=\"57.23\" lon=\"-6.4\"/></gpx>").getBytes(StandardCharsets.UTF_16);

        files.refuses(files.file("a.gpx", wide), "document type");
    }

    @Test
    void ofHugeDepthIsReadOrRefused() {
        String deep = "<kml>" + "<Folder>".repeat(100_000) + "</Folder>".repeat(100_000) + "</kml>";

        files.refuses(files.file("a.kml", deep), "holds no line");
    }

    @ParameterizedTest
    @ValueSource(strings = {"a.gpx", "a.kml", "a.kmz", "a.xlsx", "meta.xml"})
    void thatBreaksOffIsRefused(String name) {
        files.refuses(files.file("cut/" + name, "<a><b"), "");
    }
}
