package org.ouzelbook.ui.window;

import javafx.scene.Node;

/**
 * A face of the open book that takes the place of the strip, under the same header. {@link BookPane} opens it by its key and
 * leaves it by Escape; a page that needs the book's records reads them when it is opened.
 */
interface Page {
    /** {@return its name, in words} */
    String name();

    /** {@return what is seen, always the same node} */
    Node node();

    /** {@return its keys, told on the page of keys while it is open} */
    Keys keys();

    /** Hears that it is seen now: the time to read what it shows, and to take the keyboard. */
    void open();

    /** Hears that it is no longer seen: what it has not begun to work out can wait. */
    default void leave() {}

    /**
     * Goes one step back within the page.
     *
     * @return whether there was one; otherwise Escape leads to the strip
     */
    default boolean back() {
        return false;
    }
}
