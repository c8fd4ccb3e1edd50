package org.ouzelbook.tracker.exchange.geopackage;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The room in a SQLite file that is not used any more: whole pages, and what is free within pages. What was removed stays there until
 * something else needs the room.
 *
 * <p>Source: SQLite, Database File Format, 1.3 (header), 1.5 (freelist) and 1.6 (pages of B-trees).
 */
public final class FreedRoom {
    private static final int FILE_HEADER = 100;
    private static final int PAGE_SIZE_AT = 16;
    private static final int FREED_AT = 32;
    private static final int SMALLEST_PAGE = 512;
    private static final int LARGEST_PAGE = 65_536;
    private static final int LEAF_HEADER = 8;
    private static final int INNER_HEADER = 12;
    private static final int SMALLEST_ROOM = 8;

    private final byte[] file;
    private final ByteBuffer bytes;
    private final int pageSize;
    private final List<byte[]> rooms = new ArrayList<>();

    private FreedRoom(byte[] file) {
        this.file = file;
        bytes = ByteBuffer.wrap(file);
        int size = Short.toUnsignedInt(bytes.getShort(PAGE_SIZE_AT));
        pageSize = size == 1 ? LARGEST_PAGE : size;
    }

    /** {@return the bytes of each room of a SQLite file that holds more than zeroes} */
    public static List<byte[]> of(byte[] file) {
        FreedRoom freed = new FreedRoom(file);
        if (file.length >= FILE_HEADER && freed.pageSize >= SMALLEST_PAGE) {
            freed.pages();
            for (int start = 0; start + freed.pageSize <= file.length; start += freed.pageSize) {
                freed.within(start);
            }
        }
        return freed.rooms;
    }

    private void pages() {
        int trunk = bytes.getInt(FREED_AT);
        for (int count = 0; isPage(trunk) && count <= file.length / pageSize; count++) {
            int start = (trunk - 1) * pageSize;
            int leaves = Math.min(bytes.getInt(start + Integer.BYTES), pageSize / Integer.BYTES - 2);
            for (int i = 0; i < leaves; i++) {
                int leaf = bytes.getInt(start + (2 + i) * Integer.BYTES);
                if (isPage(leaf)) {
                    add((leaf - 1) * pageSize, leaf * pageSize);
                }
            }
            add(start, start + pageSize);
            trunk = bytes.getInt(start);
        }
    }

    private boolean isPage(int page) {
        return page > 0 && (long) page * pageSize <= file.length;
    }

    /** What lies between the pointers to the cells and the first cell, and between cells. */
    private void within(int start) {
        int header = start == 0 ? FILE_HEADER : start;
        int headerLength = switch (file[header]) {
            case 0x0a, 0x0d -> LEAF_HEADER;
            case 0x02, 0x05 -> INNER_HEADER;
            default -> 0;
        };
        if (headerLength == 0) {
            return;
        }
        int content = unsigned(header + 5);
        add(header + headerLength + 2 * unsigned(header + 3), start + (content == 0 ? pageSize : content));
        int free = unsigned(header + 1);
        for (int count = 0; free > 0 && free + SMALLEST_ROOM <= pageSize && count < pageSize; count++) {
            add(start + free + Integer.BYTES, start + free + unsigned(start + free + 2));
            free = unsigned(start + free);
        }
    }

    private int unsigned(int at) {
        return Short.toUnsignedInt(bytes.getShort(at));
    }

    private void add(int from, int to) {
        int first = from;
        int end = Math.min(to, file.length);
        while (first < end && file[first] == 0) {
            first++;
        }
        if (end - first >= SMALLEST_ROOM) {
            rooms.add(Arrays.copyOfRange(file, first, end));
        }
    }
}
