package org.ouzelbook.tracker.store;

import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;

/** Things that were found to be one, and which of them stands for all. */
final class Groups<T extends Comparable<T>> {
    private final Map<T, T> leaders = new HashMap<>();

    /** {@return what stands for a thing; it does so itself if it was joined to none} */
    T leader(T thing) {
        T leader = thing;
        for (T next = leaders.get(leader); next != null; next = leaders.get(leader)) {
            leader = next;
        }
        return leader;
    }

    /** Joins two leaders: from now on the first stands for both. */
    void join(T leader, T other) {
        if (!leader.equals(other)) {
            leaders.put(other, leader);
        }
    }

    /** {@return what stands for each thing that does not stand for itself} */
    Map<T, T> standIns() {
        Map<T, T> standIns = new TreeMap<>();
        leaders.keySet().forEach(thing -> standIns.put(thing, leader(thing)));
        return standIns;
    }
}
