package org.ouzelbook.tracker.exchange;

import java.time.LocalTime;
import java.util.Arrays;
import java.util.OptionalLong;
import org.ouzelbook.tracker.domain.Sighting;

/**
 * Finds sightings that may be of the same bird as another one: same species, river and day, at most 100 m and 10 minutes
 * apart, by another observer. Holds 40 bytes for each sighting with a time and an observer.
 */
final class NearbySightings {
    private static final double METRES = 100;
    private static final int MINUTES = 10;
    private static final int LONGEST_CHAIN = 200;

    private long[] groups = new long[1 << 10];
    private double[] chainages = new double[1 << 10];
    private int[] minutes = new int[1 << 10];
    private int[] observers = new int[1 << 10];
    private long[] rows = new long[1 << 10];
    private int[] next = new int[1 << 10];
    private int[] heads = newHeads(1 << 11);
    private int size;

    private static int[] newHeads(int capacity) {
        int[] heads = new int[capacity];
        Arrays.fill(heads, -1);
        return heads;
    }

    /**
     * Adds a sighting.
     *
     * @param sighting the sighting
     * @param row its row; 0 if it stood in the book before
     */
    void add(Sighting sighting, long row) {
        if (sighting.time().isEmpty() || sighting.observer().isBlank()) {
            return;
        }
        if (size == groups.length) {
            grow();
        }
        groups[size] = group(sighting);
        chainages[size] = sighting.place().chainage().metres();
        minutes[size] = minute(sighting.time().get());
        observers[size] = observer(sighting);
        rows[size] = row;
        int head = head(cell(groups[size], minutes[size] / MINUTES, (long) (chainages[size] / METRES)));
        next[size] = heads[head];
        heads[head] = size;
        size++;
    }

    /** {@return the row of a sighting that may be of the same bird; 0 if it stood in the book before; empty if none} */
    OptionalLong possiblySame(Sighting sighting) {
        if (sighting.time().isEmpty() || sighting.observer().isBlank()) {
            return OptionalLong.empty();
        }
        long group = group(sighting);
        int minute = minute(sighting.time().get());
        double chainage = sighting.place().chainage().metres();
        for (int dm = -1; dm <= 1; dm++) {
            for (int dc = -1; dc <= 1; dc++) {
                int at = heads[head(cell(group, minute / MINUTES + dm, (long) (chainage / METRES) + dc))];
                for (int i = 0; at >= 0 && i < LONGEST_CHAIN; i++, at = next[at]) {
                    boolean near = groups[at] == group
                            && Math.abs(minutes[at] - minute) <= MINUTES
                            && Math.abs(chainages[at] - chainage) <= METRES;
                    if (near && observers[at] != observer(sighting)) {
                        return OptionalLong.of(rows[at]);
                    }
                }
            }
        }
        return OptionalLong.empty();
    }

    private static int minute(LocalTime time) {
        return time.toSecondOfDay() / 60;
    }

    private static int observer(Sighting sighting) {
        return BookIndex.key(sighting.observer()).hashCode();
    }

    private static long group(Sighting sighting) {
        long group = sighting.place().riverId().getLeastSignificantBits();
        group = group * 31 + sighting.species().scientificName().hashCode();
        return group * 1_000_003 + sighting.date().toEpochDay();
    }

    private static long cell(long group, int minuteCell, long metreCell) {
        return (group * 1_000_003 + minuteCell) * 1_000_003 + metreCell;
    }

    private int head(long cell) {
        long mixed = cell * 0x9E3779B97F4A7C15L;
        return (int) (mixed >>> 33) & (heads.length - 1);
    }

    private void grow() {
        int capacity = size * 2;
        groups = Arrays.copyOf(groups, capacity);
        chainages = Arrays.copyOf(chainages, capacity);
        minutes = Arrays.copyOf(minutes, capacity);
        observers = Arrays.copyOf(observers, capacity);
        rows = Arrays.copyOf(rows, capacity);
        next = Arrays.copyOf(next, capacity);
        heads = newHeads(capacity * 2);
        for (int i = 0; i < size; i++) {
            int head = head(cell(groups[i], minutes[i] / MINUTES, (long) (chainages[i] / METRES)));
            next[i] = heads[head];
            heads[head] = i;
        }
    }
}
