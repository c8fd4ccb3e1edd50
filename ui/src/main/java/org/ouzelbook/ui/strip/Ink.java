package org.ouzelbook.ui.strip;

/** What a colour means in the strip; a {@link Palette} gives it its value. */
public enum Ink {
    /** The ground. */
    PAPER,
    /** Text, and records that made a territory. */
    INK,
    /** Lesser text, and records that made none. */
    MUTED,
    /** Lines that help the eye. */
    GRID,
    /** The line of a visit over the water that it covered. */
    WALKED,
    /** The water of the river. */
    WATER,
    /** The thread of the stream. */
    STREAM,
    /** A counted territory with confirmed breeding, and the count itself. */
    CONFIRMED,
    /** A counted territory with probable breeding. */
    PROBABLE,
    /** A counted territory with possible breeding or no evidence. */
    POSSIBLE,
    /** Text on {@link #CONFIRMED}. */
    ON_CONFIRMED,
    /** The ground of a territory through the season. */
    COLUMN,
    /** Proof of breeding: food or a faecal sac carried. */
    PROOF,
    /** Nest building. */
    BUILDING,
    /** The ground of water that nobody walked. */
    UNWALKED,
    /** The hatching of water that nobody walked. */
    HATCHING,
    /** Kick samples: what lives on the river's bed. */
    SAMPLE,
    /** Nests, drawn only where they were asked for, and the warning that they are. */
    NEST,
    /** Things of the landscape. */
    STONE
}
