package org.ouzelbook.tracker.exchange.export;

import java.math.BigDecimal;

/** Numbers and days as files write them, whatever the language of the machine. */
public final class Numbers {
    private Numbers() {}

    /**
     * {@return the value, a number without needless zeros and never with a power of ten}
     *
     * @param value a number, day or text
     */
    public static String text(Object value) {
        if (value instanceof Double number) {
            BigDecimal plain = BigDecimal.valueOf(number).stripTrailingZeros();
            return plain.signum() == 0 ? "0" : plain.toPlainString();
        }
        return value.toString();
    }
}
