package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Sighting;

/** A record that can belong to a territory: a bird seen, or a nest in use. */
sealed interface Member permits Member.Seen, Member.Nesting {
    /** From the mouth up; on one spot by date, then by name, so that the order is the same every time. */
    Comparator<Member> UPSTREAM = Comparator.<Member>comparingDouble(Member::metres)
            .thenComparing(Member::first)
            .thenComparing(member -> member.name().toString())
            .thenComparing(Member::id);

    /** Key of the sighting or nest. */
    UUID id();

    Place place();

    /** The days on which it was met, in order. */
    List<LocalDate> dates();

    /** The highest breeding code that it shows alone. */
    BreedingCode code();

    /** What the surveyor calls it: a label, or a message that tells place and day. */
    Object name();

    default double metres() {
        return place().chainage().metres();
    }

    default LocalDate first() {
        return dates().get(0);
    }

    /** A sighting. */
    record Seen(Sighting sighting, BreedingCode code) implements Member {
        @Override
        public UUID id() {
            return sighting.id();
        }

        @Override
        public Place place() {
            return sighting.place();
        }

        @Override
        public List<LocalDate> dates() {
            return List.of(sighting.date());
        }

        @Override
        public Object name() {
            return Member.name(sighting);
        }
    }

    /** A nest that showed breeding. */
    record Nesting(NestHistory history) implements Member {
        @Override
        public UUID id() {
            return history.id();
        }

        @Override
        public Place place() {
            return history.nest().place();
        }

        @Override
        public List<LocalDate> dates() {
            return history.signs().stream().map(NestCheck::date).distinct().toList();
        }

        @Override
        public BreedingCode code() {
            return history.strongest().flatMap(BreedingSigns::of).orElseThrow();
        }

        @Override
        public Object name() {
            return Member.name(history.nest());
        }
    }

    static Object name(Sighting sighting) {
        return sighting.label().isBlank()
                ? Message.of("map.sighting.unlabelled", sighting.place().chainage(), sighting.date())
                : sighting.label();
    }

    static Object name(Nest nest) {
        return nest.label();
    }
}
