package org.ouzelbook.ui.window;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.ui.app.DecideLine;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TypedLines;
import org.ouzelbook.ui.strip.Subject;

/**
 * The end of a territory while it is moved along the river, by the pointer or by keys. It tells where the end has come to and what
 * the count by rule would be with a boundary there; nothing is decided before it is let go.
 */
final class EndMove {
    /** Places are kept to so many metres, as they are written: km 8.51. */
    private static final double GRAIN = 10;

    /** A landmark farther away than this, in metres, says nothing of a place; common practice, no source. */
    private static final double NEAR = 1000;

    private final BookViewModel book;
    private final Work work;
    private final Supplier<Optional<DecideLine>> decisions;
    private final ReadOnlyObjectWrapper<Optional<Held>> held = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyStringWrapper count = new ReadOnlyStringWrapper("");
    private volatile String newest = "";

    /**
     * @param book the book
     * @param work tells what the count would be
     * @param decisions reads decisions about the season shown; empty while there is none
     */
    EndMove(BookViewModel book, Work work, Supplier<Optional<DecideLine>> decisions) {
        this.book = book;
        this.work = work;
        this.decisions = decisions;
    }

    /**
     * An end that is held.
     *
     * @param end the end
     * @param from where it was
     * @param at where it is now
     */
    record Held(Subject.OfEnd end, Chainage from, Chainage at) {
        boolean isMoved() {
            return !from.equals(at);
        }

        Subject.OfTerritory territory() {
            return new Subject.OfTerritory(end.season(), end.riverId(), end.id());
        }
    }

    /** {@return the end that is held; empty while none is} */
    ReadOnlyObjectProperty<Optional<Held>> held() {
        return held.getReadOnlyProperty();
    }

    /** {@return what the count would be, in words; blank while the end is where it was} */
    ReadOnlyStringProperty count() {
        return count.getReadOnlyProperty();
    }

    /**
     * Takes hold of an end.
     *
     * @param end the end
     * @return whether it is there
     */
    boolean take(Subject.OfEnd end) {
        Optional<Chainage> where = book.territory(new Subject.OfTerritory(end.season(), end.riverId(), end.id()))
                .map(Territory::stretch)
                .map(stretch -> end.upper() ? stretch.upper() : stretch.lower());
        newest = "";
        count.set("");
        held.set(where.map(place -> new Held(end, place, place)));
        return where.isPresent();
    }

    /**
     * Moves the end that is held, to the nearest ten metres.
     *
     * @param place where to
     */
    void to(Chainage place) {
        held.get().ifPresent(one -> {
            Chainage at = new Chainage(Math.rint(place.metres() / GRAIN) * GRAIN);
            if (!at.equals(one.at())) {
                Held moved = new Held(one.end(), one.from(), at);
                held.set(Optional.of(moved));
                ask(line(moved));
            }
        });
    }

    /** Moves the end that is held by some metres, upstream if they are above 0. */
    void by(double metres) {
        held.get()
                .flatMap(one -> book.strip()
                        .water(one.end().riverId())
                        .map(water -> water.nearest(Math.rint(one.at().metres() / GRAIN) * GRAIN + metres)))
                .ifPresent(this::to);
    }

    /** The decision that the end where it is now stands for. */
    private String line(Held one) {
        return book.decisionsAbout(one.territory())
                .map(about -> about.end(one.end().upper(), one.at()))
                .orElseGet(
                        () -> Decisions.boundaryAt(book.riverBeforeKm(one.end().riverId()), one.at()));
    }

    private void ask(String line) {
        newest = line;
        if (count.get().isEmpty()) {
            count.set(Texts.of("window.end.counting"));
        }
        decisions
                .get()
                .ifPresent(reader -> work.start(
                        "",
                        progress -> line.equals(newest)
                                ? Optional.of(reader.read(line))
                                : Optional.<TypedLines.Answer>empty(),
                        answer -> answer.filter(one -> line.equals(newest)).ifPresent(one -> count.set(words(one))),
                        book::failed));
    }

    private static String words(TypedLines.Answer answer) {
        return answer.isClear()
                ? answer.understood().get(1)
                : Texts.of(answer.questions().get(0).question());
    }

    /** Leaves the end where it was. */
    void leave() {
        newest = "";
        held.set(Optional.empty());
        count.set("");
    }

    /**
     * Lets the end go where it is, and so decides that there is a boundary, and that the records over which it was moved outwards are the
     * territory’s, in one step; nothing is decided where it was not moved.
     */
    void letGo() {
        Optional<Held> last = held.get();
        leave();
        last.filter(Held::isMoved).ifPresent(one -> book.notebook().decide(line(one)));
    }

    /** {@return where the end that is held has come to, by km and by the nearest landmark} */
    String place() {
        return held.get()
                .map(one -> Texts.of(
                        "window.end.at",
                        one.at(),
                        nearest(one.end().riverId(), one.at())
                                .map(mark -> near(mark, one.at()))
                                .orElse("")))
                .orElse("");
    }

    private Optional<Landmark> nearest(UUID riverId, Chainage at) {
        return book.contents().get().stream()
                .flatMap(there -> there.records().landmarks().stream())
                .filter(mark -> mark.place().riverId().equals(riverId))
                .filter(mark -> away(mark, at) <= NEAR)
                .min(Comparator.comparingDouble(mark -> away(mark, at)));
    }

    private static double away(Landmark mark, Chainage at) {
        return Math.abs(mark.place().chainage().metres() - at.metres());
    }

    private static String near(Landmark mark, Chainage at) {
        double above = at.metres() - mark.place().chainage().metres();
        int way = Math.abs(above) < GRAIN / 2 ? 0 : above > 0 ? 1 : -1;
        return Texts.of("window.end.near", way, Math.rint(Math.abs(above) / GRAIN) * GRAIN, mark.name());
    }

    /** {@return the lines that stand beside the end that is held: where it is, the count, and what ends the move} */
    List<String> told(boolean byKeys) {
        return held.get()
                .map(one -> List.of(
                        place(),
                        one.isMoved()
                                ? count.get()
                                : Texts.of(
                                        "window.end.here",
                                        one.end().upper() ? 1 : 0,
                                        one.end().id()),
                        Texts.of(byKeys ? "window.end.byKeys" : "window.end.byPointer")))
                .orElse(List.of());
    }
}
