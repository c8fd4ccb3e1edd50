package org.ouzelbook.tracker.exchange.trip;

import java.io.IOException;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.exchange.file.FileSource;
import org.ouzelbook.tracker.exchange.file.NumberedRows;
import org.ouzelbook.tracker.river.RiverNetwork;

/**
 * A walk in a GPX file: its tracks become rows of visits and its waypoints rows of sightings, each row with the number of the line
 * of the file that it begins in.
 *
 * <p>Source: GPX 1.1 schema, topografix.com/GPX/1/1: times are UTC.
 */
public final class GpxTrip {
    private static final double MOSTLY = 0.9;

    /** The name of a share in the note, written as every value is whose column the book does not have; not a text for people alone. */
    private static final String COVERED = "covered";

    private final FileSource source;
    private final GpxReader read;

    private GpxTrip(FileSource source, GpxReader read) {
        this.source = source;
        this.read = read;
    }

    /**
     * {@return the walk that a file tells; empty if it is no GPX file, or tells of none: neither waypoints nor a track with
     * times, as in the line of a river}
     *
     * @param source a file
     * @throws org.ouzelbook.tracker.exchange.file.UnreadableFile if it is broken
     * @throws IOException if it cannot be read
     */
    public static Optional<GpxTrip> of(FileSource source) throws IOException {
        if (!source.plainName().endsWith(".gpx")) {
            return Optional.empty();
        }
        GpxReader read = GpxReader.of(source);
        boolean walked = !read.waypoints.isEmpty()
                || read.tracks.stream().anyMatch(track -> track.start().isPresent());
        return walked ? Optional.of(new GpxTrip(source, read)) : Optional.empty();
    }

    /** {@return the name that problems are told by} */
    public String name() {
        return source.name();
    }

    /**
     * A track with something to tell of it.
     *
     * @param line the line of the file that it begins in
     * @param name its name
     * @param message what to tell
     */
    public record Remark(int line, String name, Message message) {}

    /**
     * The tables of a walk.
     *
     * @param tables visits and sightings, where it has them
     * @param remarks tracks beside no river, and tracks with gaps
     */
    public record Tables(List<FileSource> tables, List<Remark> remarks) {
        /** Copies the lists. */
        public Tables {
            tables = List.copyOf(tables);
            remarks = List.copyOf(remarks);
        }
    }

    /**
     * {@return the walk as tables}
     *
     * @param rivers the rivers that it may go along
     * @param reaches the reaches whose coverage is noted
     * @param zone where it was, for the day in the label of a visit; UTC if empty
     */
    public Tables tables(RiverNetwork rivers, List<Reach> reaches, Optional<ZoneId> zone) {
        List<Remark> remarks = new ArrayList<>();
        List<FileSource> tables = new ArrayList<>();
        NumberedRows visits =
                new NumberedRows(List.of("visit", "date", "river", "from_km", "to_km", "direction", "note"));
        for (Track track : read.tracks) {
            Optional<Coverage> coverage = Coverage.of(track, rivers);
            if (coverage.isEmpty()) {
                String why = track.isNowhere()
                        ? "import.track.nowhere"
                        : Coverage.isBeside(track, rivers) ? "import.track.sparse" : "import.track.far";
                remarks.add(new Remark(track.line(), track.name(), Message.of(why)));
            } else {
                visits.add(track.line(), visit(track, coverage.get(), reaches, zone));
                if (coverage.get().shareOf(coverage.get().walked()) < MOSTLY) {
                    Message gaps =
                            Message.of("import.track.gaps", coverage.get().gaps());
                    remarks.add(new Remark(track.line(), track.name(), gaps));
                }
            }
        }
        visits.table(source.name() + "!tracks").ifPresent(tables::add);
        NumberedRows sightings =
                new NumberedRows(List.of("latitude", "longitude", "date", "species", "activity", "note"));
        read.waypoints.forEach(waypoint -> sightings.add(waypoint.line(), waypoint.row()));
        sightings.table(source.name() + "!waypoints").ifPresent(tables::add);
        return new Tables(tables, remarks);
    }

    private List<String> visit(Track track, Coverage coverage, List<Reach> reaches, Optional<ZoneId> zone) {
        String when = track.start()
                .map(start -> start + track.end().map(end -> "/" + end).orElse(""))
                .orElse("");
        String called = track.name().isEmpty() ? source.plainName().replaceFirst("\\.gpx$", "") : track.name();
        List<String> notes = new ArrayList<>();
        notes.add(COVERED + ": " + percent(coverage.shareOf(coverage.walked())));
        for (Reach reach : reaches) {
            boolean passed = reach.riverId().equals(coverage.river().id()) && coverage.shareOf(reach.stretch()) > 0;
            if (passed) {
                notes.add(COVERED + " " + reach.name() + ": " + percent(coverage.shareOf(reach.stretch())));
            }
        }
        Stretch walked = coverage.walked();
        return List.of(
                called + day(track, zone),
                when,
                coverage.river().name(),
                String.format(Locale.ROOT, "%.3f", walked.lower().km()),
                String.format(Locale.ROOT, "%.3f", walked.upper().km()),
                coverage.direction().map(Direction::name).orElse("").toLowerCase(Locale.ROOT),
                String.join("; ", notes));
    }

    private static String percent(double share) {
        return Math.round(100 * share) + "%";
    }

    private static String day(Track track, Optional<ZoneId> zone) {
        try {
            return track.start()
                    .map(OffsetDateTime::parse)
                    .map(start -> " "
                            + start.atZoneSameInstant(zone.orElse(ZoneOffset.UTC))
                                    .toLocalDate())
                    .orElse("");
        } catch (DateTimeException e) {
            return "";
        }
    }
}
