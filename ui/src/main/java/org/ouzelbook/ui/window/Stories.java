package org.ouzelbook.ui.window;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.ouzelbook.stats.survey.ModelledCounts;
import org.ouzelbook.stats.survey.RiverStory;

/**
 * The story of each year, worked out beside the window's own thread when it is first asked for: by rule at once, and anew when the
 * model has counted. Until the new one is there the one before it is told.
 */
final class Stories {
    private final Work work;
    private final Runnable news;
    private final Map<Integer, RiverStory> told = new HashMap<>();
    private final Set<Integer> asked = new HashSet<>();
    private Optional<BookContents> of = Optional.empty();
    private ModelledCounts counts = ModelledCounts.NONE;
    private int time;

    /**
     * @param work does the working out
     * @param news hears, on the window's thread, when a story is there that was not
     */
    Stories(Work work, Runnable news) {
        this.work = work;
        this.news = news;
    }

    /**
     * Tells of other contents, or of other counts, from now on.
     *
     * @param contents what the book holds
     * @param modelled what the model counts; {@link ModelledCounts#NONE} while it does not
     */
    void about(BookContents contents, ModelledCounts modelled) {
        boolean sameSpecies =
                of.map(before -> before.species().equals(contents.species())).orElse(false);
        if (!sameSpecies) {
            told.clear();
        }
        told.keySet().retainAll(contents.maps().keySet());
        asked.clear();
        of = Optional.of(contents);
        counts = modelled;
        time++;
    }

    /**
     * {@return the story of a year; empty until it is worked out, which this begins}
     *
     * @param season the year
     */
    Optional<RiverStory> of(int season) {
        of.filter(contents -> contents.maps().containsKey(season))
                .filter(contents -> contents.behind().headSet(season, true).isEmpty())
                .filter(contents -> asked.add(season))
                .ifPresent(contents -> workOut(season, contents));
        return Optional.ofNullable(told.get(season));
    }

    private void workOut(int season, BookContents contents) {
        int now = time;
        ModelledCounts modelled = counts;
        work.start(
                "",
                progress -> contents.story(season, modelled),
                story -> {
                    if (now == time) {
                        told.put(season, story);
                        news.run();
                    }
                },
                failure -> {
                    if (now == time) {
                        asked.remove(season);
                    }
                });
    }
}
