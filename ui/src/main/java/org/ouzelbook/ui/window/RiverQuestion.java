package org.ouzelbook.ui.window;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.river.RiverAnswers;
import org.ouzelbook.tracker.river.RiverAnswers.Mouth;
import org.ouzelbook.ui.app.Texts;

/**
 * A question that drawn rivers leave open.
 *
 * @param words the question, or what must be mended in the drawing
 * @param choices the answers; none where the drawing must be mended
 */
record RiverQuestion(String words, List<Choice> choices) {
    RiverQuestion {
        choices = List.copyOf(choices);
    }

    /**
     * An answer to choose.
     *
     * @param words the answer
     * @param answer puts it among the answers
     */
    record Choice(String words, UnaryOperator<RiverAnswers> answer) {}

    /**
     * {@return the question of a message}
     *
     * @param message what is open
     */
    static RiverQuestion of(Message message) {
        String key = "window.ask." + message.key();
        return new RiverQuestion(
                Texts.keys().contains(key) ? Texts.of(key, message.facts().toArray()) : Texts.of(message),
                choices(message));
    }

    private static List<Choice> choices(Message message) {
        List<Object> facts = message.facts();
        return switch (message.key()) {
            case "river.gap" -> {
                double widest = Math.ceil(((Number) facts.get(1)).doubleValue());
                yield List.of(
                        new Choice(
                                Texts.of("window.import.bridge"),
                                said -> new RiverAnswers(
                                        said.mouthAt(),
                                        said.joins(),
                                        Math.max(widest, said.widestGapMetres()),
                                        said.leaveGaps())),
                        new Choice(
                                Texts.of("window.import.leaveGap"),
                                said -> new RiverAnswers(said.mouthAt(), said.joins(), said.widestGapMetres(), true)));
            }
            case "river.joins" -> {
                String river = String.valueOf(facts.get(0));
                String other = String.valueOf(facts.get(1));
                yield List.of(
                        new Choice(
                                Texts.of("window.ask.joins", river, other),
                                said -> joins(said, river, Optional.of(other))),
                        new Choice(
                                Texts.of("window.ask.joinsNot", river), said -> joins(said, river, Optional.empty())));
            }
            case "river.bothEndsNear", "river.walked" -> {
                String river = String.valueOf(facts.get(0));
                yield List.of(
                        new Choice(Texts.of("window.ask.first"), said -> mouth(said, river, new Mouth.First())),
                        new Choice(Texts.of("window.ask.last"), said -> mouth(said, river, new Mouth.Last())));
            }
            default -> List.of();
        };
    }

    private static RiverAnswers joins(RiverAnswers said, String river, Optional<String> other) {
        Map<String, Optional<String>> joins = new HashMap<>(said.joins());
        joins.put(river, other);
        return new RiverAnswers(said.mouthAt(), joins, said.widestGapMetres(), said.leaveGaps());
    }

    /**
     * {@return answers with another mouth}
     *
     * @param said the answers so far
     * @param river name of the river
     * @param mouth where its mouth is
     */
    static RiverAnswers mouth(RiverAnswers said, String river, Mouth mouth) {
        Map<String, Mouth> mouths = new HashMap<>(said.mouthAt());
        mouths.put(river, mouth);
        return new RiverAnswers(mouths, said.joins(), said.widestGapMetres(), said.leaveGaps());
    }
}
