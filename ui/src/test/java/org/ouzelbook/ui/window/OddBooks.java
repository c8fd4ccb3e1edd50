package org.ouzelbook.ui.window;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.BookEdit;
import org.ouzelbook.ui.app.SealSeason;

/** Books with little in them, or with odd things, that every page has to show. */
final class OddBooks {
    private static final LocalDate DAY = LocalDate.of(2026, 3, 16);

    /** Markup, signs beyond the first plane, right to left, and long. */
    private static final String ODD_NAME = "<b>Ärrel & Söhne</b> 🐦 نهر الغطاس \"%s\" {0} " + "lang ".repeat(50);

    private OddBooks() {}

    /** {@return the books, each by what is odd about it} */
    static Map<String, Path> in(Path folder) {
        Map<String, Path> books = new LinkedHashMap<>();
        books.put("empty", book(folder.resolve("empty"), edit -> {}));
        books.put("river only", book(folder.resolve("river"), edit -> river(edit, "Arrel Water")));
        books.put("visit without birds", book(folder.resolve("visit"), edit -> {
            River river = river(edit, "Arrel Water");
            edit.add(visit(river, "V1", "HB"));
        }));
        books.put("one bird only", book(folder.resolve("bird"), edit -> {
            River river = river(edit, "Arrel Water");
            edit.add(sighting(river, Optional.empty(), "b1", 8.4, ""));
        }));
        books.put("odd names", book(folder.resolve("names"), OddBooks::oddNames));
        Path season = folder.resolve("season");
        SampleBook.create(season).close();
        books.put("one season, two rivers", season);
        Path sealed = folder.resolve("sealed");
        try (Book book = SampleBook.create(sealed)) {
            SealSeason.seal(book, Species.DIPPER, Optional.of(2026), "HB", LocalDate.of(2026, 7, 1), Progress.NONE);
        }
        books.put("sealed", sealed);
        return books;
    }

    private static Path book(Path file, Consumer<BookEdit> content) {
        try (Book book = Book.create(file)) {
            book.change(Message.of("window.title"), "HB", edit -> {
                content.accept(edit);
                return file;
            });
        }
        return file;
    }

    private static void oddNames(BookEdit edit) {
        River river = river(edit, ODD_NAME);
        edit.add(new Landmark(UUID.randomUUID(), ODD_NAME, LandmarkKind.BRIDGE, place(river, 8), List.of(), false));
        edit.add(new Reach(UUID.randomUUID(), ODD_NAME, river.id(), Stretch.ofKm(2, 12)));
        Visit visit = visit(river, ODD_NAME, ODD_NAME);
        edit.add(visit);
        edit.add(sighting(river, Optional.of(visit.id()), ODD_NAME, 8.4, ODD_NAME));
        edit.add(sighting(river, Optional.of(visit.id()), "b2", 11.4, ODD_NAME));
    }

    private static River river(BookEdit edit, String name) {
        River river = new River(UUID.randomUUID(), name, Optional.empty());
        edit.add(river);
        edit.add(new RiverLine(
                river.id(),
                1,
                new Chainage(0),
                List.of(new GeoPoint(55, -3), new GeoPoint(55.16, -3)),
                "drawn by hand"));
        return river;
    }

    private static Place place(River river, double km) {
        return new Place(river.id(), Chainage.ofKm(km), Bank.UNKNOWN, 20, 1);
    }

    private static Visit visit(River river, String label, String who) {
        return new Visit(
                UUID.randomUUID(),
                label,
                river.id(),
                DAY,
                Optional.of(LocalTime.of(7, 0)),
                Optional.of(LocalTime.of(11, 0)),
                Optional.of(Stretch.ofKm(2, 12)),
                Optional.empty(),
                Optional.empty(),
                List.of(who),
                List.of(Species.DIPPER),
                "",
                "",
                true,
                "");
    }

    private static Sighting sighting(River river, Optional<UUID> visit, String label, double km, String note) {
        return new Sighting(
                UUID.randomUUID(),
                label,
                visit,
                DAY,
                Optional.empty(),
                place(river, km),
                Species.DIPPER,
                1,
                Age.UNKNOWN,
                Sex.UNKNOWN,
                Set.of(Activity.SINGING),
                Optional.empty(),
                "",
                Set.of(),
                Optional.empty(),
                false,
                "HB",
                note);
    }
}
