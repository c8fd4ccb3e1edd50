package org.ouzelbook.ui.strip;

import java.util.function.Supplier;

/** A place on a drawing that answers to a click, a key or a question. Its name is put together only when somebody asks. */
public final class HitArea {
    private final Rect area;
    private final Subject subject;
    private final Supplier<String> name;

    /**
     * Makes a place that answers.
     *
     * @param area where it lies
     * @param subject what it stands for
     * @param name what it is called aloud
     */
    HitArea(Rect area, Subject subject, Supplier<String> name) {
        this.area = area;
        this.subject = subject;
        this.name = name;
    }

    /** {@return where it lies} */
    public Rect area() {
        return area;
    }

    /** {@return what it stands for} */
    public Subject subject() {
        return subject;
    }

    /** {@return what it is called aloud} */
    public String name() {
        return name.get();
    }

    /** Two are alike that lie at one place and stand for one thing. */
    @Override
    public boolean equals(Object other) {
        return other instanceof HitArea that && area.equals(that.area) && subject.equals(that.subject);
    }

    @Override
    public int hashCode() {
        return 31 * area.hashCode() + subject.hashCode();
    }

    @Override
    public String toString() {
        return subject + " at " + area;
    }
}
