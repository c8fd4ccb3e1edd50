package org.ouzelbook.tracker.domain;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * What was answered about one season when it was reported, and by what: kept as it was said then, whatever the book says later.
 *
 * @param id its key
 * @param species whose territories
 * @param season the year of the season; one seal for a species and season
 * @param program the version of the program that answered
 * @param step the last step of the book's history that the answer knew
 * @param settings every threshold of the rules, by name
 * @param figures the answer, figure by figure
 * @param sentences the answer as it was told, sentence by sentence
 * @param by who sealed it
 * @param on the date when it was sealed
 */
public record Seal(
        UUID id,
        Species species,
        int season,
        String program,
        long step,
        List<Figure> settings,
        List<Figure> figures,
        List<String> sentences,
        String by,
        LocalDate on)
        implements Entry {
    /**
     * Copies the lists and checks that something is sealed.
     *
     * @throws IllegalArgumentException if there is no figure, or the program or the step is missing
     */
    public Seal {
        settings = List.copyOf(settings);
        figures = List.copyOf(figures);
        sentences = List.copyOf(sentences);
        if (figures.isEmpty() || program.isBlank() || step < 0) {
            throw new IllegalArgumentException("A seal needs figures, the program’s version and a step of the history");
        }
    }

    /**
     * A named figure, as it was written.
     *
     * @param name what it is of, the same in every seal; not blank
     * @param value the figure
     */
    public record Figure(String name, String value) {
        /**
         * Checks the name.
         *
         * @throws IllegalArgumentException if the name is blank
         */
        public Figure {
            if (name.isBlank()) {
                throw new IllegalArgumentException("A figure needs a name");
            }
        }
    }

    /**
     * {@return the figure with this name}
     *
     * @param name a name
     */
    public Optional<String> figure(String name) {
        return figures.stream()
                .filter(figure -> figure.name().equals(name))
                .map(Figure::value)
                .findFirst();
    }
}
