package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestOutcome;

/**
 * What cannot have been so in the checks of one attempt. A clutch may grow by one egg a day, and by one more since eggs are laid early
 * in the morning and checks are made at any time of the day.
 */
final class NestProblems {
    private final Nest nest;
    private final List<NestLook> looks;
    private final List<Message> problems = new ArrayList<>();

    private NestProblems(Nest nest, List<NestLook> looks) {
        this.nest = nest;
        this.looks = looks;
    }

    static List<Message> of(Nest nest, List<NestLook> looks, OptionalInt clutch) {
        NestProblems search = new NestProblems(nest, looks);
        search.found();
        search.order();
        search.growth();
        search.young(clutch);
        search.afterEnd();
        return search.problems;
    }

    private void problem(String key, Object... facts) {
        Object[] all = new Object[facts.length + 1];
        all[0] = nest.label();
        System.arraycopy(facts, 0, all, 1, facts.length);
        problems.add(Message.of(key, all));
    }

    private void found() {
        if (nest.found().isPresent()
                && !looks.isEmpty()
                && looks.get(0).date().isBefore(nest.found().get())) {
            problem("nests.problem.found", nest.found().get(), looks.get(0).date());
        }
    }

    /** Young and then eggs, or empty between eggs: another attempt, or a slip of the pen. */
    private void order() {
        Optional<LocalDate> young = Optional.empty();
        Optional<LocalDate> empty = Optional.empty();
        boolean begun = false;
        for (NestLook look : looks) {
            if (look.isActive() && look.hasEggs() && young.isPresent()) {
                problem("nests.problem.youngBeforeEggs", young.get(), look.date());
                return;
            }
            if (look.isActive() && empty.isPresent()) {
                problem("nests.problem.emptyBetween", empty.get(), look.date());
                return;
            }
            if (look.isActive() && look.hasYoung() && young.isEmpty()) {
                young = Optional.of(look.date());
            }
            if (begun && look.isEmpty()) {
                empty = Optional.of(look.date());
            }
            begun |= look.isActive();
        }
    }

    private void growth() {
        Optional<NestLook> before = Optional.empty();
        for (NestLook look : looks) {
            if (look.eggs() == 0) {
                continue;
            }
            if (before.isPresent()) {
                long days = look.date().toEpochDay() - before.get().date().toEpochDay();
                if (look.eggs() - before.get().eggs() > days + 1) {
                    problem(
                            "nests.problem.growth",
                            before.get().eggs(),
                            before.get().date(),
                            look.eggs(),
                            look.date());
                }
            }
            before = Optional.of(look);
        }
    }

    private void young(OptionalInt clutch) {
        if (clutch.isEmpty()) {
            return;
        }
        looks.stream()
                .filter(look -> look.young() > clutch.getAsInt())
                .findFirst()
                .ifPresent(look -> problem("nests.problem.young", look.young(), look.date(), clutch.getAsInt()));
    }

    private void afterEnd() {
        Optional<NestLook> end = Optional.empty();
        for (NestLook look : looks) {
            if (end.isPresent() && look.isActive()) {
                problem(
                        "nests.problem.afterEnd",
                        end.get().outcome().orElseThrow(),
                        end.get().date(),
                        look.date());
                return;
            }
            Optional<NestOutcome> outcome = look.outcome();
            if (end.isPresent()
                    && outcome.isPresent()
                    && !outcome.equals(end.get().outcome())) {
                problem(
                        "nests.problem.outcomes",
                        end.get().outcome().orElseThrow(),
                        end.get().date(),
                        outcome.get(),
                        look.date());
                return;
            }
            if (end.isEmpty() && outcome.isPresent()) {
                end = Optional.of(look);
            }
        }
    }
}
