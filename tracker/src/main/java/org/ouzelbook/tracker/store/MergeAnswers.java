package org.ouzelbook.tracker.store;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What a person answered, by the codes of the questions; {@link #ALL} answers every question that it fits and that has no answer
 * of its own.
 *
 * @param byCode the answers
 */
public record MergeAnswers(Map<String, MergeAnswer> byCode) {
    /** Stands for every question. */
    public static final String ALL = "all";

    /** Nothing is answered. */
    public static final MergeAnswers NONE = new MergeAnswers(Map.of());

    /** Copies the answers. */
    public MergeAnswers {
        byCode = Map.copyOf(byCode);
    }

    /**
     * {@return the answer to a question, if there is one}
     *
     * @param code the question's whole code; an answer may give the first letters of it
     * @param fitting what can be answered
     * @throws BookException if the question is answered by a word that does not fit
     */
    Optional<MergeAnswer> to(String code, List<MergeAnswer> fitting) {
        Optional<Map.Entry<String, MergeAnswer>> own = new TreeMap<>(byCode)
                .entrySet().stream()
                        .filter(entry -> code.startsWith(entry.getKey()))
                        .findFirst();
        own.filter(entry -> !fitting.contains(entry.getValue())).ifPresent(entry -> {
            throw BookException.of(
                    "merge.wrong.answer",
                    entry.getValue().written(),
                    entry.getKey(),
                    fitting.stream().map(MergeAnswer::written).toList());
        });
        return own.map(Map.Entry::getValue)
                .or(() -> Optional.ofNullable(byCode.get(ALL)).filter(fitting::contains));
    }

    /**
     * {@return the answer to whether two records are of one bird or visit, if there is one}
     *
     * @param pair the two
     * @throws BookException if it is answered by a word that does not fit
     */
    public Optional<MergeAnswer> to(SamePair pair) {
        return to(pair.code(), List.of(MergeAnswer.SAME, MergeAnswer.DIFFERENT));
    }
}
