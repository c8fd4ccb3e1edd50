package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.ui.app.Scope;
import org.ouzelbook.ui.app.WrongRequest;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What every question to a book can say: which book, which part of it, and in which form the answer is wanted. */
final class AnalysisOptions {
    @Parameters(paramLabel = "BOOK")
    private @Nullable Path book;

    @Option(names = "--species", paramLabel = "NAME", defaultValue = "dipper", converter = SpeciesNamed.class)
    private Species species = Species.DIPPER;

    @Option(names = "--season", paramLabel = "YEAR")
    private @Nullable Integer season;

    @Option(names = "--from", paramLabel = "DATE", converter = Day.class)
    private @Nullable LocalDate from;

    @Option(names = "--to", paramLabel = "DATE", converter = Day.class)
    private @Nullable LocalDate to;

    @Option(names = "--river", paramLabel = "NAME")
    private @Nullable String river;

    @Option(names = "--reach", paramLabel = "NAME")
    private @Nullable String reach;

    @Option(names = "--level", paramLabel = "SHARE", defaultValue = "0.95", converter = Level.class)
    private double level;

    @Option(names = "--json")
    private boolean json;

    /** {@return the file of the book} */
    Path book() {
        if (book == null) {
            throw new IllegalStateException("picocli asks for BOOK before a command runs");
        }
        return book;
    }

    /**
     * {@return the part of the book that is meant}
     *
     * @throws WrongRequest if a season and days are given together, or the days are in the wrong order
     */
    Scope scope() {
        if (season != null && (from != null || to != null)) {
            throw new WrongRequest(Message.of("cli.scope.seasonAndDays"));
        }
        if (from != null && to != null && from.isAfter(to)) {
            throw new WrongRequest(Message.of("cli.scope.backwards", from, to));
        }
        return new Scope(
                species,
                Optional.ofNullable(season),
                Optional.ofNullable(from),
                Optional.ofNullable(to),
                Optional.ofNullable(river),
                Optional.ofNullable(reach),
                level);
    }

    /** {@return whether the answer is wanted as JSON} */
    boolean json() {
        return json;
    }

    /** A species by English name, scientific name or code. */
    static final class SpeciesNamed implements ITypeConverter<Species> {
        @Override
        public Species convert(String name) {
            String known = Species.all().stream().map(Species::englishName).collect(Collectors.joining(", "));
            return Species.named(name)
                    .orElseThrow(() -> new WrongRequest(Message.of("cli.scope.species", name, known)));
        }
    }

    /** A day as {@code 2026-03-16}. */
    static final class Day implements ITypeConverter<LocalDate> {
        @Override
        public LocalDate convert(String day) {
            try {
                return LocalDate.parse(day);
            } catch (DateTimeParseException e) {
                throw new WrongRequest(Message.of("cli.scope.day", day));
            }
        }
    }

    /** A confidence level between 0 and 1. */
    static final class Level implements ITypeConverter<Double> {
        @Override
        public Double convert(String text) {
            try {
                double level = Double.parseDouble(text);
                if (level > 0 && level < 1) {
                    return level;
                }
            } catch (NumberFormatException e) {
                throw new WrongRequest(Message.of("cli.scope.level", text));
            }
            throw new WrongRequest(Message.of("cli.scope.level", text));
        }
    }
}
