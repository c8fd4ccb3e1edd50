package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.time.Year;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Keys;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Seal;
import org.ouzelbook.tracker.domain.Seal.Figure;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;

/**
 * Seals what was answered about a season when it is reported, and tells later whether the answer is still the same, and if not,
 * why: other records, other settings, or another program.
 */
public final class SealSeason {
    private SealSeason() {}

    /**
     * A sealed season as it was answered, beside the answer of today.
     *
     * @param season the year
     * @param species whose territories
     * @param by who sealed it
     * @param on when
     * @param program the version of the program that answered
     * @param same whether today's answer is the sealed one, as far as it was compared
     * @param differences figure by figure, what is not the same by rule
     * @param byModel figure by figure, what is not the same by the model; empty where its count of today was not asked
     * @param because why, as far as the book can tell
     * @param settings the settings then, by name
     * @param figures the sealed figures, by name
     * @param sentences the sealed answer as it was told
     */
    public record Answer(
            Year season,
            Species species,
            String by,
            LocalDate on,
            String program,
            boolean same,
            List<Message> differences,
            Optional<List<Message>> byModel,
            List<Message> because,
            Map<String, String> settings,
            Map<String, String> figures,
            List<String> sentences) {
        /** Copies the lists. */
        public Answer {
            differences = List.copyOf(differences);
            byModel = byModel.map(List::copyOf);
            because = List.copyOf(because);
            sentences = List.copyOf(sentences);
        }
    }

    /**
     * Seals a season.
     *
     * @param book an open book
     * @param species whose territories
     * @param season the season; empty for the last
     * @param who who seals it
     * @param today the day
     * @param progress hears how far the count by model has come, and may stop it
     * @return the sealed answer
     * @throws WrongRequest if the season is sealed, or there is nothing to seal
     */
    public static Answer seal(
            Book book, Species species, Optional<Integer> season, String who, LocalDate today, Progress progress) {
        Scope scope = Scope.everything().of(species);
        int year = season.orElseGet(() -> SurveyReading.of(book, scope).season());
        Optional<Seal> there = book.read(view -> view.seal(species, year));
        if (there.isPresent()) {
            throw new WrongRequest(Message.of(
                    "seal.already",
                    Year.of(year),
                    species,
                    there.get().on(),
                    there.get().by()));
        }
        long step = book.read(view -> view.lastStep());
        Scope ofYear = scope.in(year);
        TerritoryMap map = map(book, species, year);
        if (map.rivers().stream().allMatch(river -> river.effectiveVisits() == 0)) {
            throw new WrongRequest(Message.of("seal.nothing", Year.of(year), species));
        }
        MapAnswer answer = MapSeason.of(book, ofYear, UnaryOperator.identity(), progress);
        List<Figure> figures = new ArrayList<>(SealedFigures.byRule(map));
        figures.addAll(SealedFigures.byModel(answer));
        List<String> sentences =
                SeasonFindings.of(book, ofYear, UnaryOperator.identity(), Counting.BY_MODEL, progress)
                        .story()
                        .findings()
                        .stream()
                        .map(StoryWords::whole)
                        .toList();
        Seal seal = new Seal(
                Keys.next(),
                species,
                year,
                ProgramVersion.words(),
                step,
                SealedFigures.settings(answer.settings()),
                figures,
                sentences,
                who,
                today);
        book.change(Message.of("seal.step.sealed", Year.of(year), species), who, edit -> {
            edit.add(seal);
            return seal;
        });
        return answer(book, seal);
    }

    /**
     * Takes a seal away; the history keeps it.
     *
     * @param book an open book
     * @param species whose territories
     * @param season the season; empty for the one that is sealed last
     * @param who who takes it away
     * @return what was sealed
     * @throws WrongRequest if there is no such seal
     */
    public static Answer remove(Book book, Species species, Optional<Integer> season, String who) {
        Seal seal = wanted(book, species, season);
        Answer answer = answer(book, seal);
        book.change(Message.of("seal.step.removed", Year.of(seal.season()), species), who, edit -> {
            edit.remove(seal);
            return seal;
        });
        return answer;
    }

    /**
     * {@return a sealed season}
     *
     * @param book an open book
     * @param species whose territories
     * @param season the season; empty for the last one sealed
     * @throws WrongRequest if there is no such seal
     */
    public static Answer of(Book book, Species species, Optional<Integer> season) {
        return answer(book, wanted(book, species, season));
    }

