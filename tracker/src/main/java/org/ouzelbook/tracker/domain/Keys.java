package org.ouzelbook.tracker.domain;

import java.security.SecureRandom;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Makes keys for new records: different in every book of the world, and rising from one record to the next, which lets a
 * book write a million of them side by side instead of scattered.
 *
 * <p>Version 7 of RFC 9562 (2024), section 5.7, with the 12 bits after the milliseconds as a counter (section 6.2, method
 * 1): 48 bits of Unix time, the version, the counter, the variant and 62 random bits.
 */
public final class Keys {
    private static final int COUNTER_BITS = 12;
    private static final long VERSION_7 = 0x7000L;
    private static final long VARIANT = 0x8000_0000_0000_0000L;

    private static final SecureRandom RANDOM = new SecureRandom();

    /** Milliseconds and counter of the last key, as one rising number. */
    private static final AtomicLong LAST = new AtomicLong();

    private Keys() {}

    /** {@return a new key, above every one that this program has made before} */
    public static UUID next() {
        long now = System.currentTimeMillis() << COUNTER_BITS;
        long rising = LAST.updateAndGet(last -> Math.max(last + 1, now));
        long millis = rising >>> COUNTER_BITS;
        long counter = rising & ((1 << COUNTER_BITS) - 1);
        return new UUID(millis << 16 | VERSION_7 | counter, RANDOM.nextLong() >>> 2 | VARIANT);
    }
}
