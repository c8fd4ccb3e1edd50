package org.ouzelbook.ui.window;

import java.util.List;
import java.util.Optional;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.IntervalFigure.Figure;

/**
 * One finding: what it says in a sentence, its picture, the table behind it, and the records behind each row of the table.
 *
 * @param title what was asked
 * @param brief the answer in a number; blank if there is none
 * @param sentence the answer, or why there is none
 * @param figure the picture; empty where nothing was estimated
 * @param columns the names of the table's columns
 * @param lines the table's lines
 * @param remarks what the numbers are, and what would mislead a reader who did not know it
 */
record FindingSheet(
        String title,
        String brief,
        String sentence,
        Optional<Figure> figure,
        List<String> columns,
        List<Line> lines,
        List<String> remarks) {
    private static final String STOPPED = "window.findings.stopped";

    FindingSheet {
        columns = List.copyOf(columns);
        lines = List.copyOf(lines);
        remarks = List.copyOf(remarks);
    }

    /**
     * A line of the table.
     *
     * @param cells its cells
     * @param rests the records that it rests on
     */
    record Line(List<String> cells, List<Evidence> rests) {
        Line {
            cells = List.copyOf(cells);
            rests = List.copyOf(rests);
        }
    }

    /**
     * {@return a finding that cannot be told}
     *
     * @param title what was asked
     * @param why why not, and what would be needed
     */
    static FindingSheet refused(String title, String why) {
        return new FindingSheet(title, "", why, Optional.empty(), List.of(), List.of(), List.of());
    }

    /**
     * {@return a finding that somebody stopped}
     *
     * @param title what was asked
     */
    static FindingSheet stopped(String title) {
        return refused(title, Texts.of(STOPPED));
    }

    /** {@return whether somebody stopped it, so that it can be begun again} */
    boolean isStopped() {
        return lines.isEmpty() && sentence.equals(Texts.of(STOPPED));
    }
}
