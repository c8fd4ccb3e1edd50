package org.ouzelbook.tracker.exchange.file;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;

/** How the letters of a text file are stored. */
public enum Encoding {
    /** UTF-8. */
    UTF_8(StandardCharsets.UTF_8, ""),
    /** UTF-8 with a mark at its start, as spreadsheets write it. */
    UTF_8_WITH_MARK(StandardCharsets.UTF_8, "EFBBBF"),
    /** UTF-16, big end first, with its mark. */
    UTF_16_BIG(StandardCharsets.UTF_16BE, "FEFF"),
    /** UTF-16, little end first, with its mark. */
    UTF_16_LITTLE(StandardCharsets.UTF_16LE, "FFFE"),
    /** Windows-1252, the older form of western spreadsheets. */
    WINDOWS_1252(Charset.forName("windows-1252"), "");

    private final Charset charset;
    private final String markInHex;

    Encoding(Charset charset, String markInHex) {
        this.charset = charset;
        this.markInHex = markInHex;
    }

    /** {@return the character set} */
    public Charset charset() {
        return charset;
    }

    /** {@return the bytes that stand before the text} */
    byte[] mark() {
        return HexFormat.of().parseHex(markInHex);
    }

    /** {@return whether the file starts with the mark of this encoding} */
    boolean startsWithMark(byte[] start, int length) {
        byte[] mark = mark();
        return mark.length > 0 && length >= mark.length && Arrays.equals(mark, Arrays.copyOf(start, mark.length));
    }
}
