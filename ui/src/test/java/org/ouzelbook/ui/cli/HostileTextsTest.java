package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Enumeration;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;

/** Texts that are code somewhere else: formulas of spreadsheets (OWASP, CSV Injection), markup, ends of sections. */
class HostileTextsTest {
    private static final List<String> TEXTS = List.of(
            "=HYPERLINK(\"http://x.example\",\"look\")",
            "+cmd|' /C calc'!A0",
            "@SUM(1+1)*cmd|' /C calc'!A0",
            "-2+3+cmd|' /C calc'!A0",
            "<script>alert(1)</script>",
            "]]> & <!-- \" '",
            "&lt;b&gt; &x;");

    @TempDir
    Path folder;

    private HostileFiles files;

    @BeforeEach
    void makeABook() {
        files = HostileFiles.in(folder);
        StringBuilder rows = new StringBuilder(HostileFiles.HEADER);
        StringBuilder marks = new StringBuilder("name,km,kind\n");
        for (int i = 0; i < TEXTS.size(); i++) {
            String quoted = "\"" + TEXTS.get(i).replace("\"", "\"\"") + "\"";
            rows.append("2026-03-0")
                    .append(i + 2)
                    .append(",3.1,dipper,1,")
                    .append(quoted)
                    .append('\n');
            marks.append(quoted).append(',').append(i + 1).append(",rock\n");
        }
        files.takes(files.file("rows.csv", rows.toString()));
        files.takes(files.file("marks.csv", marks.toString()));
    }

    private Path export(String form) {
        Path out = folder.resolve("out-" + form);
        CommandRun run = CommandRun.of(
                "export", files.book(), "--as", form, "--private", "--licence", "CC0", "--out", out, "--replace");
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        return out;
    }

    private static List<String> parts(Path zipped, String ending) throws IOException {
        List<String> parts = new ArrayList<>();
        try (ZipFile zip = new ZipFile(zipped.toFile())) {
            for (Enumeration<? extends ZipEntry> entries = zip.entries(); entries.hasMoreElements(); ) {
                ZipEntry entry = entries.nextElement();
                if (entry.getName().endsWith(ending)) {
                    try (InputStream in = zip.getInputStream(entry)) {
                        parts.add(new String(in.readAllBytes(), StandardCharsets.UTF_8));
                    }
                }
            }
        }
        return parts;
    }

    private static Document parsed(String xml) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(xml.getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void beginNoCellOfATextTableAsAFormula() throws IOException {
        for (String table : parts(export("csv"), ".csv")) {
            assertThat(table).doesNotContainPattern("(?m)(^|,)\"?[=+@]").doesNotContainPattern("(?m)(^|,)\"?-2\\+");
        }
    }

    @Test
    void areTextsInASpreadsheetAndNoFormulas() throws Exception {
        List<String> sheets = parts(export("xlsx"), ".xml");

        for (String sheet : sheets) {
            assertThat(parsed(sheet).getElementsByTagName("f").getLength()).isZero();
        }
        assertThat(String.join("", sheets)).contains("=HYPERLINK(", "t=\"inlineStr\"");
    }

    @ParameterizedTest
    @ValueSource(strings = {"kml", "gpx"})
    void areTextsInXmlAndNoElements(String form) throws Exception {
        Document document = parsed(Files.readString(export(form)));

        assertThat(document.getElementsByTagName("script").getLength()).isZero();
        assertThat(document.getDocumentElement().getTextContent()).contains(TEXTS);
    }

    @Test
    void areTextsInTheDescriptionOfAnArchive() throws Exception {
        Path out = folder.resolve("archive.zip");
        String title = "Birds </title><script>go()</script> & ]]> of \"Arrel\"";
        CommandRun run = CommandRun.of(
                "export",
                files.book(),
                "--as",
                "darwin-core",
                "--licence",
                "CC0",
                "--title",
                title,
                "--group",
                "Wade <b> & Co",
                "--out",
                out);

        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        for (String xml : parts(out, ".xml")) {
            Document document = parsed(xml);
            assertThat(document.getElementsByTagName("script").getLength()).isZero();
        }
        assertThat(parsed(parts(out, "eml.xml").get(0))
                        .getElementsByTagName("title")
                        .item(0)
                        .getTextContent())
                .isEqualTo(title);
    }

    @Test
    void comeInAgainAsTheyWere() throws IOException {
        Path other = folder.resolve("other.mv.db");
        CommandRun.of("new", other, "--river", folder.resolve("arrel.geojson"));
        CommandRun run = CommandRun.of("import", other, Files.move(export("csv"), folder.resolve("tables.zip")));

        assertThat(run.exitCode()).as(run.out()).isZero();
        assertThat(CommandRun.of("show", other, "landmarks", "--json").out())
                .isEqualTo(CommandRun.of("show", files.book(), "landmarks", "--json")
                        .out());
    }
}
