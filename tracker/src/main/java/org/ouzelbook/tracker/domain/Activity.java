package org.ouzelbook.tracker.domain;

/** What a bird was doing, in the terms of the field. */
public enum Activity {
    /** Singing; says nothing of the sex. */
    SINGING,
    /** Calling. */
    CALLING,
    /** Repeated alarm. */
    ALARM,
    /** Courtship or display. */
    DISPLAY,
    /** Chasing or fighting another bird of its kind. */
    AGGRESSION,
    /** Feeding itself. */
    FEEDING,
    /** Bathing or preening. */
    BATHING,
    /** Resting. */
    RESTING,
    /** Flying upstream. */
    FLYING_UP,
    /** Flying downstream. */
    FLYING_DOWN,
    /** Carrying nest material. */
    CARRYING_MATERIAL,
    /** Building. */
    BUILDING,
    /** Visiting a likely nest site. */
    AT_NEST_SITE,
    /** Carrying food for young. */
    CARRYING_FOOD,
    /** Carrying a faecal sac. */
    CARRYING_FAECAL_SAC,
    /** Feeding young. */
    FEEDING_YOUNG,
    /** Brooding or incubating. */
    INCUBATING,
    /** Young out of the nest that depend on their parents. */
    DEPENDENT_YOUNG,
    /** Roosting. */
    ROOSTING,
    /** Found dead. */
    DEAD
}
