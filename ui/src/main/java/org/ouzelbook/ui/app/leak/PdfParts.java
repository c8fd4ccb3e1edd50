package org.ouzelbook.ui.app.leak;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSDocument;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObjectKey;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;

/**
 * What can be read in a PDF: the text of its pages, seen or not, its properties, bookmarks, comments, links, forms and descriptions of pictures,
 * its metadata, what its photographs say of themselves, the files that are attached to it, and what it said before it was last changed.
 */
final class PdfParts {
    private static final List<COSName> PHOTOGRAPHS = List.of(COSName.DCT_DECODE, COSName.JPX_DECODE);
    private static final byte[] END = "%%EOF".getBytes(StandardCharsets.US_ASCII);

    /** Dictionaries whose texts are names of fonts, or bytes. */
    private static final List<COSName> NO_WORDS = List.of(COSName.FONT_DESC, COSName.FONT, COSName.SIG);

    /** Hears texts in the PDF. */
    interface Texts {
        void text(String part, CharSequence text) throws IOException;
    }

    /** Hears files within the PDF. */
    interface Files {
        void file(String name, byte[] bytes) throws IOException;
    }

    private final Texts reader;
    private final Files files;
    private final Set<COSBase> seen = Collections.newSetFromMap(new IdentityHashMap<>());
    private final StringBuilder words = new StringBuilder();

    PdfParts(Texts reader, Files files) {
        this.reader = reader;
        this.files = files;
    }

    /**
     * Reads a PDF.
     *
     * @param bytes its bytes
     * @throws IOException if it is damaged, or closed by a password
     */
    void read(byte[] bytes) throws IOException {
        try (PDDocument document = Loader.loadPDF(bytes)) {
            all("", document);
        }
        int end = indexOf(bytes, 0);
        for (int next = indexOf(bytes, end); end > 0 && next > 0; next = indexOf(bytes, end)) {
            before(Arrays.copyOf(bytes, end));
            end = next;
        }
    }

    /** The file as it was before it was last added to; it is still in it. */
    private void before(byte[] earlier) throws IOException {
        try (PDDocument document = Loader.loadPDF(earlier)) {
            all("before, ", document);
        } catch (IOException e) {
            // the first half of a file that was written in one piece, and no earlier state
            return;
        }
    }

    private void all(String when, PDDocument document) throws IOException {
        pages(when + "page ", document);
        words.setLength(0);
        COSDocument objects = document.getDocument();
        // from the table of objects, so that those are found too that no page leads to
        for (COSObjectKey key : objects.getXrefTable().keySet()) {
            COSBase object = objects.getObjectFromPool(key).getObject();
            if (object != null) {
                walk(object);
            }
        }
        reader.text(when + "properties", words.toString());
    }

    private void pages(String name, PDDocument document) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        for (int page = 1; page <= document.getNumberOfPages(); page++) {
            stripper.setStartPage(page);
            stripper.setEndPage(page);
            reader.text(name + page, stripper.getText(document));
        }
    }

    private static int indexOf(byte[] bytes, int from) {
        for (int i = from; i <= bytes.length - END.length; i++) {
            if (bytes[i] == '%' && Arrays.equals(bytes, i, i + END.length, END, 0, END.length)) {
                return i + END.length;
            }
        }
        return -1;
    }

    private void walk(COSBase object) throws IOException {
        if (object instanceof COSString text) {
            words.append(text.getString()).append('\n');
        } else if (!seen.add(object)) {
            return;
        } else if (object instanceof COSArray array) {
            all(array.toList());
        } else if (object instanceof COSDictionary dictionary) {
            if (dictionary instanceof COSStream stream) {
                stream(stream);
            }
            COSName type = dictionary.getCOSName(COSName.TYPE);
            if (type == null || !NO_WORDS.contains(type)) {
                all(dictionary.getValues());
            }
        }
    }

    private void all(Collection<? extends COSBase> objects) throws IOException {
        for (COSBase object : objects) {
            // what is pointed to stands in the table of objects
            if (object instanceof COSString || object instanceof COSArray || object instanceof COSDictionary) {
                walk(object);
            }
        }
    }

    private void stream(COSStream stream) throws IOException {
        COSName type = stream.getCOSName(COSName.TYPE);
        if (COSName.METADATA.equals(type)) {
            reader.text("metadata", new String(content(stream), StandardCharsets.UTF_8));
        } else if (COSName.EMBEDDED_FILE.equals(type)) {
            files.file("attachment", content(stream));
        } else if (stream.getFilters() instanceof COSName filter && PHOTOGRAPHS.contains(filter)) {
            try (InputStream in = stream.createRawInputStream()) {
                files.file("picture", in.readAllBytes());
            }
        }
    }

    private static byte[] content(COSStream stream) throws IOException {
        try (InputStream in = stream.createInputStream()) {
            return in.readAllBytes();
        }
    }
}
