package org.ouzelbook.tracker.exchange;

import java.util.Map;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.store.BookEdit;
import org.ouzelbook.tracker.store.SightingQuery;

/**
 * Knows the sightings that stood in the book before a file, and those of the file, by what they say.
 *
 * <p>Against the book a sighting is the same again if it says the same, its note and the accuracy of its place apart: a file
 * that was saved again or has grown repeats it, under whichever spelling of an observer’s name that was decided to be the same person’s. Within one file its note counts too, so that two birds told apart only by their notes stay
 * two.
 */
final class KnownSightings {
    private final Map<String, String> people;
    private final FingerprintSet before = new FingerprintSet();
    private final FingerprintSet labelled = new FingerprintSet();
    private final NearbySightings nearby = new NearbySightings();
    private final FingerprintSet inFile = new FingerprintSet();

    private KnownSightings(Map<String, String> people) {
        this.people = people;
    }

    /** Reads what the book holds of these years. */
    static KnownSightings of(BookEdit edit, SightingQuery query) {
        KnownSightings known = new KnownSightings(edit.samePeople());
        edit.eachSighting(query, sighting -> {
            known.before.add(known.content(sighting), 0);
            if (!sighting.label().isBlank()) {
                known.labelled.add(label(sighting), 0);
            }
            known.nearby.add(sighting, 0);
        });
        return known;
    }

    private String content(Sighting sighting) {
        return String.join(
                "\u001f",
                BookIndex.key(sighting.label()),
                sighting.place().riverId().toString(),
                Long.toString(Math.round(sighting.place().chainage().metres())),
                sighting.place().bank().name(),
                sighting.date().toString(),
                sighting.time().map(Object::toString).orElse(""),
                sighting.species().scientificName(),
                Integer.toString(sighting.count()),
                sighting.age().name(),
                sighting.sex().name(),
                sighting.activities().stream().map(Enum::name).sorted().collect(Collectors.joining(",")),
                sighting.breedingCode()
                        .map(code -> Integer.toString(code.number()))
                        .orElse(""),
                sighting.rings(),
                sighting.flewTo()
                        .map(to -> Long.toString(Math.round(to.metres())))
                        .orElse(""),
                Boolean.toString(sighting.turnedBack()),
                BookIndex.key(people.getOrDefault(sighting.observer(), sighting.observer())));
    }

    private static String label(Sighting sighting) {
        return String.join(
                "\u001f",
                BookIndex.key(sighting.label()),
                sighting.date().toString(),
                sighting.visitId().map(Object::toString).orElse(""));
    }

    /** {@return whether the book says the same} */
    boolean isKnown(Sighting sighting) {
        return before.contains(content(sighting));
    }

    /** {@return whether the book has another sighting with this label on the same visit or day} */
    boolean isLabelTaken(Sighting sighting) {
        return !sighting.label().isBlank() && labelled.contains(label(sighting));
    }

    /** {@return the earlier row of this file that says the same; 0 if there is none, and then this row is remembered} */
    long repeatedRow(Sighting sighting, long row) {
        return inFile.add(content(sighting) + "\u001f" + sighting.note(), Math.toIntExact(row));
    }

    /** {@return the row of a sighting that may be of the same bird; 0 if it stood in the book before; empty if none} */
    OptionalLong possiblySame(Sighting sighting, long row) {
        OptionalLong same = nearby.possiblySame(sighting);
        nearby.add(sighting, row);
        return same;
    }
}
