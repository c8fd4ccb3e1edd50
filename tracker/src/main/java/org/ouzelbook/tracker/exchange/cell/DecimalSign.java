package org.ouzelbook.tracker.exchange.cell;

/** The sign that stands before the decimals in a file. */
public enum DecimalSign {
    /** 8.35. */
    POINT,
    /** 8,35. */
    COMMA,
    /** Both are in use, and the surveyor said that both mean decimals. */
    EITHER
}
