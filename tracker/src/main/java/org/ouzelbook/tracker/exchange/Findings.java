package org.ouzelbook.tracker.exchange;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Everything that is to be told of the rows of an import, grouped by file and reason, with a bounded number kept of each. */
public final class Findings {
    /** How many findings of one reason are kept for each file; the others are only counted. */
    public static final int KEPT = 1000;

    private final Map<GroupKey, Group> groups = new LinkedHashMap<>();

    private record GroupKey(Finding finding, String file, String reason) {}

    private static final class Group {
        private final List<Problem> first = new ArrayList<>();
        private long count;
    }

    /**
     * The findings of one reason in one file.
     *
     * @param finding how much they matter
     * @param first the first of them, at most {@link #KEPT}
     * @param count how many there are
     */
    public record Reason(Finding finding, List<Problem> first, long count) {
        /** Copies the list. */
        public Reason {
            first = List.copyOf(first);
        }
    }

    void add(Finding finding, Problem problem) {
        GroupKey key = new GroupKey(finding, problem.file(), problem.message().key());
        Group group = groups.computeIfAbsent(key, unused -> new Group());
        group.count++;
        if (group.first.size() < KEPT) {
            group.first.add(problem);
        }
    }

    /**
     * {@return the reasons, file by file in the order of the import, each by its first row}
     *
     * @param finding how much they matter
     */
    public List<Reason> reasons(Finding finding) {
        List<Reason> reasons = new ArrayList<>();
        List<String> files =
                groups.keySet().stream().map(GroupKey::file).distinct().toList();
        groups.forEach((key, group) -> {
            if (key.finding == finding) {
                reasons.add(new Reason(finding, group.first, group.count));
            }
        });
        reasons.sort(Comparator.<Reason>comparingInt(
                        reason -> files.indexOf(reason.first.get(0).file()))
                .thenComparingLong(reason -> reason.first.get(0).row()));
        return List.copyOf(reasons);
    }

    /**
     * {@return how many there are}
     *
     * @param finding how much they matter
     */
    public long count(Finding finding) {
        return groups.entrySet().stream()
                .filter(entry -> entry.getKey().finding == finding)
                .mapToLong(entry -> entry.getValue().count)
                .sum();
    }
}
