package org.ouzelbook.ui.app;

import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.notebook.Completion;
import org.ouzelbook.tracker.notebook.LineReading;

/** What a typed line can be read by and entered into: the notebook of a visit, or a record that is being corrected. */
public interface TypedLines {
    /**
     * Enters one line.
     *
     * @param line what was typed
     * @return what became of it
     * @throws WrongRequest if the visit or record asked for is not there
     */
    Answer enter(String line);

    /**
     * Reads one line as {@link #enter} would, and stores nothing: for reading back while somebody types.
     *
     * @param line what was typed so far
     * @return what would become of it
     * @throws WrongRequest if the visit or record asked for is not there
     */
    Answer read(String line);

    /**
     * {@return what the word that is being typed may be meant to become, the likeliest first}
     *
     * @param line what was typed so far
     * @param cursor where the next character goes
     */
    List<Completion.Suggestion> complete(String line, int cursor);

    /**
     * What became of a line.
     *
     * @param line the line
     * @param stored whether the book holds it now
     * @param understood what was understood, one text for each sighting
     * @param sightings the sightings
     * @param visit the visit that was opened or closed
     * @param questions what is unclear
     * @param remarks what is clear but unusual
     */
    record Answer(
            String line,
            boolean stored,
            List<String> understood,
            List<SightingAnswer> sightings,
            Optional<VisitAnswer> visit,
            List<QuestionAnswer> questions,
            List<Message> remarks) {
        /** Copies the lists. */
        public Answer {
            understood = List.copyOf(understood);
            sightings = List.copyOf(sightings);
            questions = List.copyOf(questions);
            remarks = List.copyOf(remarks);
        }

        static Answer unclear(String line, List<QuestionAnswer> questions) {
            return new Answer(line, false, List.of(), List.of(), Optional.empty(), questions, List.of());
        }

        static Answer unclear(String line, Message question) {
            return unclear(line, List.of(new QuestionAnswer(0, line.length(), question, List.of())));
        }

        /** {@return whether the line was clear} */
        public boolean isClear() {
            return questions.isEmpty();
        }
    }

    /**
     * A question.
     *
     * @param from index of the first character that it is about
     * @param to index after the last one
     * @param question what is asked
     * @param choices texts to write in its stead
     */
    record QuestionAnswer(int from, int to, Message question, List<String> choices) {
        /** Copies the choices. */
        public QuestionAnswer {
            choices = List.copyOf(choices);
        }

        static QuestionAnswer of(LineReading.Question asked) {
            return new QuestionAnswer(asked.from(), asked.to(), asked.question(), asked.choices());
        }
    }
}
