package org.ouzelbook.tracker.exchange.file;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/** How the letters of a text file are stored. */
public enum Encoding {
    /** UTF-8. */
    UTF_8(StandardCharsets.UTF_8, new byte[0]),
    /** UTF-8 with a mark at its start, as spreadsheets write it. */
    UTF_8_WITH_MARK(StandardCharsets.UTF_8, new byte[] {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF}),
    /** UTF-16, big end first, with its mark. */
    UTF_16_BIG(StandardCharsets.UTF_16BE, new byte[] {(byte) 0xFE, (byte) 0xFF}),
    /** UTF-16, little end first, with its mark. */
    UTF_16_LITTLE(StandardCharsets.UTF_16LE, new byte[] {(byte) 0xFF, (byte) 0xFE}),
    /** Windows-1252, the older form of western spreadsheets. */
    WINDOWS_1252(Charset.forName("windows-1252"), new byte[0]);

    private final Charset charset;
    private final byte[] mark;

    Encoding(Charset charset, byte[] mark) {
        this.charset = charset;
        this.mark = mark;
    }

    /** {@return the character set} */
    public Charset charset() {
        return charset;
    }

    /** {@return the bytes that stand before the text} */
    byte[] mark() {
        return mark.clone();
    }

    /** {@return whether the file starts with the mark of this encoding} */
    boolean startsWithMark(byte[] start, int length) {
        if (mark.length == 0 || length < mark.length) {
            return false;
        }
        for (int i = 0; i < mark.length; i++) {
            if (start[i] != mark[i]) {
                return false;
            }
        }
        return true;
    }
}