    /**
     * {@return a sealed season, the model's count compared as well}
     *
     * @param book an open book
     * @param species whose territories
     * @param season the season
     * @param counts the counts of today, by the model
     * @param progress hears how far the work has come, and may stop it
     * @throws WrongRequest if there is no such seal
     */
    public static Answer of(Book book, Species species, int season, BookCounts counts, Progress progress) {
        return answer(
                book,
                wanted(book, species, Optional.of(season)),
                Optional.of(SealedFigures.byModel(counts.density(progress), season)));
    }

    private static Seal wanted(Book book, Species species, Optional<Integer> season) {
        List<Seal> seals = book.read(view -> view.seals());
        return seals.stream()
                .filter(seal -> seal.species().equals(species))
                .filter(seal -> season.map(year -> year == seal.season()).orElse(true))
                .reduce((one, later) -> later)
                .orElseThrow(() -> new WrongRequest(
                        season.isPresent()
                                ? Message.of("seal.none", Year.of(season.get()), species)
                                : Message.of("seal.noneAtAll", species)));
    }

    /**
     * {@return every sealed season of a book}
     *
     * @param book an open book
     */
    public static List<Answer> all(Book book) {
        List<Seal> seals = book.read(view -> view.seals());
        return seals.stream().map(seal -> answer(book, seal)).toList();
    }

    /**
     * {@return what to tell beside an answer about a season: that the sealed answer was another, and why; empty where it is the
     * same, or the season is not sealed}
     *
     * @param book an open book
     * @param species whose territories
     * @param season the season
     */
    public static List<Message> warnings(Book book, Species species, int season) {
        Optional<Seal> seal = book.read(view -> view.seal(species, season));
        return seal.map(there -> answer(book, there)).filter(answer -> !answer.same()).stream()
                .flatMap(answer -> warnings(answer).stream())
                .toList();
    }

    /**
     * {@return the same beside a map, the model's count compared as well where the map counted all that was sealed by the usual
     * rules}
     *
     * @param book an open book
     * @param scope what the map was asked
     * @param map the map
     */
    public static List<Message> warnings(Book book, Scope scope, MapAnswer map) {
        boolean asSealed = isAsSealed(scope) && map.settings().equals(MapSettings.usualFor(map.species()));
        if (!asSealed) {
            return warnings(book, map.species(), map.season());
        }
        Optional<Seal> seal = book.read(view -> view.seal(map.species(), map.season()));
        return seal.stream()
                .flatMap(there -> warnings(answer(book, there, Optional.of(SealedFigures.byModel(map)))).stream())
                .toList();
    }

    /** {@return whether a question is about all that a seal counts: every river, every record} */
    static boolean isAsSealed(Scope scope) {
        Scope all = Scope.everything().of(scope.species());
        return scope.equals(scope.season().map(all::in).orElse(all));
    }

    /** {@return what to tell of a seal whose answer is another today; empty where it is the same} */
    static List<Message> warnings(Answer answer) {
        if (answer.same()) {
            return List.of();
        }
        List<Message> told = new ArrayList<>();
        List<Message> differences = new ArrayList<>(answer.differences());
        answer.byModel().ifPresent(differences::addAll);
        told.add(Message.of("seal.otherNow", answer.season(), answer.species(), answer.on(), differences));
        told.addAll(answer.because());
        return told;
    }

    private static TerritoryMap map(Book book, Species species, int season) {
        SurveyRecords records =
                SurveyReading.of(book, Scope.everything().of(species)).records();
        return TerritoryMap.of(records, species, season, MapSettings.usualFor(species), Water.ALL);
    }

    private static Answer answer(Book book, Seal seal) {
        return answer(book, seal, Optional.empty());
    }

    private static Answer answer(Book book, Seal seal, Optional<List<Figure>> modelNow) {
        TerritoryMap now = map(book, seal.species(), seal.season());
        List<Message> differences = SealDifferences.byRule(seal, SealedFigures.byRule(now));
        Optional<List<Message>> byModel = modelNow.map(figures -> SealDifferences.byModel(seal, figures));
        boolean same = differences.isEmpty() && byModel.map(List::isEmpty).orElse(true);
        boolean otherByModel = byModel.filter(list -> !list.isEmpty()).isPresent();
        List<Message> because = same ? List.of() : SealDifferences.because(book, seal, now.settings(), otherByModel);
        Map<String, String> settings = new LinkedHashMap<>();
        seal.settings().forEach(figure -> settings.put(SealedFigures.name(figure), figure.value()));
        Map<String, String> figures = new LinkedHashMap<>();
        seal.figures().forEach(figure -> figures.put(SealedFigures.name(figure), figure.value()));
        return new Answer(
                Year.of(seal.season()),
                seal.species(),
                seal.by(),
                seal.on(),
                seal.program(),
                same,
                differences,
                byModel,
                because,
                settings,
                figures,
                seal.sentences());
    }
}
