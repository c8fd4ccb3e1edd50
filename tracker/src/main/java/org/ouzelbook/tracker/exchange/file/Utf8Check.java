package org.ouzelbook.tracker.exchange.file;

/**
 * Tells whether bytes that come in pieces are well-formed UTF-8.
 *
 * <p>Source: RFC 3629, section 4 (syntax of UTF-8 byte sequences).
 */
final class Utf8Check {
    private int pending;
    private int low = 0x80;
    private int high = 0xBF;
    private boolean wellFormed = true;

    void add(byte[] bytes, int length) {
        for (int i = 0; i < length && wellFormed; i++) {
            if (bytes[i] < 0 || pending > 0) {
                add(bytes[i] & 0xFF);
            }
        }
    }

    private void add(int value) {
        if (pending > 0) {
            wellFormed = value >= low && value <= high;
            pending--;
            low = 0x80;
            high = 0xBF;
        } else if (value >= 0xC2 && value <= 0xDF) {
            pending = 1;
        } else if (value >= 0xE0 && value <= 0xEF) {
            pending = 2;
            low = value == 0xE0 ? 0xA0 : 0x80;
            high = value == 0xED ? 0x9F : 0xBF;
        } else if (value >= 0xF0 && value <= 0xF4) {
            pending = 3;
            low = value == 0xF0 ? 0x90 : 0x80;
            high = value == 0xF4 ? 0x8F : 0xBF;
        } else {
            wellFormed = false;
        }
    }

    boolean wellFormed() {
        return wellFormed && pending == 0;
    }
}
