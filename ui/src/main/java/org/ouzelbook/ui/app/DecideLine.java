package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.notebook.Completion;
import org.ouzelbook.tracker.place.PlaceSettings;
import org.ouzelbook.tracker.place.Places;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.DecideTerritories.Made;

/**
 * Takes decisions about the territories of one season as typed lines, in the words of {@code decide}: {@code boundary at 12.55
 * because two males sang across it}. Reading one back tells what the count would become.
 */
public final class DecideLine implements TypedLines {
    private final Book book;
    private final Supplier<SurveyRecords> records;
    private final Species species;
    private final int season;
    private final LocalDate today;
    private final String who;

    /**
     * @param book an open book
     * @param records its records as they are now, read before
     * @param species whose territories
     * @param season the season
     * @param today the day
     * @param who who decides
     */
    public DecideLine(
            Book book, Supplier<SurveyRecords> records, Species species, int season, LocalDate today, String who) {
        this.book = book;
        this.records = records;
        this.species = species;
        this.season = season;
        this.today = today;
        this.who = who;
    }

    @Override
    public List<Completion.Suggestion> complete(String line, int cursor) {
        boolean inReason = line.toLowerCase(Locale.ROOT).contains(" because ") || line.contains(":");
        return inReason ? List.of() : Completion.of(line, cursor, records.get().landmarks(), List.of());
    }

    @Override
    public Answer read(String line) {
        return answer(line, false);
    }

    @Override
    public Answer enter(String line) {
        return answer(line, true);
    }

    private Answer answer(String line, boolean store) {
        SurveyRecords now = records.get();
        List<Made> made;
        try {
            made = made(now, line);
        } catch (WrongRequest e) {
            return Answer.unclear(line, e.message());
        }
        for (Made one : made) {
            Optional<Decision> other = now.decisions(species, season).stream()
                    .filter(one.decision()::contradicts)
                    .findFirst();
            if (other.isPresent()) {
                return Answer.unclear(
                        line,
                        Message.of("book.decisions.contradict", words(now, other.get()), words(now, one.decision())));
            }
        }
        Message words = DecideTerritories.together(
                made.stream().map(one -> words(now, one.decision())).toList());
        Decision first = made.get(0).decision();
        List<Decision> fresh = made.stream()
                .filter(one -> one.stands().isEmpty())
                .map(Made::decision)
                .toList();
        int before = count(now, first);
        int after = fresh.isEmpty() ? before : count(with(now, fresh), first);
        if (store) {
            book.change(Message.of(DecideTerritories.step(made), words), who, edit -> {
                made.forEach(one -> DecideTerritories.put(edit, one.stands(), one.decision()));
                return first;
            });
        }
        String river = now.rivers().river(first.riverId()).name();
        String count = before == after
                ? Texts.of("decide.line.same", river, after)
                : Texts.of("decide.line.count", river, before, after);
        return new Answer(
                line,
                store,
                List.of(Texts.of(words) + first.note().map(note -> ": " + note).orElse(""), count),
                List.of(),
                Optional.empty(),
                List.of(),
                List.of());
    }

    private List<Made> made(SurveyRecords now, String line) {
        Places places = Places.of(now.rivers(), now.landmarks(), PlaceSettings.USUAL);
        return DecideTerritories.made(
                now,
                DecisionLine.readAll(line),
                one -> DecideTerritories.draft(places, Optional.empty(), species, season, one, who, today));
    }

    private static Message words(SurveyRecords now, Decision decision) {
        return DecisionAnswer.of(0, decision, now.rivers()).words();
    }

    private static SurveyRecords with(SurveyRecords now, List<Decision> fresh) {
        List<Decision> decisions = new ArrayList<>(now.decisions());
        decisions.addAll(fresh);
        return new SurveyRecords(
                now.rivers(),
                now.landmarks(),
                now.reaches(),
                now.visits(),
                now.sightings(),
                now.nests(),
                now.nestChecks(),
                now.ringedBirds(),
                now.kickSamples(),
                decisions);
    }

    private int count(SurveyRecords of, Decision decision) {
        return TerritoryMap.counted(of, species, season, MapSettings.usualFor(species), decision.riverId());
    }
}
