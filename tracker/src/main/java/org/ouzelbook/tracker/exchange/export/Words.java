package org.ouzelbook.tracker.exchange.export;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Species;

/** Values as cells write them, in the words that import reads. */
final class Words {
    private static final double KM_DIGITS = 1000;

    private Words() {}

    static String of(Enum<?> term) {
        return term.name().equals("UNKNOWN")
                ? ""
                : term.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    static Object of(Optional<?> value) {
        return value.isEmpty() ? "" : value.get() instanceof Enum<?> term ? of(term) : value.get();
    }

    static Object of(OptionalInt number) {
        return number.isPresent() ? number.getAsInt() : "";
    }

    static Object of(OptionalDouble number) {
        return number.isPresent() ? number.getAsDouble() : "";
    }

    static String of(boolean fact) {
        return fact ? "yes" : "no";
    }

    static Object km(Chainage chainage) {
        return Math.round(chainage.km() * KM_DIGITS) / KM_DIGITS;
    }

    static Object km(Optional<Chainage> chainage) {
        return chainage.isPresent() ? km(chainage.get()) : "";
    }

    static String species(List<Species> species) {
        return list(species.stream().map(Species::englishName).toList());
    }

    static String list(Collection<String> texts) {
        return texts.stream().collect(Collectors.joining("; "));
    }
}
