package org.ouzelbook.ui.app.leak;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.function.BiConsumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.Landmark;

/** Finds the way along the water from a landmark to a nest, such as “310 m above Mill Bridge”, told to ten metres or finer. */
final class OffsetSearch {
    private static final Pattern OFFSET = Pattern.compile("(?i)(?<![\\d.,])(\\d{1,4})\\s*m(?:et(?:re|er)s)?\\s+"
            + "(?:(above|up(?:stream)?)|below|down(?:stream)?)(?:\\s+(?:of|from))?(?:\\s+the)?\\s+");

    private static final int COARSE_METRES = 100;

    /** A name of a landmark, in small letters, and where it stands. */
    private record Mark(String name, UUID riverId, double metres) {}

    private final List<Mark> marks = new ArrayList<>();
    private final NestPlaces places;

    OffsetSearch(NestPlaces places, List<Landmark> landmarks) {
        this.places = places;
        for (Landmark landmark : landmarks) {
            add(landmark, landmark.name());
            landmark.aliases().forEach(alias -> add(landmark, alias));
        }
    }

    private void add(Landmark landmark, String name) {
        marks.add(new Mark(
                lower(name),
                landmark.place().riverId(),
                landmark.place().chainage().metres()));
    }

    private static String lower(String text) {
        return Spelling.folded(text).strip().toLowerCase(Locale.ROOT);
    }

    /**
     * Looks through a text.
     *
     * @param text the text, folded
     * @param hit hears the place in the text, and the nest
     */
    void inText(CharSequence text, BiConsumer<Integer, NestPlaces.Nest> hit) {
        Matcher offset = OFFSET.matcher(text);
        while (offset.find()) {
            int metres = Integer.parseInt(offset.group(1));
            if (metres % COARSE_METRES != 0) {
                double along = offset.group(2) == null ? -metres : metres;
                double tolerance = metres % 10 == 0 ? 5 : 1;
                int at = offset.start();
                for (Mark mark : marks) {
                    if (stands(mark.name(), text, offset.end())) {
                        nests(mark, along, tolerance).forEach(nest -> hit.accept(at, nest));
                    }
                }
            }
        }
    }

    private static boolean stands(String name, CharSequence text, int at) {
        int end = Math.min(text.length(), at + name.length());
        return text.subSequence(at, end).toString().equalsIgnoreCase(name);
    }

    private List<NestPlaces.Nest> nests(Mark mark, double along, double tolerance) {
        return places.nests().stream()
                .filter(nest -> nest.riverId().equals(mark.riverId()))
                .filter(nest -> Math.abs(mark.metres() + along - nest.chainage().metres()) <= tolerance + 0.5)
                .toList();
    }
}
