package org.ouzelbook.tracker.domain;

/**
 * Where an imported record came from.
 *
 * @param file the file
 * @param row its row there, in the file's own numbering; 1 or more
 */
public record Origin(ImportedFile file, int row) {
    /**
     * Checks the row.
     *
     * @throws IllegalArgumentException if the row is below 1
     */
    public Origin {
        if (row < 1) {
            throw new IllegalArgumentException("Rows count from 1, but was " + row);
        }
    }
}
