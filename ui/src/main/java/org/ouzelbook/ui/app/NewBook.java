package org.ouzelbook.ui.app;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.exchange.river.RiverFile;
import org.ouzelbook.tracker.river.RiverAnswers;
import org.ouzelbook.tracker.river.SelfCrossing;
import org.ouzelbook.tracker.river.UnderstoodRiver;
import org.ouzelbook.tracker.river.UnderstoodRiver.MouthBy;
import org.ouzelbook.tracker.river.UnderstoodRivers;
import org.ouzelbook.tracker.store.Book;

/** Makes a new book of drawn rivers, and tells what was understood of the drawing. */
public final class NewBook {
    private NewBook() {}

    /**
     * What was understood, and whether the book was made.
     *
     * @param book the full name of its file; empty if it was not made
     * @param rivers the rivers, receiving rivers before their tributaries
     * @param questions what must be answered or mended first; none if the book was made
     * @param warnings what was passed over, and where a line looks wrong
     */
    public record Answer(
            Optional<String> book, List<DrawnLine> rivers, List<Message> questions, List<Message> warnings) {
        /** Copies the lists. */
        public Answer {
            rivers = List.copyOf(rivers);
            questions = List.copyOf(questions);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * One river as understood.
     *
     * @param river its name
     * @param lengthKm length of its line in km, bridged gaps included
     * @param fromKm river km of its lower end
     * @param toKm river km of its upper end
     * @param lowerEnd where its lower end lies: the mouth, unless its km start above 0
     * @param upperEnd where its upper end lies
     * @param mouthBy how the mouth was told
     * @param pieces how many drawn pieces are in the line
     * @param turned how many of these were drawn against the others
     * @param gaps gaps that were bridged
     * @param leftOutKm length of what was drawn but is not in the line, in km
     * @param joins where its mouth lies on another river
     */
    public record DrawnLine(
            String river,
            double lengthKm,
            Chainage fromKm,
            Chainage toKm,
            GeoPoint lowerEnd,
            GeoPoint upperEnd,
            MouthBy mouthBy,
            int pieces,
            int turned,
            List<Gap> gaps,
            double leftOutKm,
            Optional<Joins> joins) {
        /** Copies the gaps. */
        public DrawnLine {
            gaps = List.copyOf(gaps);
        }
    }

    /**
     * A gap that was bridged.
     *
     * @param km river km of its lower end
     * @param metres its width, in metres
     */
    public record Gap(Chainage km, double metres) {}

    /**
     * A mouth on another river.
     *
     * @param river name of the receiving river
     * @param km river km on the receiving river
     * @param metresAway how far the drawn mouth lies from it, in metres
     */
    public record Joins(String river, Chainage km, double metresAway) {}

    /**
     * What would be made.
     *
     * @param answer what was understood, and what must be answered or mended first
     * @param lines the lines of the rivers as they would be kept, each going upstream from its mouth
     */
    public record Rehearsal(Answer answer, List<RiverLine> lines) {
        /** Copies the lines. */
        public Rehearsal {
            lines = List.copyOf(lines);
        }
    }

    /**
     * Tells what would be understood of a drawing; nothing is made.
     *
     * @param files GeoJSON or GPX files of rivers
     * @param answers what a person said where the drawing leaves it open
     * @return what would be made
     * @throws java.io.UncheckedIOException if a river file cannot be read
     */
    public static Rehearsal rehearse(List<Path> files, RiverAnswers answers) {
        RiverFile drawn = RiverFile.read(files);
        if (!drawn.problems().isEmpty()) {
            return new Rehearsal(
                    new Answer(Optional.empty(), List.of(), withFiles(drawn.problems()), withFiles(drawn.remarks())),
                    List.of());
        }
        UnderstoodRivers understood = UnderstoodRivers.of(drawn.rivers(), answers);
        List<DrawnLine> lines = understood.rivers().stream()
                .map(river -> line(river, understood))
                .toList();
        return new Rehearsal(
                new Answer(Optional.empty(), lines, understood.questions(), withFiles(drawn.remarks())),
                understood.rivers().stream().map(UnderstoodRiver::line).toList());
    }

    /**
     * Makes a book of one river without a line: places are told by km and landmarks, not by coordinates.
     *
     * @param book where, with or without the ending {@code .mv.db}
     * @param river its name; not blank
     * @param who who makes it
     * @return the file of the book
     * @throws org.ouzelbook.tracker.store.BookException if there is a file already, or the folder cannot be written
     */
    public static Path undrawn(Path book, String river, String who) {
        try (Book made = Book.create(book)) {
            made.change(Message.of("new.step", river), who, edit -> {
                edit.add(new River(UUID.randomUUID(), river.strip(), Optional.empty()));
                return null;
            });
            return made.file();
        }
    }

    /**
     * Makes a book, unless something is unclear: then nothing is made.
     *
     * @param book where, with or without the ending {@code .mv.db}
     * @param files GeoJSON or GPX files of its rivers
     * @param answers what a person said where the drawing leaves it open
     * @param who who makes it
     * @return what was understood
     * @throws org.ouzelbook.tracker.store.BookException if there is a file already, or the folder cannot be written
     * @throws java.io.UncheckedIOException if a river file cannot be read
     */
    public static Answer make(Path book, List<Path> files, RiverAnswers answers, String who) {
        RiverFile drawn = RiverFile.read(files);
        if (!drawn.problems().isEmpty()) {
            return new Answer(Optional.empty(), List.of(), withFiles(drawn.problems()), withFiles(drawn.remarks()));
        }
        UnderstoodRivers understood = UnderstoodRivers.of(drawn.rivers(), answers);
        List<DrawnLine> lines = understood.rivers().stream()
                .map(river -> line(river, understood))
                .toList();
        if (!understood.questions().isEmpty()) {
            return new Answer(Optional.empty(), lines, understood.questions(), withFiles(drawn.remarks()));
        }
        try (Book made = Book.create(book)) {
            List<String> names = lines.stream().map(DrawnLine::river).toList();
            made.change(Message.of("new.step", names), who, edit -> {
                understood.rivers().forEach(river -> {
                    edit.add(river.river());
                    edit.add(river.line());
                });
                return null;
            });
            List<Message> warnings = new ArrayList<>(withFiles(drawn.remarks()));
            understood
                    .rivers()
                    .forEach(river -> SelfCrossing.of(river.line())
                            .map(at -> Message.of(
                                    "new.crossesItself", river.river().name(), at))
                            .ifPresent(warnings::add));
            return new Answer(Optional.of(made.file().toString()), lines, List.of(), warnings);
        }
    }

    /** What is said of a file names it in its first fact, and not in its words. */
    private static List<Message> withFiles(List<Message> told) {
        return told.stream()
                .map(message -> message.key().startsWith("river.file.")
                        ? Message.of("river.inFile", message.facts().get(0), message)
                        : message)
                .toList();
    }

    private static DrawnLine line(UnderstoodRiver river, UnderstoodRivers all) {
        Chainage from = river.line().lowerEnd();
        return new DrawnLine(
                river.river().name(),
                river.lengthMetres() / 1000,
                from,
                new Chainage(from.metres() + river.lengthMetres()),
                river.lowerEnd(),
                river.upperEnd(),
                river.mouthBy(),
                river.pieces(),
                river.turned(),
                river.gaps().stream()
                        .map(gap -> new Gap(gap.at(), gap.metres()))
                        .toList(),
                river.leftOutMetres().stream().mapToDouble(Double::doubleValue).sum() / 1000,
                river.river().mouth().map(mouth -> joins(river, mouth, all)));
    }

    private static Joins joins(UnderstoodRiver river, River.Confluence mouth, UnderstoodRivers all) {
        String receiving = all.rivers().stream()
                .map(UnderstoodRiver::river)
                .filter(other -> other.id().equals(mouth.riverId()))
                .map(River::name)
                .findFirst()
                .orElseThrow();
        return new Joins(
                receiving, mouth.chainage(), river.metresFromReceiving().orElse(0.0));
    }
}
