package org.ouzelbook.tracker.domain;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A riverbird that the book follows.
 *
 * @param scientificName its scientific name, which is also its key
 * @param englishName its English name
 * @param code the two-letter code in common use
 * @param seasonFrom first day of the window in which records count for territories
 * @param seasonTo last day of that window
 */
public record Species(String scientificName, String englishName, String code, MonthDay seasonFrom, MonthDay seasonTo) {

    /**
     * White-throated dipper. The window follows the usual laying dates (mid-February to mid-June); records outside are kept
     * but make no territory. Common practice, no source; move it with altitude and latitude.
     */
    public static final Species DIPPER =
            new Species("Cinclus cinclus", "dipper", "DI", MonthDay.of(2, 15), MonthDay.of(6, 15));

    /** Grey wagtail. Window: common practice, no source. */
    public static final Species GREY_WAGTAIL =
            new Species("Motacilla cinerea", "grey wagtail", "GL", MonthDay.of(3, 1), MonthDay.of(7, 31));

    /** Common kingfisher. Window: common practice, no source. */
    public static final Species KINGFISHER =
            new Species("Alcedo atthis", "kingfisher", "KF", MonthDay.of(3, 1), MonthDay.of(8, 31));

    /** Common sandpiper. Window: common practice, no source. */
    public static final Species COMMON_SANDPIPER =
            new Species("Actitis hypoleucos", "common sandpiper", "CS", MonthDay.of(4, 15), MonthDay.of(7, 15));

    /** {@return every species that the book knows, the dipper first} */
    public static List<Species> all() {
        return List.of(DIPPER, GREY_WAGTAIL, KINGFISHER, COMMON_SANDPIPER);
    }

    /**
     * {@return the species with this scientific name, English name or code, in any case; empty if unknown}
     *
     * @param name a name or code as somebody wrote it
     */
    public static Optional<Species> named(String name) {
        String wanted = name.strip().toLowerCase(Locale.ROOT).replace('_', ' ');
        return all().stream()
                .filter(species -> species.names().anyMatch(wanted::equals))
                .findFirst();
    }

    private Stream<String> names() {
        return Stream.of(scientificName, englishName, code).map(name -> name.toLowerCase(Locale.ROOT));
    }

    /**
     * {@return whether the day lies inside the species' window of its year}
     *
     * @param day a date
     */
    public boolean inSeason(LocalDate day) {
        MonthDay monthDay = MonthDay.from(day);
        return !monthDay.isBefore(seasonFrom) && !monthDay.isAfter(seasonTo);
    }
}
