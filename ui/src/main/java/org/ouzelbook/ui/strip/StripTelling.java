package org.ouzelbook.ui.strip;

import java.util.Optional;
import java.util.function.Supplier;

/** A strip in words, put together once. */
final class StripTelling {
    private final String title;
    private final Supplier<String> telling;
    private Optional<String> told = Optional.empty();

    /**
     * @param title the strip in a few words
     * @param telling puts the sentences together
     */
    StripTelling(String title, Supplier<String> telling) {
        this.title = title;
        this.telling = telling;
    }

    String title() {
        return title;
    }

    String description() {
        if (told.isEmpty()) {
            told = Optional.of(telling.get());
        }
        return told.get();
    }
}
