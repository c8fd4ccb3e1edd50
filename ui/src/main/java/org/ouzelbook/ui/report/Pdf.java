package org.ouzelbook.ui.report;

import com.openhtmltopdf.extend.FSTextBreaker;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.text.BreakIterator;
import java.util.List;
import java.util.Locale;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * Prints a page to PDF, with the fonts that it carries. A PDF usually says when it was made, and carries an identifier drawn from the clock;
 * here both are left out, so that the same page gives the same bytes.
 */
final class Pdf {
    /** What the fixed identifier is made from; any number would do. */
    private static final long IDENTIFIER = 1;

    /** The printer’s own remarks, which tell a reader nothing; held, since a logger that nobody holds forgets its level. */
    private static final List<Logger> REMARKS =
            List.of(Logger.getLogger("org.apache.pdfbox"), Logger.getLogger("org.apache.fontbox"));

    static {
        REMARKS.forEach(logger -> logger.setLevel(Level.OFF));
        // Fonts are measured by the JDK's own drawing library, which else would look for a display.
        System.setProperty("java.awt.headless", "true");
    }

    private Pdf() {}

    /**
     * {@return the page as PDF}
     *
     * @param page HTML that is well-formed XML
     * @throws IOException if it cannot be printed
     */
    static byte[] of(String page) throws IOException {
        XRLog.setLoggingEnabled(false);
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.useFastMode();
        builder.usePdfUaAccessibility(true);
        builder.useSVGDrawer(new BatikSVGDrawer());
        builder.useUnicodeLineBreaker(new AfterBlanks());
        builder.withProducer("Ouzelbook");
        builder.withHtmlContent(page, null);
        try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
            renderer.layout();
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            renderer.createPDFWithoutClosing();
            PDDocument document = renderer.getPdfDocument();
            document.getDocumentInformation().setCreationDate(null);
            document.setDocumentId(IDENTIFIER);
            document.save(bytes);
            return bytes.toByteArray();
        }
    }

    /** Breaks lines after blanks and hyphens only, so that no number is torn at its point. */
    private static final class AfterBlanks implements FSTextBreaker {
        private final BreakIterator lines = BreakIterator.getLineInstance(Locale.ENGLISH);
        private String text = "";

        @Override
        public int next() {
            int end = lines.next();
            while (end != BreakIterator.DONE && end < text.length() && !isBreak(text.charAt(end - 1))) {
                end = lines.next();
            }
            return end;
        }

        private static boolean isBreak(char before) {
            return before == ' ' || before == '\n' || before == '-' || before == '–';
        }

        @Override
        public void setText(String newText) {
            text = newText;
            lines.setText(newText);
        }
    }
}
