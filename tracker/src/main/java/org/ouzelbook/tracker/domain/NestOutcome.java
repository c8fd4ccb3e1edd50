package org.ouzelbook.tracker.domain;

/** How a nesting attempt ended, as far as a check shows. */
public enum NestOutcome {
    /** At least one young left the nest. */
    SUCCESS,
    /** Every egg or young was lost. */
    FAILURE,
    /** It ended, and nobody knows how: a result, never to be forced. */
    UNKNOWN
}
