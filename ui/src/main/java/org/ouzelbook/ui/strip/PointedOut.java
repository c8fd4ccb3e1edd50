package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Sighting;

/** What is drawn over a strip to point something out: a frame round what was chosen, a ring round each record that it hangs on. */
final class PointedOut {
    private PointedOut() {}

    /**
     * {@return the shapes that point something out}
     *
     * @param areas the places of the drawing that answer
     * @param chosen what was chosen
     * @param records the records that it hangs on
     */
    static List<Shape> shapes(List<HitArea> areas, Optional<Subject> chosen, List<Sighting> records) {
        List<Shape> shapes = new ArrayList<>();
        Set<UUID> ids = records.stream().map(Sighting::id).collect(Collectors.toCollection(HashSet::new));
        Optional<Subject> wanted = chosen;
        boolean framed = false;
        Optional<HitArea> bar = Optional.empty();
        for (HitArea area : areas) {
            Subject subject = area.subject();
            if (wanted.equals(Optional.of(subject)) && subject instanceof Subject.OfTerritory) {
                // The uppermost: below it lies the water over which its ends fade.
                bar = Optional.of(area);
            } else if (wanted.equals(Optional.of(subject)) && !framed) {
                shapes.add(frame(subject, area.area()));
                framed = !(subject instanceof Subject.OfSeason);
            } else if (subject instanceof Subject.OfSighting sighting && ids.contains(sighting.id())) {
                shapes.add(ring(area.area()));
            } else if (subject instanceof Subject.OfCrowd crowd
                    && records.stream().anyMatch(crowd::holds)) {
                shapes.add(frame(subject, area.area()));
            }
        }
        bar.ifPresent(area -> shapes.add(frame(area.subject(), area.area())));
        return shapes;
    }

    private static Shape frame(Subject subject, Rect area) {
        if (subject instanceof Subject.OfSighting || subject instanceof Subject.OfNest) {
            return ring(area);
        }
        if (subject instanceof Subject.OfSeason) {
            Rect row = new Rect(area.x() + 1, area.y() + 1, area.width() - 2, area.height() - 2);
            return new Shape.Box(row, 7, Optional.empty(), Optional.of(Pencil.solid(Ink.CONFIRMED, 2)));
        }
        boolean bar = subject instanceof Subject.OfTerritory;
        return new Shape.Box(area.grown(bar ? 3 : 2), 7, Optional.empty(), Optional.of(Pencil.solid(Ink.CONFIRMED, 2)));
    }

    private static Shape ring(Rect area) {
        Point middle = new Point(area.x() + area.width() / 2, area.y() + area.height() / 2);
        return new Shape.Disc(middle, 14, Optional.empty(), Optional.of(Pencil.solid(Ink.CONFIRMED, 2)));
    }
}
