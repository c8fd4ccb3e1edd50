package org.ouzelbook.ui.app.leak;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.Map;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionURI;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationText;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ouzelbook.ui.cli.CommandRun;

/** Secrets in places of a file that its reader does not show. */
class LeaksInContainersTest {
    private static final String SECRET = "thanks to Ina Brekke";

    @TempDir
    static Path folder;

    private static LeakBook book;

    @BeforeAll
    static void makeABook() throws IOException {
        book = LeakBook.in(folder);
    }

    /** Something that is done to a PDF. */
    private interface Change {
        void to(PDDocument document, PDPage page) throws IOException;
    }

    private static byte[] pdf(Change change) throws IOException {
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage();
            document.addPage(page);
            change.to(document, page);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            document.save(bytes);
            return bytes.toByteArray();
        }
    }

    private static void found(byte[] bytes) throws IOException {
        assertThat(book.kinds("x.bin", bytes)).containsExactly(Leak.Kind.NAME);
    }

    @Test
    void aPdfHasBookmarksCommentsAndLinks() throws IOException {
        found(pdf((document, page) -> {
            PDDocumentOutline outline = new PDDocumentOutline();
            PDOutlineItem item = new PDOutlineItem();
            item.setTitle(SECRET);
            outline.addLast(item);
            document.getDocumentCatalog().setDocumentOutline(outline);
        }));
        found(pdf((document, page) -> {
            PDAnnotationText comment = new PDAnnotationText();
            comment.setContents(SECRET);
            page.getAnnotations().add(comment);
        }));
        found(pdf((document, page) -> {
            PDAnnotationLink link = new PDAnnotationLink();
            PDActionURI action = new PDActionURI();
            action.setURI("mailto:ina.brekke@arrel.example");
            link.setAction(action);
            page.getAnnotations().add(link);
        }));
        // a description of a picture, as a tagged document has it
        found(pdf((document, page) -> page.getCOSObject().setItem(COSName.getPDFName("Alt"), new COSString(SECRET))));
        assertThat(book.kinds("x.pdf", pdf((document, page) -> {}))).isEmpty();
    }

    @Test
    void aPdfHasAttachments() throws IOException {
        found(pdf((document, page) -> {
            PDEmbeddedFile file =
                    new PDEmbeddedFile(document, new ByteArrayInputStream(zip("notes.txt", SECRET, "", "")));
            PDComplexFileSpecification named = new PDComplexFileSpecification();
            named.setFile("more.zip");
            named.setEmbeddedFile(file);
            PDEmbeddedFilesNameTreeNode tree = new PDEmbeddedFilesNameTreeNode();
            tree.setNames(Map.of("more", named));
            PDDocumentNameDictionary names = new PDDocumentNameDictionary(document.getDocumentCatalog());
            names.setEmbeddedFiles(tree);
            document.getDocumentCatalog().setNames(names);
        }));
    }

    /** Blacking out what an editor only adds to leaves what was there before. */
    @Test
    void aPdfHoldsWhatItSaidBefore() throws IOException {
        byte[] before =
                pdf((document, page) -> document.getDocumentInformation().setAuthor(SECRET));
        try (PDDocument document = org.apache.pdfbox.Loader.loadPDF(before)) {
            document.getDocumentInformation().setAuthor("nobody");
            document.getDocumentInformation().getCOSObject().setNeedToBeUpdated(true);
            ByteArrayOutputStream after = new ByteArrayOutputStream();
            document.saveIncremental(after);
            assertThat(after.size()).isGreaterThan(before.length);
            assertThat(book.kinds("x.pdf", after.toByteArray())).containsExactly(Leak.Kind.NAME);
        }
    }

    @Test
    void aPdfWithAPasswordIsNotSaidToBeClean() throws IOException {
        byte[] locked = pdf((document, page) ->
                document.protect(new StandardProtectionPolicy("owner", "user", new AccessPermission())));
        Path file = Files.write(folder.resolve("locked.pdf"), locked);

        assertRefused(file);
    }

    private static void assertRefused(Path file) {
        CommandRun run = CommandRun.of("check", book.path(), "--leaks", file);
        assertThat(run.exitCode()).isNotZero();
        assertThat(run.out()).doesNotContain("Nothing was found");
        assertThat(run.err()).contains(file.getFileName().toString(), "nobody can say what is in it");
    }

    /** The first bytes of archives, by the descriptions of their forms, and of a spreadsheet with a password. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "7z\u00bc\u00af'\u001c",
                "Rar!\u001a\u0007",
                "BZh91AY&SY",
                "\u00fd7zXZ\u0000",
                "(\u00b5/\u00fd",
                "\u00d0\u00cf\u0011\u00e0"
            })
    void whatIsNotUnpackedIsNotSaidToBeClean(String start) throws IOException {
        String name = "archive" + (int) start.charAt(0) + ".bin";
        byte[] beginning = start.getBytes(StandardCharsets.ISO_8859_1);
        byte[] rest = "\u0000\u0000EncryptedPackage\u0000".getBytes(StandardCharsets.UTF_16LE);
        byte[] all = Arrays.copyOf(beginning, beginning.length + rest.length);
        System.arraycopy(rest, 0, all, beginning.length, rest.length);

        assertRefused(Files.write(folder.resolve(name), all));
    }

    private static byte[] zip(String name, String content, String remark, String ofAll) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            ZipEntry entry = new ZipEntry(name);
            entry.setComment(remark);
            zip.putNextEntry(entry);
            zip.write(content.getBytes(StandardCharsets.UTF_8));
            zip.setComment(ofAll);
        }
        return bytes.toByteArray();
    }

    @Test
    void aZipHasRemarks() throws IOException {
        found(zip("a.txt", "well", SECRET, ""));
        found(zip("a.txt", "well", "", SECRET));
        assertThat(book.kinds("x.zip", zip("a.txt", "well", "fine", "good"))).isEmpty();
    }

    @Test
    void aPackedFileIsUnpacked() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream packed = new GZIPOutputStream(bytes)) {
            packed.write(("<svg><text>" + SECRET + "</text></svg>").getBytes(StandardCharsets.UTF_8));
        }
        found(bytes.toByteArray());
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1})
    void olderDocumentsHaveLettersOfTwoBytes(int shift) throws IOException {
        byte[] letters = ("\u0000\u0001\u0002" + SECRET + "\u0000").getBytes(StandardCharsets.UTF_16LE);
        byte[] bytes = new byte[letters.length + 8];
        System.arraycopy(letters, 0, bytes, 4 + shift, letters.length);

        found(bytes);
    }

    /** A row that was deleted stays in the file, until something else needs its room. */
    @Test
    void aDatabaseHoldsRemovedRows() throws IOException, SQLException {
        Path file = folder.resolve("birds.gpkg");
        try (Connection database = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = database.createStatement()) {
            statement.execute("CREATE TABLE birds (note TEXT)");
            statement.execute("INSERT INTO birds VALUES ('" + SECRET + "'), ('" + "grey water ".repeat(900) + "')");
            assertThat(book.kinds("x.gpkg", Files.readAllBytes(file))).containsExactly(Leak.Kind.NAME);
            statement.execute("DELETE FROM birds");
            assertThat(book.kinds("x.gpkg", Files.readAllBytes(file))).containsExactly(Leak.Kind.NAME);
            statement.execute("VACUUM");
        }
        assertThat(book.kinds("x.gpkg", Files.readAllBytes(file))).isEmpty();
    }

    @Test
    void aDatabaseHoldsThePagesOfRemovedTables() throws IOException, SQLException {
        Path file = folder.resolve("places.gpkg");
        try (Connection database = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = database.createStatement()) {
            statement.execute("CREATE TABLE kept (n INTEGER)");
            statement.execute("CREATE TABLE places (place BLOB)");
            // as little-endian doubles: -6.411974 and 57.229951
            statement.execute("INSERT INTO places VALUES (x'01010000008F352383DCA519C05C57CC086F9D4C40')");
            statement.execute("DROP TABLE places");
        }
        assertThat(book.kinds("x.gpkg", Files.readAllBytes(file))).containsExactly(Leak.Kind.COORDINATES);
    }
}
