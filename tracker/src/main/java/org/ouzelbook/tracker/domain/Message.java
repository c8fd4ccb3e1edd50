package org.ouzelbook.tracker.domain;

import java.util.List;

/**
 * Something to tell a person, without the words: a key into the one file of texts, and the facts that fill it. Whoever
 * shows it finds the words, so they can be translated.
 *
 * @param key key of the text, such as {@code import.date.notOnCalendar}
 * @param facts strings, numbers, dates, {@link Chainage}, {@link Stretch}, enum constants or lists of them, in the order in
 *     which the text numbers them
 */
public record Message(String key, List<Object> facts) {
    /** Copies the facts. */
    public Message {
        facts = List.copyOf(facts);
    }

    /**
     * {@return the message with these facts}
     *
     * @param key key of the text
     * @param facts what fills it
     */
    public static Message of(String key, Object... facts) {
        return new Message(key, List.of(facts));
    }
}
