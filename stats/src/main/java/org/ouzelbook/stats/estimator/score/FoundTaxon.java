package org.ouzelbook.stats.estimator.score;

import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Pattern;

/**
 * One line of a sample's sheet.
 *
 * @param name family or other group, as written
 * @param count how many; empty if only the class was written down
 * @param abundance the class
 */
public record FoundTaxon(String name, OptionalLong count, AbundanceClass abundance) {
    private static final Pattern COUNT = Pattern.compile("[0-9]{1,15}");

    /**
     * {@return the line; empty if its abundance is none, or 0: the taxon was not found}
     *
     * @param name family or other group, as written
     * @param abundance a count, or a class A to D, as written
     */
    public static Optional<FoundTaxon> of(String name, String abundance) {
        String text = abundance.strip();
        if (!COUNT.matcher(text).matches()) {
            return AbundanceClass.named(text).map(one -> new FoundTaxon(name, OptionalLong.empty(), one));
        }
        long count = Long.parseLong(text);
        return count == 0
                ? Optional.empty()
                : Optional.of(new FoundTaxon(name, OptionalLong.of(count), AbundanceClass.of(count)));
    }
}
