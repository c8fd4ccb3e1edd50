package org.ouzelbook.ui.cli;

import java.util.Collections;
import java.util.Enumeration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.ui.app.Texts;

/**
 * The descriptions of commands and options, for picocli, from the one file of texts.
 *
 * <p>{@code cli.map.usage.header} is the one line that tells what {@code map} does, {@code cli.map.usage.description} says
 * more, {@code cli.map.usage.footer} gives examples, {@code cli.map.why} describes its option {@code --why} and {@code
 * cli.map.BOOK} its argument. What several commands share stands once, as {@code cli.option.season}.
 */
final class HelpTexts extends ResourceBundle {
    private static final String PROGRAM = "ouzelbook.";
    private static final String OURS = "cli.";
    private static final String SHARED = "cli.option.";

    private static final List<String> PLACES = List.of("[0]", "[1]", "[0..*]", "[1..*]", "[2..*]");

    /** From picocli's key to ours. */
    private final Map<String, String> keys = new LinkedHashMap<>();

    HelpTexts() {
        for (String key : Texts.keys()) {
            if (key.startsWith(SHARED)) {
                put(key.substring(SHARED.length()), key);
            } else if (key.startsWith(OURS)) {
                put(PROGRAM + key.substring(OURS.length()), key);
            }
        }
    }

    /** Options go by their names; picocli puts its place behind the name of an argument. */
    private void put(String picoclis, String ours) {
        keys.put(picoclis, ours);
        String name = picoclis.substring(picoclis.lastIndexOf('.') + 1);
        if (name.equals(name.toUpperCase(Locale.ROOT))) {
            PLACES.forEach(place -> keys.put(picoclis + place, ours));
        }
    }

    @Override
    protected @Nullable Object handleGetObject(String key) {
        String ours = keys.get(key);
        return ours == null ? null : Texts.of(ours);
    }

    @Override
    public Enumeration<String> getKeys() {
        return Collections.enumeration(keys.keySet());
    }
}
