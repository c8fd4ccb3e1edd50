package org.ouzelbook.ui.strip;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * The colour of every ink. Blue, vermilion, orange and bluish green are those of M. Okabe and K. Ito (2008), Color Universal Design, which
 * people with any colour vision tell apart; values as cited from memory; reddish purple is darker than
 * theirs, so that words in it are legible.
 *
 * @param colours a colour for each ink, as {@code #rrggbb}
 */
public record Palette(Map<Ink, String> colours) {
    /** Ink on warm paper. */
    public static final Palette LIGHT = new Palette(new EnumMap<>(Map.ofEntries(
            Map.entry(Ink.PAPER, "#fbfaf6"),
            Map.entry(Ink.INK, "#1c272c"),
            Map.entry(Ink.MUTED, "#59666c"),
            Map.entry(Ink.GRID, "#dfe3e1"),
            Map.entry(Ink.WALKED, "#8b989d"),
            Map.entry(Ink.WATER, "#cfe4ee"),
            Map.entry(Ink.STREAM, "#5b97b5"),
            Map.entry(Ink.CONFIRMED, "#0072b2"),
            Map.entry(Ink.PROBABLE, "#86bddd"),
            Map.entry(Ink.POSSIBLE, "#c4dfee"),
            Map.entry(Ink.ON_CONFIRMED, "#ffffff"),
            Map.entry(Ink.COLUMN, "#d0e3ed"),
            Map.entry(Ink.PROOF, "#d55e00"),
            Map.entry(Ink.BUILDING, "#e69f00"),
            Map.entry(Ink.UNWALKED, "#f1efe8"),
            Map.entry(Ink.HATCHING, "#c9c5b8"),
            Map.entry(Ink.SAMPLE, "#009e73"),
            Map.entry(Ink.NEST, "#a1447c"),
            Map.entry(Ink.STONE, "#7c7669"))));

    /** The same meanings on a dark ground. */
    public static final Palette DARK = new Palette(new EnumMap<>(Map.ofEntries(
            Map.entry(Ink.PAPER, "#14191c"),
            Map.entry(Ink.INK, "#eceae3"),
            Map.entry(Ink.MUTED, "#a3aeb3"),
            Map.entry(Ink.GRID, "#2a3236"),
            Map.entry(Ink.WALKED, "#6a777d"),
            Map.entry(Ink.WATER, "#1f4152"),
            Map.entry(Ink.STREAM, "#6eb0d0"),
            Map.entry(Ink.CONFIRMED, "#3f9fd6"),
            Map.entry(Ink.PROBABLE, "#27638a"),
            Map.entry(Ink.POSSIBLE, "#1d4560"),
            Map.entry(Ink.ON_CONFIRMED, "#0c1215"),
            Map.entry(Ink.COLUMN, "#1b2f3a"),
            Map.entry(Ink.PROOF, "#e8772a"),
            Map.entry(Ink.BUILDING, "#e6a817"),
            Map.entry(Ink.UNWALKED, "#1d2224"),
            Map.entry(Ink.HATCHING, "#434a4b"),
            Map.entry(Ink.SAMPLE, "#2fbf95"),
            Map.entry(Ink.NEST, "#e59bc8"),
            Map.entry(Ink.STONE, "#9c9584"))));

    /**
     * Copies the map and checks that no ink is missing.
     *
     * @throws IllegalArgumentException if an ink has no colour
     */
    public Palette {
        colours = Collections.unmodifiableMap(new EnumMap<>(colours));
        for (Ink ink : Ink.values()) {
            if (!colours.containsKey(ink)) {
                throw new IllegalArgumentException("No colour for " + ink);
            }
        }
    }

    /**
     * {@return the colour of an ink, as {@code #rrggbb}}
     *
     * @param ink an ink
     */
    public String colour(Ink ink) {
        String colour = colours.get(ink);
        if (colour == null) {
            throw new IllegalStateException("No colour for " + ink);
        }
        return colour;
    }
}
