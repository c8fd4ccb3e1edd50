package org.ouzelbook.ui.window;

import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.strip.SampleRiver;

/** The invented river of the strip's tests, in a book. */
final class SampleBook {
    private SampleBook() {}

    static Book create(Path file) {
        Book book = Book.create(file);
        SurveyRecords records = SampleRiver.of2026().records();
        book.change(Message.of("window.title"), "HB", edit -> {
            records.rivers().rivers().forEach(edit::add);
            edit.add(line(SampleRiver.ARREL.id(), 0.16));
            edit.add(line(SampleRiver.SORN.id(), 0.03));
            records.landmarks().forEach(edit::add);
            records.visits().forEach(edit::add);
            records.sightings().forEach(edit::add);
            return records;
        });
        return book;
    }

    private static RiverLine line(UUID riverId, double degrees) {
        List<GeoPoint> points = List.of(new GeoPoint(55, -3), new GeoPoint(55 + degrees, -3));
        return new RiverLine(riverId, 1, new Chainage(0), points, "invented");
    }
}
