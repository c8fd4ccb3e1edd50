package org.ouzelbook.tracker.exchange;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/**
 * The first row in which each text stood: a set of texts of which only 128 bits of their SHA-256 are kept, so that millions fit into little memory: 20 bytes each,
 * twice that with the free places. Two texts out of a million agree by chance with probability below 10^-26.
 */
final class FingerprintSet {
    private static final int FIRST_CAPACITY = 1 << 10;

    private final MessageDigest digest;
    private long[] high = new long[FIRST_CAPACITY];
    private long[] low = new long[FIRST_CAPACITY];
    private int[] rows = new int[FIRST_CAPACITY];
    private int size;

    FingerprintSet() {
        try {
            this.digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256", e);
        }
    }

    boolean contains(String text) {
        ByteBuffer hash = hash(text);
        long one = hash.getLong();
        int place = place(one, hash.getLong());
        return low[place] != 0 || high[place] != 0;
    }

    /** {@return the row in which the text stood first; 0 if it is new} */
    int add(String text, int row) {
        if (size * 2 >= low.length) {
            grow();
        }
        ByteBuffer hash = hash(text);
        long one = hash.getLong();
        long two = hash.getLong();
        int place = place(one, two);
        if (low[place] != 0 || high[place] != 0) {
            return rows[place];
        }
        high[place] = one;
        low[place] = two;
        rows[place] = row;
        size++;
        return 0;
    }

    private ByteBuffer hash(String text) {
        return ByteBuffer.wrap(digest.digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    /** {@return where these bits stand, or the free place where they would stand} */
    private int place(long one, long two) {
        int mask = low.length - 1;
        int place = (int) one & mask;
        while ((low[place] != 0 || high[place] != 0) && (low[place] != two || high[place] != one)) {
            place = (place + 1) & mask;
        }
        return place;
    }

    private void grow() {
        long[] oldHigh = high;
        long[] oldLow = low;
        int[] oldRows = rows;
        high = new long[oldHigh.length * 2];
        low = new long[oldLow.length * 2];
        rows = new int[oldRows.length * 2];
        for (int i = 0; i < oldLow.length; i++) {
            if (oldLow[i] != 0 || oldHigh[i] != 0) {
                int place = place(oldHigh[i], oldLow[i]);
                high[place] = oldHigh[i];
                low[place] = oldLow[i];
                rows[place] = oldRows[i];
            }
        }
    }
}
