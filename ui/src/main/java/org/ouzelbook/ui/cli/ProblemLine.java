package org.ouzelbook.ui.cli;

import org.ouzelbook.tracker.exchange.Problem;
import org.ouzelbook.ui.app.Texts;

/** A problem on one line: file:row:column, what the cell holds, what is wrong and what to do. */
final class ProblemLine {
    private static final int LONGEST_CELL = 40;

    private ProblemLine() {}

    static String of(Problem problem) {
        StringBuilder line = new StringBuilder(problem.file()).append(':');
        if (problem.row() > 0) {
            line.append(problem.row()).append(':');
        }
        if (!problem.column().isEmpty()) {
            line.append(problem.column().strip()).append(':');
        }
        line.append(' ');
        if (!problem.cell().isEmpty()) {
            line.append('“').append(shortened(problem.cell())).append("”: ");
        }
        return line.append(Texts.of(problem.message())).toString();
    }

    /** {@return a cell on one line, cut if it is very long} */
    static String shortened(String cell) {
        String oneLine = cell.replaceAll("\\s+", " ").strip();
        return oneLine.length() <= LONGEST_CELL ? oneLine : oneLine.substring(0, LONGEST_CELL) + "…";
    }
}
