package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.ouzelbook.tracker.domain.Progress;

/** In which order questions are answered, by a hand that does one piece of work after another. */
class QuestionsTest {
    private final Hand hand = new Hand();
    private final List<Topic> answers = new ArrayList<>();
    private final List<Topic> begun = new ArrayList<>();
    private final Questions questions = new Questions(hand, Topic.DENSITY, (topic, sheet) -> {
        if (!sheet.isStopped()) {
            answers.add(topic);
        }
    });
    private Runnable meanwhile = () -> {};

    /** Does a piece of work when told to. */
    private static final class Hand implements Work {
        private final Deque<Runnable> pieces = new ArrayDeque<>();
        private boolean goOn = true;

        @Override
        public <T> void start(String what, Function<Progress, T> job, Consumer<T> done, Consumer<Throwable> failed) {
            pieces.add(() -> {
                T result;
                try {
                    result = job.apply((part, whole) -> goOn);
                } catch (RuntimeException e) {
                    failed.accept(e);
                    return;
                }
                done.accept(result);
            });
        }

        void once() {
            pieces.remove().run();
        }

        void all() {
            while (!pieces.isEmpty()) {
                once();
            }
        }
    }

    private FindingSheet answer(Topic topic, Progress progress) {
        begun.add(topic);
        meanwhile.run();
        meanwhile = () -> {};
        progress.goOn(1, 2);
        return new FindingSheet(topic.question(), "", "", Optional.empty(), List.of(), List.of(), List.of());
    }

    private void askAll() {
        questions.ask(List.of(Topic.values()), this::answer);
    }

    @Test
    void answersFirstWhatIsLookedAtThenTheOthersInTheirOrder() {
        questions.lookAt(Topic.NESTS);
        askAll();
        hand.all();

        assertThat(answers)
                .containsExactly(Topic.NESTS, Topic.DENSITY, Topic.TREND, Topic.OCCUPANCY, Topic.SURVIVAL, Topic.PREY);
    }

    @Test
    void answersAQuestionThatIsNewlyLookedAtBeforeThoseThatWaitedLonger() {
        askAll();
        hand.once();
        questions.lookAt(Topic.PREY);
        hand.all();

        assertThat(answers)
                .containsExactly(Topic.DENSITY, Topic.PREY, Topic.TREND, Topic.OCCUPANCY, Topic.NESTS, Topic.SURVIVAL);
    }

    @Test
    void letsTheOneThatIsBeingAnsweredStepBackAndBeginsItAgain() {
        askAll();
        meanwhile = () -> questions.lookAt(Topic.SURVIVAL);
        hand.all();

        assertThat(begun.subList(0, 3)).containsExactly(Topic.DENSITY, Topic.SURVIVAL, Topic.DENSITY);
        assertThat(answers).containsExactlyInAnyOrder(Topic.values()).startsWith(Topic.SURVIVAL);
    }

    @Test
    void breaksOffWhatIsOfABookThatIsNoLongerLookedAt() {
        askAll();
        meanwhile = questions::forget;
        hand.all();

        assertThat(answers).isEmpty();
        askAll();
        hand.all();
        assertThat(answers).containsExactlyInAnyOrder(Topic.values());
    }

    @Test
    void stopsTheOthersTooWhereOneIsStoppedInside() {
        askAll();
        meanwhile = () -> hand.goOn = false;
        hand.all();

        assertThat(answers).isEmpty();
        assertThat(begun).containsExactly(Topic.DENSITY);
        assertThat(questions.isStopped()).isTrue();
    }

    @Test
    void restsBetweenTwoQuestionsAndGoesOnWhenAskedAgain() {
        askAll();
        hand.once();
        questions.rest();
        hand.all();
        assertThat(answers).containsExactly(Topic.DENSITY);

        askAll();
        hand.all();
        assertThat(answers).contains(Topic.values());
    }
}
