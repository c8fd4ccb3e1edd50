package org.ouzelbook.ui.app.leak;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * The remarks that a zip may have on each of its parts and on the whole, and whatever hangs behind it.
 *
 * <p>Source: PKWARE, .ZIP File Format Specification 6.3.10, 4.3.12 (central directory) and 4.3.16 (its end).
 */
final class ZipRemarks {
    private static final int PART = 0x02014b50;
    private static final int END = 0x06054b50;
    private static final int PART_HEADER = 46;
    private static final int END_HEADER = 22;

    private ZipRemarks() {}

    /** {@return every remark, on a line of its own} */
    static String of(byte[] zip) {
        ByteBuffer bytes = ByteBuffer.wrap(zip).order(ByteOrder.LITTLE_ENDIAN);
        StringBuilder remarks = new StringBuilder();
        for (int at = 0; at + END_HEADER <= zip.length; at++) {
            try {
                int sign = bytes.getInt(at);
                if (sign == PART) {
                    int before = PART_HEADER + unsigned(bytes, at + 28) + unsigned(bytes, at + 30);
                    add(zip, at + before, unsigned(bytes, at + 32), remarks);
                } else if (sign == END) {
                    add(zip, at + END_HEADER, zip.length - at - END_HEADER, remarks);
                }
            } catch (BufferUnderflowException | IndexOutOfBoundsException e) {
                // the sign stood there by chance: what follows is not a part
            }
        }
        return remarks.toString();
    }

    private static int unsigned(ByteBuffer bytes, int at) {
        return Short.toUnsignedInt(bytes.getShort(at));
    }

    private static void add(byte[] zip, int start, int length, StringBuilder remarks) {
        if (length > 0) {
            remarks.append(new String(zip, start, length, StandardCharsets.UTF_8))
                    .append('\n');
        }
    }
}
