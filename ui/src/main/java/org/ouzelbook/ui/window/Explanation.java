package org.ouzelbook.ui.window;

import java.util.List;

/**
 * What the right side tells of the thing selected, in sentences.
 *
 * @param title what it is
 * @param subtitle where or when; may be blank
 * @param sections what there is to say
 */
record Explanation(String title, String subtitle, List<Section> sections) {
    Explanation {
        sections = List.copyOf(sections);
    }

    /**
     * Sentences that belong together.
     *
     * @param heading their heading; blank if they need none
     * @param sentences the sentences
     */
    record Section(String heading, List<String> sentences) {
        Section {
            sentences = List.copyOf(sentences);
        }
    }
}
