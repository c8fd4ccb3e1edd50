package org.ouzelbook.ui.app;

import org.ouzelbook.stats.survey.RiverStory;

/** The year's story in sentences, the same in the window and in the report. */
public final class StoryWords {
    private StoryWords() {}

    /**
     * {@return the sentence of a finding}
     *
     * @param finding a finding
     */
    public static String sentence(RiverStory.Finding finding) {
        return TrendWords.sentence(Texts.of(finding.sentence()));
    }

    /**
     * {@return the sentence of a finding, before it what it rests on, after it the strongest thing against it}
     *
     * @param finding a finding
     */
    public static String whole(RiverStory.Finding finding) {
        String told = Texts.of("story.told", finding.basis(), sentence(finding));
        return finding.caveat().map(caveat -> told + " " + caveat(finding)).orElse(told);
    }

    /**
     * {@return the strongest thing against a finding; blank if there is none}
     *
     * @param finding a finding
     */
    public static String caveat(RiverStory.Finding finding) {
        return finding.caveat()
                .map(caveat -> Texts.of("story.but", TrendWords.sentence(Texts.of(caveat))))
                .orElse("");
    }
}
