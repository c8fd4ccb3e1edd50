package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Finds what lies at a point of a drawing without asking every place of it: the paper is cut into squares. */
public final class HitIndex {
    private static final double SQUARE = 48;

    private final List<HitArea> areas;
    private final Map<Long, List<Integer>> squares = new HashMap<>();

    private HitIndex(List<HitArea> areas) {
        this.areas = areas;
    }

    /**
     * {@return an index of these places}
     *
     * @param areas places that answer, the lowest first
     */
    public static HitIndex of(List<HitArea> areas) {
        HitIndex index = new HitIndex(List.copyOf(areas));
        for (int i = 0; i < index.areas.size(); i++) {
            index.enter(i, index.areas.get(i).area());
        }
        return index;
    }

    private void enter(int number, Rect area) {
        for (long row = square(area.y()); row <= square(area.bottom()); row++) {
            for (long column = square(area.x()); column <= square(area.right()); column++) {
                squares.computeIfAbsent(key(column, row), key -> new ArrayList<>())
                        .add(number);
            }
        }
    }

    private static long square(double pixels) {
        return (long) Math.floor(pixels / SQUARE);
    }

    private static long key(long column, long row) {
        return row * 1_000_003 + column;
    }

    /**
     * {@return what lies uppermost at a point; empty where nothing answers}
     *
     * @param x to the right
     * @param y downwards
     */
    public Optional<HitArea> at(double x, double y) {
        List<Integer> here = squares.getOrDefault(key(square(x), square(y)), List.of());
        for (int i = here.size() - 1; i >= 0; i--) {
            HitArea area = areas.get(here.get(i));
            if (area.area().contains(x, y)) {
                return Optional.of(area);
            }
        }
        return Optional.empty();
    }
}
