package org.ouzelbook.ui.window;

import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.ui.app.Texts;

/**
 * The questions that wait for an answer. One is answered at a time, first the one that is looked at; where another one is being
 * answered just then, that one steps back and is begun again later.
 */
final class Questions {
    private final Work work;
    private final BiConsumer<Topic, FindingSheet> answered;
    private final Set<Topic> waiting = EnumSet.noneOf(Topic.class);
    private final AtomicInteger round = new AtomicInteger();
    private BiFunction<Topic, Progress, FindingSheet> answering = (topic, progress) -> FindingSheet.stopped("");
    private Topic first;
    private Optional<Topic> running = Optional.empty();
    private volatile boolean stepsBack;
    private volatile boolean stopped;
    private volatile boolean resting;

    /**
     * @param work does the answering
     * @param first the question that is looked at
     * @param answered hears each answer
     */
    Questions(Work work, Topic first, BiConsumer<Topic, FindingSheet> answered) {
        this.work = work;
        this.first = first;
        this.answered = answered;
    }

    /** {@return whether somebody stopped the answering since questions were last asked anew} */
    boolean isStopped() {
        return stopped;
    }

    /** {@return whether a question waits for its answer, or is being answered} */
    boolean isOpen(Topic topic) {
        return waiting.contains(topic) || running.equals(Optional.of(topic));
    }

    /** Forgets what was asked: other questions come, of another book. */
    void forget() {
        round.incrementAndGet();
        waiting.clear();
        stopped = false;
    }

    /**
     * Asks.
     *
     * @param topics the questions
     * @param sheets answers a question
     */
    void ask(Collection<Topic> topics, BiFunction<Topic, Progress, FindingSheet> sheets) {
        resting = false;
        answering = sheets;
        waiting.addAll(topics);
        next();
    }

    /** Puts a question before all others. */
    void lookAt(Topic topic) {
        first = topic;
        stepsBack = waiting.contains(topic);
    }

    /** Leaves what is not begun until somebody asks again. */
    void rest() {
        resting = true;
    }

    private void next() {
        if (running.isPresent() || waiting.isEmpty() || resting) {
            return;
        }
        Topic one = waiting.contains(first) ? first : waiting.iterator().next();
        waiting.remove(one);
        running = Optional.of(one);
        stepsBack = false;
        int mine = round.get();
        BiFunction<Topic, Progress, FindingSheet> sheets = answering;
        work.start(
                Texts.of("window.work.finding", one.term()),
                progress -> {
                    if (resting) {
                        throw new Later();
                    }
                    Progress watched = (done, total) -> goesOn(mine, progress, done, total);
                    goOn(watched);
                    FindingSheet sheet = sheets.apply(one, watched);
                    goOn(watched);
                    return sheet;
                },
                sheet -> ended(one, mine, Optional.of(sheet)),
                failure -> ended(
                        one,
                        mine,
                        failure instanceof Later
                                ? Optional.empty()
                                : Optional.of(
                                        failure instanceof CancellationException
                                                ? FindingSheet.stopped(one.question())
                                                : FindingSheet.refused(one.question(), FailureWords.of(failure)))));
    }

    /** Nobody waits for the answer just now. */
    private static final class Later extends CancellationException {
        private static final long serialVersionUID = 1;
    }

    private boolean goesOn(int mine, Progress progress, long done, long total) {
        if (mine != round.get() || stepsBack) {
            throw new Later();
        }
        stopped = stopped || !progress.goOn(done, total);
        return !stopped;
    }

    private static void goOn(Progress progress) {
        if (!progress.goOn(0, 0)) {
            throw new CancellationException();
        }
    }

    private void ended(Topic one, int mine, Optional<FindingSheet> sheet) {
        running = Optional.empty();
        if (mine == round.get()) {
            sheet.ifPresentOrElse(found -> answered.accept(one, found), () -> waiting.add(one));
        }
        if (stopped) {
            // Whoever stops one answer stops those that wait as well; they are begun again when the page is opened
            // again.
            List<Topic> left = List.copyOf(waiting);
            waiting.clear();
            left.forEach(other -> answered.accept(other, FindingSheet.stopped(other.question())));
        }
        next();
    }
}
