package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Keys;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.place.PlaceReading;
import org.ouzelbook.tracker.place.PlaceSettings;
import org.ouzelbook.tracker.place.Places;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.BookEdit;
import org.ouzelbook.tracker.store.BookView;

/** Makes and removes a surveyor's decisions about territories, and tells what each changes. */
public final class DecideTerritories {
    /** A bare number, which can only be a river km here. */
    private static final Pattern NUMBER = Pattern.compile("[0-9]+");

    private DecideTerritories() {}

    /**
     * What became of it.
     *
     * @param decision the decision that was made or removed
     * @param countBefore territories of its season on its river before, by the rules
     * @param countNow territories now
     */
    public record Answer(DecisionAnswer decision, int countBefore, int countNow) {}

    /**
     * A decision that is to be made.
     *
     * @param decision the decision
     * @param stands the same, made before without a reason; empty where it is new
     */
    record Made(Decision decision, Optional<Decision> stands) {}

    /**
     * Makes the decisions of a line, in one step.
     *
     * @param book an open book
     * @param scope species, season and river; the last season and the only river if they are not given
     * @param lines what was decided, one decision or more
     * @param who who decided it
     * @param today the day
     * @return the decisions, and what they changed together
     * @throws WrongRequest if one cannot be understood, or all of them stand already and no other reason is given
     * @throws org.ouzelbook.tracker.store.BookException if one contradicts another
     */
    public static List<Answer> make(Book book, Scope scope, List<DecisionLine> lines, String who, LocalDate today) {
        SurveyReading reading = SurveyReading.of(book, scope);
        Function<DecisionLine, Decision> draft = book.read(view -> {
            Places places = Places.of(view.network(), view.landmarks(), PlaceSettings.USUAL);
            return line ->
                    draft(places, reading.water().riverId(), scope.species(), reading.season(), line, who, today);
        });
        List<Made> made = made(reading.records(), lines, draft);
        List<Decision> decisions = made.stream().map(Made::decision).toList();
        return change(
                book, decisions, step(made), who, edit -> made.forEach(one -> put(edit, one.stands(), one.decision())));
    }

    /**
     * {@return the decisions of lines, one or more; of several, those that do not stand already}
     *
     * @param now the records of the book
     * @param lines what was decided
     * @param draft makes a decision of a line
     * @throws WrongRequest if all of them stand already and no other reason is given
     */
    static List<Made> made(SurveyRecords now, List<DecisionLine> lines, Function<DecisionLine, Decision> draft) {
        List<Made> made = new ArrayList<>();
        Optional<WrongRequest> twice = Optional.empty();
        for (Decision drafted : lines.stream().map(draft).toList()) {
            try {
                Optional<Decision> stands = standing(now, drafted);
                made.add(new Made(stands.map(before -> because(before, drafted)).orElse(drafted), stands));
            } catch (WrongRequest e) {
                twice = Optional.of(e);
            }
        }
        if (made.isEmpty() && twice.isPresent()) {
            throw twice.get();
        }
        return made;
    }

    /** The name of the step that makes decisions: another one where all of them only get a reason. */
    static String step(List<Made> made) {
        return made.stream().allMatch(one -> one.stands().isPresent()) ? "decide.step.reason" : "decide.step.made";
    }

    /** {@return several decisions in one message} */
    static Message together(List<Message> words) {
        return words.stream()
                .reduce((one, other) -> Message.of("decide.both", one, other))
                .orElseThrow();
    }

    /**
     * Removes a decision; the history keeps it.
     *
     * @param book an open book
     * @param number its number, as {@code show decisions} lists it
     * @param who who removes it
     * @return the decision, and what its removal changed
     * @throws WrongRequest if there is none with this number
     */
    public static Answer remove(Book book, int number, String who) {
        List<Decision> all = book.read(BookView::decisions);
        if (number < 1 || number > all.size()) {
            throw new WrongRequest(
                    all.isEmpty() ? Message.of("decide.none") : Message.of("decide.noNumber", number, all.size()));
        }
        Decision decision = all.get(number - 1);
        return change(book, List.of(decision), "decide.step.removed", who, edit -> edit.remove(decision))
                .get(0);
    }

    private static List<Answer> change(
            Book book, List<Decision> decisions, String step, String who, Consumer<BookEdit> work) {
        List<DecisionAnswer> before =
                decisions.stream().map(one -> told(book, one)).toList();
        List<Integer> counts = decisions.stream().map(one -> count(book, one)).toList();
        Message words = together(before.stream().map(DecisionAnswer::words).toList());
        book.change(Message.of(step, words), who, edit -> {
            work.accept(edit);
            return before;
        });
        return IntStream.range(0, decisions.size())
                .mapToObj(i -> {
                    DecisionAnswer now = told(book, decisions.get(i));
                    return new Answer(
                            now.number() > 0 ? now : before.get(i), counts.get(i), count(book, decisions.get(i)));
                })
                .toList();
    }

