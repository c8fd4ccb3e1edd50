package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.SeasonDensity;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Seal;
import org.ouzelbook.tracker.store.Book;

/**
 * What a report of a sealed season says of the seal, in public: when it was made, and which counts are others today. Territories are
 * compared, but not told: their ends are exact.
 *
 * @param on when the season was sealed
 * @param sameTerritories whether every territory by rule lies where it lay then, with the same evidence
 * @param differences each count, by rule and as far as the report counts by the model, that is another today
 */
public record SealedSeason(LocalDate on, boolean sameTerritories, List<Message> differences) {
    /** Copies the list. */
    public SealedSeason {
        differences = List.copyOf(differences);
    }

    /**
     * {@return what the seal of a season says; empty if it is not sealed, or the report asks another question than was sealed}
     *
     * @param book an open book
     * @param scope what the report asks
     * @param map the territories of today
     * @param density the densities of today
     */
    static Optional<SealedSeason> of(Book book, Scope scope, TerritoryMap map, SeasonDensity density) {
        boolean asSealed = SealSeason.isAsSealed(scope) && map.settings().equals(MapSettings.usualFor(map.species()));
        if (!asSealed) {
            return Optional.empty();
        }
        Optional<Seal> seal = book.read(view -> view.seal(map.species(), map.season()));
        return seal.map(there -> of(there, SealedFigures.byRule(map), SealedFigures.byModel(density, map.season())));
    }

    private static SealedSeason of(Seal seal, List<Seal.Figure> byRule, List<Seal.Figure> byModel) {
        List<Message> differences = new ArrayList<>(SealDifferences.counts(seal, byRule));
        boolean sameTerritories = SealDifferences.byRule(seal, byRule).size() == differences.size();
        if (!byModel.isEmpty()) {
            differences.addAll(SealDifferences.byModel(seal, byModel));
        }
        return new SealedSeason(seal.on(), sameTerritories, differences);
    }
}
