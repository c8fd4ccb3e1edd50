package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.time.Year;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.Entry;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Seal;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.ChangedRecord;

/** How today's answer about a sealed season differs from the sealed one, and why. */
final class SealDifferences {
    /** Beyond so many changes they are not looked through one by one. */
    private static final int MOST = 50_000;

    private SealDifferences() {}

    /** {@return each sealed figure by rule that is another now, or is there no more, and each new one} */
    static List<Message> byRule(Seal seal, List<Seal.Figure> now) {
        return of(
                seal.figures().stream()
                        .filter(figure -> !SealedFigures.isByModel(figure))
                        .toList(),
                now);
    }

    /** {@return the same of the counts alone, without the single territories} */
    static List<Message> counts(Seal seal, List<Seal.Figure> now) {
        return of(
                seal.figures().stream()
                        .filter(figure -> !SealedFigures.isByModel(figure) && !SealedFigures.isOfTerritory(figure))
                        .toList(),
                now.stream()
                        .filter(figure -> !SealedFigures.isOfTerritory(figure))
                        .toList());
    }

    /** {@return the same of the figures by the model} */
    static List<Message> byModel(Seal seal, List<Seal.Figure> now) {
        return of(seal.figures().stream().filter(SealedFigures::isByModel).toList(), now);
    }

    private static List<Message> of(List<Seal.Figure> then, List<Seal.Figure> now) {
        Map<String, Seal.Figure> left = new LinkedHashMap<>();
        now.forEach(figure -> left.put(figure.name(), figure));
        List<Message> differences = new ArrayList<>();
        for (Seal.Figure sealed : then) {
            Seal.Figure today = left.remove(sealed.name());
            if (today == null) {
                differences.add(Message.of("seal.difference.gone", SealedFigures.name(sealed), sealed.value()));
            } else if (!today.value().equals(sealed.value())) {
                differences.add(
                        Message.of("seal.difference.other", SealedFigures.name(sealed), sealed.value(), today.value()));
            }
        }
        left.values()
                .forEach(figure ->
                        differences.add(Message.of("seal.difference.new", SealedFigures.name(figure), figure.value())));
        return differences;
    }

    /**
     * {@return why the answer is another: records, settings, program; one sentence that says so where none of them is}
     *
     * @param book an open book
     * @param seal the seal
     * @param settings the settings of today
     * @param byModel whether the model's count is another, which learns from all seasons
     */
    static List<Message> because(Book book, Seal seal, MapSettings settings, boolean byModel) {
        List<Message> because = new ArrayList<>(records(book, seal, byModel));
        for (Seal.Figure now : SealedFigures.settings(settings)) {
            Optional<String> then = seal.settings().stream()
                    .filter(figure -> figure.name().equals(now.name()))
                    .map(Seal.Figure::value)
                    .findFirst();
            if (!then.equals(Optional.of(now.value()))) {
                because.add(Message.of("seal.because.setting", SealedFigures.name(now), then.orElse(""), now.value()));
            }
        }
        if (!seal.program().equals(ProgramVersion.words())) {
            because.add(Message.of("seal.because.program", seal.program(), ProgramVersion.words()));
        }
        return because.isEmpty() ? List.of(Message.of("seal.because.unknown")) : because;
    }

    private static List<Message> records(Book book, Seal seal, boolean byModel) {
        Optional<List<ChangedRecord>> changed = book.read(view -> view.changesAfter(seal.step(), MOST));
        if (changed.isEmpty()) {
            return List.of(Message.of("seal.because.manyRecords"));
        }
        int added = 0;
        int corrected = 0;
        int removed = 0;
        List<Object> named = new ArrayList<>();
        for (ChangedRecord one : changed.get()) {
            if (!concerns(one, seal)) {
                continue;
            }
            added += one.before().isEmpty() ? 1 : 0;
            removed += one.now().isEmpty() ? 1 : 0;
            corrected += one.before().isPresent() && one.now().isPresent() ? 1 : 0;
            if (named.size() < 5) {
                named.add(book.read(view -> EntryNames.of(one.either())));
            }
        }
        int all = added + corrected + removed;
        List<Message> told = new ArrayList<>();
        if (all > 0) {
            told.add(Message.of("seal.because.records", added, corrected, removed, named, all > named.size() ? 1 : 0));
        }
        long others = changed.get().stream()
                .filter(one -> isOfAnotherSeason(one, seal))
                .count();
        if (byModel && others > 0) {
            told.add(Message.of("seal.because.otherSeasons", others));
        }
        return told;
    }

    private static boolean isOfAnotherSeason(ChangedRecord changed, Seal seal) {
        Entry entry = changed.either();
        boolean sighting = entry instanceof Sighting one && one.species().equals(seal.species());
        return (sighting || entry instanceof Visit || entry instanceof NestCheck || entry instanceof Decision)
                && !concerns(changed, seal);
    }

    private static boolean concerns(ChangedRecord changed, Seal seal) {
        return changed.before().filter(entry -> concerns(entry, seal)).isPresent()
                || changed.now().filter(entry -> concerns(entry, seal)).isPresent();
    }

    private static boolean concerns(Entry entry, Seal seal) {
        if (entry instanceof Sighting sighting) {
            return isIn(sighting.date(), seal) && sighting.species().equals(seal.species());
        }
        if (entry instanceof Visit visit) {
            return isIn(visit.date(), seal);
        }
        if (entry instanceof Decision decision) {
            return decision.season() == seal.season() && decision.species().equals(seal.species());
        }
        if (entry instanceof NestCheck check) {
            return isIn(check.date(), seal);
        }
        return entry instanceof RiverLine || entry instanceof RingedBird;
    }

    private static boolean isIn(LocalDate day, Seal seal) {
        return Year.from(day).getValue() == seal.season();
    }
}
