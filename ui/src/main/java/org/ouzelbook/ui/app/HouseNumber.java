package org.ouzelbook.ui.app;

import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Numbers that every text writes alike: <code>{2,probability}</code> in a text is its second fact as a probability is written here. A
 * probability is never told as 0 or 100 %, and a change that is none has no sign.
 */
enum HouseNumber {
    /** A probability from 0 to 1, in percent. */
    PROBABILITY("probability", "number.probability", 100),
    /** A change in percent, with one decimal. */
    CHANGE("change", "number.change", 200),
    /** A change in percent, in whole ones. */
    OVERALL("overall", "number.overall", 300),
    /** A change in percent a year, with one decimal. */
    A_YEAR("aYear", "number.aYear", 400),
    /** A limit of a change in percent, without the sign of percent. */
    LIMIT("limit", "number.limit", 500),
    /** The p of a test, from 0 to 1. */
    P("p", "number.p", 600);

    private static final Pattern ASKED = Pattern.compile(
            "\\{(\\d+),(" + Arrays.stream(values()).map(one -> one.name).collect(Collectors.joining("|")) + ")\\}");

    /** Behind all places; each number has a hundred of its own, more than any text has facts. */
    private static final int PLACES = 700;

    private final String name;
    private final String key;
    private final int firstPlace;

    HouseNumber(String name, String key, int firstPlace) {
        this.name = name;
        this.key = key;
        this.firstPlace = firstPlace;
    }

    /** {@return the text with a place of its own for every number that is to be written so} */
    static String places(String text) {
        Matcher asked = ASKED.matcher(text);
        return asked.replaceAll(found -> "{" + place(found.group(2), Integer.parseInt(found.group(1))) + "}");
    }

    /**
     * {@return the facts, and in their places the numbers as they are written}
     *
     * @param text the text as it stands in the file
     * @param facts its facts
     */
    static Object[] written(String text, Object[] facts) {
        Matcher asked = ASKED.matcher(text);
        if (!asked.find()) {
            return facts;
        }
        Object[] all = Arrays.copyOf(facts, PLACES);
        do {
            int fact = Integer.parseInt(asked.group(1));
            if (facts[fact] instanceof Number number) {
                all[place(asked.group(2), fact)] = Texts.of(called(asked.group(2)).key, number);
            } else {
                all[place(asked.group(2), fact)] = facts[fact];
            }
        } while (asked.find());
        return all;
    }

    private static int place(String name, int fact) {
        return called(name).firstPlace + fact;
    }

    private static HouseNumber called(String name) {
        Optional<HouseNumber> called =
                Arrays.stream(values()).filter(one -> one.name.equals(name)).findFirst();
        return called.orElseThrow();
    }
}
