package org.ouzelbook.tracker.store;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Message;

/** Counts what putting a bundle into a book does, and asks. */
final class MergeTally {
    private static final int CODE = 6;
    private static final int LONG_CODE = 12;

    final Map<String, Long> added = new LinkedHashMap<>();
    final List<Message> changed = new ArrayList<>();
    final List<Message> removed = new ArrayList<>();
    final List<Message> notes = new ArrayList<>();
    long known;
    long older;
    long duplicates;
    long matched;
    long leftOut;

    private final List<MergeQuestion> questions = new ArrayList<>();
    private final List<String> asked = new ArrayList<>();
    private final MergeAnswers answers;
    private final String from;

    MergeTally(MergeAnswers answers, String from) {
        this.answers = answers;
        this.from = from;
    }

    void added(Table table) {
        added.merge(table.name(), 1L, Long::sum);
    }

    /**
     * Asks.
     *
     * @param about the kind of question
     * @param mark what makes this question itself, whoever asks it when
     * @return the answer; empty if there is none yet, and then the question is kept
     */
    Optional<MergeAnswer> ask(
            MergeQuestion.About about, String mark, Message told, List<Message> details, List<MergeAnswer> fitting) {
        String code = code(about + " " + mark);
        Optional<MergeAnswer> answer = answers.to(code, fitting);
        asked.add(code);
        if (answer.isEmpty()) {
            questions.add(new MergeQuestion(code, about, from, told, details, fitting));
        }
        return answer;
    }

    static String code(String mark) {
        return String.format(Locale.ROOT, "%016x", RowHash.of(mark));
    }

    /** {@return the questions with codes as short as tells them apart} */
    private List<MergeQuestion> questions() {
        long shortOnes = questions.stream()
                .map(question -> question.code().substring(0, CODE))
                .distinct()
                .count();
        long all = questions.stream().map(MergeQuestion::code).distinct().count();
        int length = shortOnes == all ? CODE : LONG_CODE;
        return questions.stream()
                .map(question -> question.coded(question.code().substring(0, length)))
                .toList();
    }

    MergeResult result(Bundle bundle) {
        return new MergeResult(
                bundle.name(),
                from,
                bundle.size(),
                Collections.unmodifiableMap(added),
                changed,
                removed,
                known,
                older,
                duplicates,
                matched,
                leftOut,
                notes,
                questions(),
                asked);
    }
}
