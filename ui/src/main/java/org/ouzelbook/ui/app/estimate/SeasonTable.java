package org.ouzelbook.ui.app.estimate;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.likelihood.Covariate;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.ui.app.WrongRequest;

/** The columns of a table of seasons that a model of a book asks for. */
public final class SeasonTable {
    private final EstimateSurvival.Model model;
    private final List<SeasonColumn> columns;

    private SeasonTable(EstimateSurvival.Model model, List<SeasonColumn> columns) {
        this.model = model;
        this.columns = columns;
    }

    /**
     * {@return the columns that a model asks for}
     *
     * @param model what is asked
     * @throws BadTable if the table must be mended first
     */
    public static SeasonTable read(EstimateSurvival.Model model) {
        return new SeasonTable(model, SeasonColumn.read(model));
    }

    /**
     * {@return names in the model that are neither known nor columns}
     *
     * @param known names that need no column
     */
    public List<String> unknown(List<String> known) {
        return Stream.concat(model.survivalBy().stream(), model.resightingBy().stream())
                .distinct()
                .filter(name -> !known.contains(name) && column(name).isEmpty())
                .toList();
    }

    /**
     * {@return a column as a covariate with a value for each interval; empty if there is none of the name}
     *
     * @param name the name
     * @param seasons the seasons
     * @param atEnd whether the season at the interval's end is meant
     * @throws WrongRequest if the table has another number of rows
     */
    public Optional<Covariate> of(String name, List<Integer> seasons, boolean atEnd) {
        return column(name).map(column -> {
            int rows = column.values().values().size();
            if (rows != seasons.size() && rows != seasons.size() - 1) {
                throw new WrongRequest(Message.of(
                        "app.survival.seasons",
                        column.file(),
                        rows,
                        seasons.stream().map(String::valueOf).toList()));
            }
            return column.byInterval(seasons.size() - 1, atEnd ? 1 : 0);
        });
    }

    private Optional<SeasonColumn> column(String name) {
        return columns.stream().filter(column -> column.name().equals(name)).findFirst();
    }
}