    /** The decision with its number; 0 if the book has it not. */
    private static DecisionAnswer told(Book book, Decision decision) {
        return book.read(view -> DecisionAnswer.of(1 + view.decisions().indexOf(decision), decision, view.network()));
    }

    private static int count(Book book, Decision decision) {
        Species species = decision.species();
        SurveyRecords records =
                SurveyReading.of(book, Scope.everything().of(species)).records();
        return TerritoryMap.of(
                        records,
                        species,
                        decision.season(),
                        MapSettings.usualFor(species),
                        Water.ofRiver(decision.riverId()))
                .rivers()
                .get(0)
                .count()
                .likely();
    }

    /**
     * {@return the decision that a line means; it is stored nowhere}
     *
     * @param finder finds the places
     * @param river key of the river that they lie on; empty for the only one, or the one that the line names
     * @param species whose territories
     * @param season the season
     * @param line what was decided
     * @param who who decided it
     * @param today the day
     * @throws WrongRequest if it cannot be understood
     */
    static Decision draft(
            Places finder,
            Optional<UUID> river,
            Species species,
            int season,
            DecisionLine line,
            String who,
            LocalDate today) {
        if (line.kind() == DecisionKind.NOTE && line.note().isEmpty()) {
            throw new WrongRequest(Message.of("decide.emptyNote"));
        }
        List<Place> places = places(finder, river, line.places());
        return new Decision(
                Keys.next(),
                species,
                season,
                places.get(0).riverId(),
                line.kind(),
                stretch(line.kind(), places),
                line.note(),
                who,
                today);
    }

    private static List<Place> places(Places finder, Optional<UUID> asked, List<String> written) {
        List<River> rivers = finder.network().rivers();
        Optional<UUID> river =
                asked.or(() -> rivers.size() == 1 ? Optional.of(rivers.get(0).id()) : Optional.empty());
        List<Place> found = new ArrayList<>();
        for (String text : written) {
            Optional<UUID> on =
                    found.isEmpty() ? river : Optional.of(found.get(0).riverId());
            PlaceReading read = finder.read(NUMBER.matcher(text).matches() ? "km " + text : text, on);
            if (read instanceof PlaceReading.Unclear unclear) {
                throw new WrongRequest(unclear.question());
            }
            found.add(((PlaceReading.Found) read).place());
        }
        return found;
    }

    private static Stretch stretch(DecisionKind kind, List<Place> places) {
        Stretch stretch = Stretch.between(
                places.get(0).chainage(), places.get(places.size() - 1).chainage());
        if (!(stretch.length() > 0) && kind != DecisionKind.BOUNDARY && kind != DecisionKind.NOTE) {
            throw new WrongRequest(Message.of("decide.noLength", kind, stretch.lower()));
        }
        return stretch;
    }

    /**
     * {@return the same decision, made before without a reason that is now given; empty where it is a new one}
     *
     * @param records the records of the book
     * @param decision a decision that is to be made
     * @throws WrongRequest if the same stands already and no other reason is given
     */
    static Optional<Decision> standing(SurveyRecords records, Decision decision) {
        Optional<Decision> same = records.decisions(decision.species(), decision.season()).stream()
                .filter(other -> decision.kind() != DecisionKind.NOTE
                        && other.kind() == decision.kind()
                        && other.riverId().equals(decision.riverId())
                        && other.stretch().equals(decision.stretch()))
                .findFirst();
        same.filter(other -> decision.note().isEmpty() || other.note().equals(decision.note()))
                .ifPresent(other -> {
                    throw new WrongRequest(Message.of(
                            "decide.twice",
                            DecisionAnswer.of(0, other, records.rivers()).words(),
                            other.by(),
                            other.on()));
                });
        return same;
    }

    /** {@return a decision that stands, with the reason, person and day of one that says the same} */
    static Decision because(Decision stands, Decision now) {
        return new Decision(
                stands.id(),
                stands.species(),
                stands.season(),
                stands.riverId(),
                stands.kind(),
                stands.stretch(),
                now.note(),
                now.by(),
                now.on());
    }

    static void put(BookEdit edit, Optional<Decision> stands, Decision decision) {
        if (stands.isPresent()) {
            edit.replace(decision);
        } else {
            edit.add(decision);
        }
    }
}
