package org.ouzelbook.ui.window;

import java.util.List;
import java.util.Optional;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.ouzelbook.tracker.notebook.Completion.Suggestion;

/** What the word that is being typed may be meant to become, and which of it the arrow keys point to. */
final class Suggestions {
    private final ReadOnlyObjectWrapper<List<Suggestion>> list = new ReadOnlyObjectWrapper<>(List.of());
    private final ReadOnlyIntegerWrapper pointed = new ReadOnlyIntegerWrapper(-1);

    /** {@return the suggestions, the likeliest first} */
    ReadOnlyObjectProperty<List<Suggestion>> list() {
        return list.getReadOnlyProperty();
    }

    /** {@return the index of the one that the arrow keys point to; −1 while they point to none} */
    ReadOnlyIntegerProperty pointed() {
        return pointed.getReadOnlyProperty();
    }

    /** Replaces the suggestions; none is pointed to. */
    void set(List<Suggestion> suggestions) {
        pointed.set(-1);
        list.set(List.copyOf(suggestions));
    }

    /**
     * Points to the next one.
     *
     * @param step 1 for the one below, −1 for the one above
     */
    void point(int step) {
        int count = list.get().size();
        if (count > 0) {
            pointed.set(pointed.get() < 0 ? (step > 0 ? 0 : count - 1) : Math.floorMod(pointed.get() + step, count));
        }
    }

    /**
     * Points to one.
     *
     * @param index its index
     */
    void pointTo(int index) {
        if (index >= 0 && index < list.get().size()) {
            pointed.set(index);
        }
    }

    /** {@return the one that is pointed to, or else the first; empty where there is none} */
    Optional<Suggestion> chosen() {
        return list.get().isEmpty() ? Optional.empty() : Optional.of(list.get().get(Math.max(0, pointed.get())));
    }

    /** {@return whether one is pointed to} */
    boolean isPointed() {
        return pointed.get() >= 0;
    }
}
