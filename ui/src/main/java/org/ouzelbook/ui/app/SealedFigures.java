package org.ouzelbook.ui.app;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.SeasonDensity;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Seal;
import org.ouzelbook.tracker.domain.Seal.Figure;

/**
 * The figures of a season's answer as a seal keeps them: a river, what the figure is of, and its value as it is written. What a
 * figure is of is a constant word, so that seals of different years can be compared.
 */
final class SealedFigures {
    private static final String APART = " / ";

    private SealedFigures() {}

    /** {@return the figures by rule: for each river the count, its range, the water, and every territory that counts} */
    static List<Figure> byRule(TerritoryMap map) {
        List<Figure> figures = new ArrayList<>();
        for (TerritoryMap.RiverMap river : map.rivers()) {
            String name = river.river().name();
            figures.add(figure(name, "count", river.count().likely()));
            figures.add(figure(name, "min", river.count().min()));
            figures.add(figure(name, "max", river.count().max()));
            figures.add(figure(name, "edge", river.count().edge()));
            figures.add(figure(name, "visits", river.effectiveVisits()));
            figures.add(new Figure(name + APART + "surveyedKm", decimal(river.surveyedKm(), 2)));
            List<Territory> counted = river.territories().stream()
                    .filter(territory -> territory.standing() == Territory.Standing.COUNTED)
                    .toList();
            for (int i = 0; i < counted.size(); i++) {
                figures.add(new Figure(name + APART + "territory" + APART + (i + 1), words(counted.get(i))));
            }
        }
        return figures;
    }

    private static String words(Territory territory) {
        Optional<BreedingCode> code = territory.evidence().map(Territory.Evidence::code);
        return Texts.word(territory.stretch())
                + code.flatMap(BreedingCode::evidenceClass)
                        .map(evidence -> ", " + Texts.word(evidence))
                        .orElse("");
    }

    /** {@return the figures by the model: for each river the expected number and its limits} */
    static List<Figure> byModel(MapAnswer answer) {
        List<Figure> figures = new ArrayList<>();
        for (MapAnswer.OnRiver river : answer.rivers()) {
            model(figures, river.river(), "model", river.byModel().estimate());
            model(figures, river.river(), "modelLower", river.byModel().lower());
            model(figures, river.river(), "modelUpper", river.byModel().upper());
        }
        return figures;
    }

    /**
     * {@return the same from the densities of all rivers}
     *
     * @param answer the densities by the model
     * @param season the season
     */
    static List<Figure> byModel(DensityAnswer answer, int season) {
        List<Figure> figures = new ArrayList<>();
        answer.rows().stream()
                .filter(row -> row.season() == season && row.reach().isEmpty())
                .forEach(row -> row.byModel().ifPresent(model -> {
                    double km = row.surveyedKm();
                    model(figures, row.river(), "model", OptionalDouble.of(model.territories()));
                    model(figures, row.river(), "modelLower", OptionalDouble.of(model.lower() * km));
                    model(figures, row.river(), "modelUpper", OptionalDouble.of(model.upper() * km));
                }));
        return figures;
    }

    /**
     * {@return the same from the densities of a report}
     *
     * @param density the densities; those by rule alone have no such figures
     * @param season the season
     */
    static List<Figure> byModel(SeasonDensity density, int season) {
        List<Figure> figures = new ArrayList<>();
        density.rows().stream()
                .filter(row -> row.season() == season && row.reach().isEmpty())
                .forEach(row -> row.model().ifPresent(model -> {
                    String river = row.river().name();
                    model(figures, river, "model", OptionalDouble.of(model.expected()));
                    model(figures, river, "modelLower", OptionalDouble.of(model.lower()));
                    model(figures, river, "modelUpper", OptionalDouble.of(model.upper()));
                }));
        return figures;
    }

    /** {@return whether a figure is a single territory} */
    static boolean isOfTerritory(Figure figure) {
        return figure.name().contains(APART + "territory" + APART);
    }

    /** {@return whether a figure is by the model} */
    static boolean isByModel(Figure figure) {
        return figure.name().contains(APART + "model");
    }

    private static void model(List<Figure> figures, String river, String what, OptionalDouble value) {
        value.ifPresent(number -> figures.add(new Figure(river + APART + what, decimal(number, 1))));
    }

    private static Figure figure(String river, String what, long value) {
        return new Figure(river + APART + what, Long.toString(value));
    }

    private static String decimal(double number, int places) {
        return String.format(Locale.ROOT, "%." + places + "f", number);
    }

    /** {@return every threshold of the rules by its name} */
    static List<Figure> settings(MapSettings settings) {
        List<Figure> figures = new ArrayList<>();
        for (RecordComponent component : MapSettings.class.getRecordComponents()) {
            try {
                Object value = component.getAccessor().invoke(settings);
                Object plain = value instanceof Optional<?> optional
                        ? optional.map(Object::toString).orElse("")
                        : value;
                figures.add(new Figure(component.getName(), String.valueOf(plain)));
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException("A setting cannot be read: " + component.getName(), e);
            }
        }
        return figures;
    }

    /** {@return the name of a figure in words: its river, and what it is of} */
    static String name(Seal.Figure figure) {
        String[] parts = figure.name().split(APART, 3);
        return parts.length < 2
                ? Texts.of("seal.setting." + figure.name())
                : parts[0] + ", "
                        + (parts.length == 3
                                ? Texts.of("seal.figure.territory", parts[2])
                                : Texts.of("seal.figure." + parts[1]));
    }
}
