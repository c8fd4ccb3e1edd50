package org.ouzelbook.tracker.domain;

/** What a surveyor decided about a piece of water. */
public enum DecisionKind {
    /** A boundary between two territories stands at this point. */
    BOUNDARY,

    /** What was found in this stretch belongs to one territory. */
    TOGETHER,

    /** No territory lies in this stretch or reaches into it, whatever was found there. */
    NO_TERRITORY,

    /** Something to remember; it changes no answer. */
    NOTE
}
