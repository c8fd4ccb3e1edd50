package org.ouzelbook.stats.simulate.calibration;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.ouzelbook.stats.simulate.mechanism.Mechanism.Kind;

/** The results of the bench as a page of Markdown. */
final class CalibrationPage {
    private final Map<Trial, CountedBook> results;
    private final StringBuilder page = new StringBuilder();

    private CalibrationPage(Map<Trial, CountedBook> results) {
        this.results = results;
    }

    /**
     * {@return the page}
     *
     * @param results every book of the grid that was counted
     * @param command what makes it again
     * @param version of the program
     */
    static String of(Map<Trial, CountedBook> results, String command, String version) {
        CalibrationPage made = new CalibrationPage(results);
        made.head(command, version);
        made.table("All", "books of ten seasons and more", Trial::isLarge, trial -> "all");
        made.table(
                "By mechanism",
                "mechanism",
                Trial::isLarge,
                trial -> word(trial.plan().kind()));
        made.table(
                "By visits",
                "visits",
                Trial::isLarge,
                trial -> number(trial.plan().field().visits()));
        made.table(
                "By length",
                "median metres",
                Trial::isLarge,
                trial -> number(trial.plan().medianMetres()));
        made.table(
                "By mechanism and visits",
                "mechanism, visits",
                Trial::isLarge,
                trial -> word(trial.plan().kind()) + ", "
                        + number(trial.plan().field().visits()));
        made.table(
                "By the river’s ends and marks",
                "river",
                Trial::isLarge,
                trial -> (trial.plan().field().piece() ? "piece of a longer one" : "mouth to source")
                        + (trial.plan().field().together() > 0 ? ", seen at once and turning back noted" : ""));
        made.table(
                "A river and a tributary",
                "waters",
                trial -> trial.water() != Trial.Waters.RIVER,
                trial -> (trial.water() == Trial.Waters.FORKED ? "joined at the confluence, " : "each by itself, ")
                        + word(trial.plan().kind()));
        made.table(
                "Small books",
                "seasons, visits",
                trial -> trial.water() == Trial.Waters.RIVER && !trial.isLarge(),
                trial -> number(trial.plan().seasons()) + ", "
                        + number(trial.plan().field().visits()));
        return made.page.toString();
    }

    private void head(String command, String version) {
        int seasons = results.values().stream()
                .mapToInt(book -> book.seasons().size())
                .sum();
        line("# Calibration of the count of territories");
        line("");
        line("Counts of territories on invented rivers, held against the truth. Made by Ouzelbook " + version
                + " with");
        line("");
        line("```");
        line(command);
        line("```");
        line("");
        long books = results.keySet().stream()
                .filter(trial -> trial.water() != Trial.Waters.APART)
                .count();
        line(books + " books, counted " + results.size() + " times, with " + seasons
                + " counts of a season on 12 km of river. Every book is made by one of five mechanisms with");
        line(
                "its habits (chances of being found, repeats, strays, gaps) drawn anew; only the first is the model’s own:");
        line("");
        line("| mechanism | how pairs live and are found |");
        line("|---|---|");
        line(
                "| modelled | log-normal lengths; grounds abut or leave geometric vacancies; beta chances; zero-truncated Poisson repeats; uniform and focal places |");
        line(
                "| nest centred | gamma lengths, random gaps; nest near the middle; chances by pair, day and date; geometric repeats |");
        line(
                "| overlapping | home ranges that overlap neighbours by up to 20 %, normal or triangular use, chases across; habits of repeats by pair |");
        line("| clustered | good water without gaps, then long empty water; shy pairs, poor days |");
        line("| sparse | a pair here and there; shy pairs, poor days |");
        line("");
        line(
                "A fifth of the visits cover only a part of the river. Bias: all errors together, as a share of the truth (± its standard");
        line(
                "error between books). Holds: share of the 90 % intervals that hold the truth. Error: root of the mean squared error, in");
        line(
                "territories. Targets over books of ten seasons and more at 3 to 8 visits: bias within ±5 %, 85 to 95 % held, error at most");
        line(
                "half of the rule’s. The rule is the count by the [mapping rules](methods/territory-map.md) with their usual settings.");
        line("");
        line(
                "Books of a river and a tributary, a third of the water each above and below the confluence and beside it: two of the three arms,");
        line(
                "others each season, are one line to the birds, and the third has grounds of its own. Such a book is counted twice: with the waters");
        line("joined at the confluence, and each water by itself, as if they did not meet.");
        line("");
    }

    private void table(String title, String what, Predicate<Trial> of, Function<Trial, String> group) {
        Map<String, List<CountedBook>> groups = new TreeMap<>(Comparator.comparing(CalibrationPage::sortable));
        results.forEach((trial, book) -> {
            if (of.test(trial)) {
                groups.merge(group.apply(trial), List.of(book), CalibrationPage::joined);
            }
        });
        line("## " + title);
        line("");
        line(
                "| " + what
                        + " | books | truth | bias | holds | width | error | rule’s bias | rule’s error | error over rule’s | seconds a book |");
        line("|---|---|---|---|---|---|---|---|---|---|---|");
        groups.forEach((name, books) -> row(name, new Score(books)));
        line("");
    }

    private static List<CountedBook> joined(List<CountedBook> some, List<CountedBook> more) {
        return Stream.concat(some.stream(), more.stream()).toList();
    }

    private void row(String name, Score score) {
        boolean modelled = score.isModelled();
        String bias = percent(score.modelBias())
                + score.biasError().stream()
                        .mapToObj(error -> String.format(Locale.ROOT, " ± %.1f", 100 * error))
                        .findFirst()
                        .orElse("");
        line(String.join(
                " | ",
                "| " + name,
                String.valueOf(score.books().size()),
                String.format(Locale.ROOT, "%.1f", score.meanTruth()),
                modelled ? bias : "–",
                modelled ? String.format(Locale.ROOT, "%.0f %%", 100 * score.coverage()) : "–",
                modelled ? String.format(Locale.ROOT, "%.1f", score.width()) : "–",
                modelled ? String.format(Locale.ROOT, "%.2f", score.modelError()) : "–",
                percent(score.ruleBias()),
                String.format(Locale.ROOT, "%.2f", score.ruleError()),
                modelled ? String.format(Locale.ROOT, "%.2f", score.modelError() / score.ruleError()) : "–",
                String.format(Locale.ROOT, "%.2f", score.seconds()) + " |"));
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%+.1f %%", 100 * share).replace('-', '−');
    }

    private static String word(Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static String number(double number) {
        return String.format(Locale.ROOT, "%.0f", number);
    }

    /** Numbers sort by their size. */
    private static String sortable(String name) {
        StringBuilder padded = new StringBuilder();
        Matcher numbers = Pattern.compile("[0-9]+").matcher(name);
        while (numbers.find()) {
            numbers.appendReplacement(
                    padded, "0".repeat(Math.max(0, 6 - numbers.group().length())) + numbers.group());
        }
        return numbers.appendTail(padded).toString();
    }

    private void line(String text) {
        page.append(text).append('\n');
    }
}
