package org.ouzelbook.ui.strip;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Properties;

/** How much room words take, known without a screen and the same on every machine. */
final class TextWidths {
    /** Wider than nearly every letter: no word outside the table is ever given too little room. */
    private static final Widths UNKNOWN = new Widths(1000, 1000);

    private static final Map<Integer, Widths> TABLE = load();

    private TextWidths() {}

    private record Widths(int regular, int semibold) {}

    private static Map<Integer, Widths> load() {
        Properties rows = new Properties();
        try (InputStream in = TextWidths.class.getResourceAsStream("text-widths.properties")) {
            if (in == null) {
                throw new IllegalStateException("text-widths.properties is missing from the program");
            }
            rows.load(in);
        } catch (IOException e) {
            throw new UncheckedIOException("text-widths.properties", e);
        }
        Map<Integer, Widths> table = new HashMap<>();
        for (String code : rows.stringPropertyNames()) {
            String row = rows.getProperty(code);
            int space = row.indexOf(' ');
            table.put(
                    Integer.valueOf(code, 16),
                    new Widths(Integer.parseInt(row.substring(0, space)), Integer.parseInt(row.substring(space + 1))));
        }
        return table;
    }

    /**
     * {@return the width of a text, in pixels}
     *
     * @param text one line
     * @param type its size and weight
     */
    static double of(String text, Shape.Lettering type) {
        int thousandths = text.codePoints()
                .mapToObj(code -> TABLE.getOrDefault(code, UNKNOWN))
                .mapToInt(widths -> type.semibold() ? widths.semibold() : widths.regular())
                .sum();
        return thousandths * type.size() / 1000;
    }

    /**
     * {@return the text, cut with an ellipsis where it is wider than its room}
     *
     * @param text one line
     * @param type its size and weight
     * @param room the room, in pixels
     */
    static String cut(String text, Shape.Lettering type, double room) {
        if (of(text, type) <= room) {
            return text;
        }
        String cut = text;
        while (!cut.isEmpty() && of(cut + "…", type) > room) {
            cut = cut.substring(0, cut.offsetByCodePoints(cut.length(), -1));
        }
        return cut.strip() + "…";
    }
}
