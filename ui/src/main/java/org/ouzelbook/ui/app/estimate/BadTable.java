package org.ouzelbook.ui.app.estimate;

import java.util.List;
import org.ouzelbook.tracker.exchange.Problem;

/** A table that cannot be estimated from before somebody mends it. */
public final class BadTable extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final transient List<Problem> problems;

    BadTable(List<Problem> problems) {
        super(problems.size() + " problems in a table");
        this.problems = List.copyOf(problems);
    }

    /** {@return everything that is wrong with it, in the order of its rows} */
    public List<Problem> problems() {
        return problems;
    }
}
