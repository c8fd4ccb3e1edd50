package org.ouzelbook.tracker.exchange.file;

import java.io.IOException;
import java.io.InputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.ouzelbook.tracker.domain.Message;

/**
 * What the bytes of a file tell before it is read as a table.
 *
 * @param sha256 its SHA-256, in hexadecimal
 * @param length how many bytes it has
 * @param encoding how its letters are stored
 */
public record FileBytes(String sha256, long length, Encoding encoding) {
    private static final List<Encoding> MARKED =
            List.of(Encoding.UTF_8_WITH_MARK, Encoding.UTF_16_BIG, Encoding.UTF_16_LITTLE);

    /**
     * Reads a file once from end to end.
     *
     * @param source the file
     * @return what its bytes tell
     * @throws UnreadableFile if it is empty, too large, or no text
     * @throws IOException if it cannot be read
     */
    public static FileBytes of(FileSource source) throws IOException {
        MessageDigest digest = newDigest();
        Utf8Check utf8 = new Utf8Check();
        Encoding marked = null;
        boolean zeros = false;
        long length = 0;
        try (InputStream in = source.open()) {
            byte[] block = new byte[1 << 16];
            for (int read = in.readNBytes(block, 0, block.length);
                    read > 0;
                    read = in.readNBytes(block, 0, block.length)) {
                if (length == 0) {
                    int atStart = read;
                    marked = MARKED.stream()
                            .filter(encoding -> encoding.startsWithMark(block, atStart))
                            .findFirst()
                            .orElse(null);
                    refuseSpreadsheet(block, read);
                }
                digest.update(block, 0, read);
                utf8.add(block, read);
                zeros |= hasZero(block, read);
                length += read;
            }
        }
        if (length == 0) {
            throw new UnreadableFile(Message.of("import.file.empty"));
        }
        if (zeros && (marked == null || marked == Encoding.UTF_8_WITH_MARK)) {
            throw new UnreadableFile(Message.of("import.file.noText"));
        }
        Encoding unmarked = utf8.wellFormed() ? Encoding.UTF_8 : Encoding.WINDOWS_1252;
        return new FileBytes(HexFormat.of().formatHex(digest.digest()), length, marked == null ? unmarked : marked);
    }

    private static MessageDigest newDigest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256", e);
        }
    }

    /** Spreadsheet files are zips or old Office documents, whatever their name says. */
    private static void refuseSpreadsheet(byte[] start, int length) throws UnreadableFile {
        byte[] first = Arrays.copyOf(start, Math.min(4, length));
        boolean zip = Arrays.equals(first, new byte[] {'P', 'K', 3, 4});
        boolean office = Arrays.equals(first, new byte[] {(byte) 0xD0, (byte) 0xCF, 0x11, (byte) 0xE0});
        if (zip || office) {
            throw new UnreadableFile(Message.of("import.file.spreadsheet"));
        }
    }

    private static boolean hasZero(byte[] bytes, int length) {
        for (int i = 0; i < length; i++) {
            if (bytes[i] == 0) {
                return true;
            }
        }
        return false;
    }
}
