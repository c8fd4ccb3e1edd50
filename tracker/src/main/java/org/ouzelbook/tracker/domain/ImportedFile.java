package org.ouzelbook.tracker.domain;

import java.util.UUID;

/**
 * A file that records were taken from. The file itself stays where it was, unchanged.
 *
 * @param id its key
 * @param name its name, without the folder; not blank
 * @param sha256 the SHA-256 of its bytes, as 64 lower-case hexadecimal digits, by which the same file is known again
 */
public record ImportedFile(UUID id, String name, String sha256) implements Entry {
    /**
     * Checks the name and the digits.
     *
     * @throws IllegalArgumentException if the name is blank or the SHA-256 is not 64 lower-case hexadecimal digits
     */
    public ImportedFile {
        if (name.isBlank()) {
            throw new IllegalArgumentException("An imported file needs a name");
        }
        if (!sha256.matches("[0-9a-f]{64}")) {
            throw new IllegalArgumentException("A SHA-256 has 64 hexadecimal digits, but was " + sha256);
        }
    }
}
