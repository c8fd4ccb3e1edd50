package org.ouzelbook.ui.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TTFSubsetter;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.ouzelbook.ui.strip.RiverStrip;

/** The font of the drawings and of every page, in its two weights: Source Sans 3, under the SIL Open Font License 1.1. */
enum HouseFont {
    /** Plain text. */
    REGULAR("SourceSans3-Regular.ttf"),
    /** Headings and names that matter. */
    SEMIBOLD("SourceSans3-Semibold.ttf");

    static final String FAMILY = "Source Sans 3";
    static final String FAMILY_OF_SEMIBOLD = "Source Sans 3 Semibold";

    /** The tables of a font that a browser asks for. */
    private static final List<String> TABLES =
            List.of("OS/2", "cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post");

    /** What a style sheet may print of itself: page numbers and the dots of lists. */
    private static final String PRINTED_BY_STYLE = "0123456789/ •";

    /** The font has no letter beyond. */
    private static final int LAST_PLANE_READ = 0x1FFFF;

    /** Stands on paper for a letter that the font lacks. */
    static final int LACKING = '□';

    private final String file;

    HouseFont(String file) {
        this.file = file;
    }

    /** {@return the whole font file} */
    InputStream open() {
        InputStream in = RiverStrip.class.getResourceAsStream(file);
        if (in == null) {
            throw new IllegalStateException(file + " is missing from the program");
        }
        return in;
    }

    /**
     * {@return the style rules that give a page the font, as far as its letters need it, so that it looks the same on every
     * machine and fetches nothing}
     *
     * @param text all that the page may show
     */
    static String rulesFor(String text) {
        Set<Integer> letters = letters(text);
        return REGULAR.rule(FAMILY, 400, letters) + SEMIBOLD.rule(FAMILY, 600, letters);
    }

    /** {@return further rules for paper, where a drawing can ask for a family only, and not for a weight} */
    static String rulesForDrawings(String text) {
        return SEMIBOLD.rule(FAMILY_OF_SEMIBOLD, 400, letters(text));
    }

    private String rule(String family, int weight, Set<Integer> letters) {
        return """
                @font-face { font-family: '%s'; font-weight: %d; src: url(data:font/ttf;base64,%s) format('truetype'); }
                """.formatted(family, weight, Base64.getEncoder().encodeToString(subset(letters)));
    }

    /**
     * {@return the text as paper can show it: {@link #LACKING} for each letter that the font lacks; marks that nobody sees fall away}
     *
     * @param text a text, or a page with its markup
     */
    static String onPaper(String text) {
        return text.codePoints()
                .filter(letter -> has(letter) || !isUnseen(letter))
                .map(letter -> has(letter) ? letter : LACKING)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }

    private static boolean has(int letter) {
        return letter < ' '
                || (REGULAR.widths().containsKey(letter) && SEMIBOLD.widths().containsKey(letter));
    }

    /** Joiners, marks of direction, and choices between forms of one letter. */
    private static boolean isUnseen(int letter) {
        return Character.getType(letter) == Character.FORMAT || (letter >= 0xFE00 && letter <= 0xFE0F);
    }

    /**
     * {@return the text, cut with an ellipsis where it is wider than its room}
     *
     * @param text one line that the font can show
     * @param room the room, in heights of a letter
     */
    String cut(String text, double room) {
        if (width(text) <= room) {
            return text;
        }
        String cut = text;
        while (!cut.isEmpty() && width(cut + "…") > room) {
            cut = cut.substring(0, cut.offsetByCodePoints(cut.length(), -1));
        }
        return cut.strip() + "…";
    }

    /**
     * {@return how wide a text is, in heights of a letter}
     *
     * @param text one line that the font can show
     */
    double width(String text) {
        return text.codePoints()
                .mapToDouble(letter -> widths().getOrDefault(letter, 1.0))
                .sum();
    }

    private Map<Integer, Double> widths() {
        return this == REGULAR ? Widths.OF_REGULAR : Widths.OF_SEMIBOLD;
    }

    /** The letters of each weight, and how wide each is, in heights of a letter; read when first asked for. */
    private static final class Widths {
        private static final Map<Integer, Double> OF_REGULAR = REGULAR.readWidths();
        private static final Map<Integer, Double> OF_SEMIBOLD = SEMIBOLD.readWidths();
    }

    private Map<Integer, Double> readWidths() {
        try (InputStream in = open();
                TrueTypeFont font = new TTFParser().parse(RandomAccessReadBuffer.createBufferFromStream(in))) {
            CmapLookup glyphs = font.getUnicodeCmapLookup();
            double em = font.getUnitsPerEm();
            Map<Integer, Double> read = new HashMap<>();
            for (int letter = ' '; letter <= LAST_PLANE_READ; letter++) {
                int glyph = glyphs.getGlyphId(letter);
                if (glyph > 0) {
                    read.put(letter, font.getAdvanceWidth(glyph) / em);
                }
            }
            return Map.copyOf(read);
        } catch (IOException e) {
            throw new UncheckedIOException(file, e);
        }
    }

    private static Set<Integer> letters(String text) {
        return (text + PRINTED_BY_STYLE)
                .codePoints()
                .filter(letter -> letter >= ' ')
                .boxed()
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private byte[] subset(Set<Integer> letters) {
        try (InputStream in = open();
                TrueTypeFont font = new TTFParser().parse(RandomAccessReadBuffer.createBufferFromStream(in))) {
            TTFSubsetter subsetter = new TTFSubsetter(font, TABLES);
            letters.forEach(subsetter::add);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            subsetter.writeToStream(bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(file, e);
        }
    }
}
