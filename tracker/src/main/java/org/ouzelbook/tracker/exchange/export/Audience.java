package org.ouzelbook.tracker.exchange.export;

/** Who may read what leaves the book. */
public enum Audience {
    /** Everybody: no nest, ring, name or note, and no bird nearer than its {@link PublicGrid} cell. */
    PUBLIC,
    /** Licensed people and the owners of the records: everything as it stands. */
    PRIVATE
}
