package org.ouzelbook.stats.survey;

import java.util.List;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * What keeps two clusters of one river apart beside their distance.
 *
 * @param links pairs, one in each, that cannot be one territory
 * @param walls places between them where a bird turned back
 * @param decisions what surveyors decided that parts them
 */
record Separation(List<Field.Link> links, List<Field.Wall> walls, List<Decision> decisions) {

    static Separation between(Cluster one, Cluster other, Field field, Season season) {
        double low = Math.min(one.highest().metres(), other.highest().metres());
        double high = Math.max(one.lowest().metres(), other.lowest().metres());
        return new Separation(
                field.links().stream()
                        .filter(link -> link.kind().apart())
                        .filter(link -> link.between(one::holds, other::holds))
                        .toList(),
                field.walls().stream()
                        .filter(wall -> wall.riverId().equals(one.riverId()))
                        .filter(wall -> wall.metres() >= low && wall.metres() <= high)
                        .toList(),
                low <= high
                        ? season.decisions().partings(one.riverId(), new Stretch(new Chainage(low), new Chainage(high)))
                        : List.of());
    }

    /** How long the two would be as one, in metres. */
    static double lengthTogether(Cluster one, Cluster other) {
        return Math.max(one.highest().metres(), other.highest().metres())
                - Math.min(one.lowest().metres(), other.lowest().metres());
    }

    boolean isEmpty() {
        return links.isEmpty() && walls.isEmpty() && decisions.isEmpty();
    }
}
