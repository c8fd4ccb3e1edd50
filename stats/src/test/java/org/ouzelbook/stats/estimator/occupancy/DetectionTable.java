package org.ouzelbook.stats.estimator.occupancy;

import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.stats.estimator.TestTable;
import org.ouzelbook.stats.estimator.likelihood.Covariate;

/** Visits of a table with a row for each site and a column for each visit. */
final class DetectionTable {
    private final TestTable table;
    private final int seasons;
    private final List<List<String>> columns;

    private DetectionTable(TestTable table, int seasons, List<List<String>> columns) {
        this.table = table;
        this.seasons = seasons;
        this.columns = columns;
    }

    static DetectionTable of(String file, List<List<String>> columnsBySeason) {
        return new DetectionTable(
                TestTable.beside(DetectionTable.class, file), columnsBySeason.size(), columnsBySeason);
    }

    SiteVisits visits() {
        List<SiteVisit> visits = new ArrayList<>();
        forEachVisit((site, season, occasion, result) -> visits.add(new SiteVisit(site, season, occasion, result)));
        return new SiteVisits(table.rows().size(), seasons, visits);
    }

    Covariate ofSites(String column) {
        return Covariate.numbers(column, table.numbers(column));
    }

    Covariate ofChanges(String column) {
        double[] bySite = table.numbers(column);
        double[] values = new double[bySite.length * (seasons - 1)];
        for (int row = 0; row < values.length; row++) {
            values[row] = bySite[row / (seasons - 1)];
        }
        return Covariate.numbers(column, values);
    }

    Covariate seasonOfChanges() {
        List<String> levels = new ArrayList<>();
        for (int row = 0; row < table.rows().size() * (seasons - 1); row++) {
            levels.add(Integer.toString(row % (seasons - 1) + 1));
        }
        return Covariate.levels("season", levels);
    }

    Covariate seasonOfVisits() {
        List<String> levels = new ArrayList<>();
        forEachVisit((site, season, occasion, result) -> levels.add(Integer.toString(season + 1)));
        return Covariate.levels("season", levels);
    }

    Covariate occasionOfVisits() {
        List<String> levels = new ArrayList<>();
        forEachVisit((site, season, occasion, result) -> levels.add(Integer.toString(occasion + 1)));
        return Covariate.levels("visit", levels);
    }

    Covariate ofVisits(String prefix) {
        List<String> values = new ArrayList<>();
        forEachVisit((site, season, occasion, result) ->
                values.add(table.column(prefix + "." + (occasion + 1)).get(site)));
        return new Covariate(prefix, values, true);
    }

    private void forEachVisit(Action action) {
        for (int site = 0; site < table.rows().size(); site++) {
            for (int season = 0; season < seasons; season++) {
                for (int occasion = 0; occasion < columns.get(season).size(); occasion++) {
                    String cell =
                            table.column(columns.get(season).get(occasion)).get(site);
                    if (!cell.isEmpty()) {
                        action.on(site, season, occasion, cell.equals("1"));
                    }
                }
            }
        }
    }

    private interface Action {
        void on(int site, int season, int occasion, boolean detected);
    }
}
