package org.ouzelbook.tracker.notebook;

import java.util.List;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Sighting;

/**
 * What a notebook line was understood to say.
 *
 * @param parts what was understood, and from which characters of the line
 * @param questions what is unclear; nothing is to be stored before all of it is settled
 * @param remarks what is clear but unusual, such as a place outside of the stretch walked
 * @param sightings the sightings; none while anything is unclear
 */
public record LineReading(List<Part> parts, List<Question> questions, List<Message> remarks, List<Sighting> sightings) {
    /** Copies the lists. */
    public LineReading {
        parts = List.copyOf(parts);
        questions = List.copyOf(questions);
        remarks = List.copyOf(remarks);
        sightings = List.copyOf(sightings);
    }

    /** {@return whether the line is clear and says something} */
    public boolean isClear() {
        return questions.isEmpty() && !sightings.isEmpty();
    }

    /**
     * A part that was understood.
     *
     * @param from index of its first character
     * @param to index after its last character
     * @param meaning what it was understood to mean
     */
    public record Part(int from, int to, Message meaning) {}

    /**
     * A part that is unclear.
     *
     * @param from index of its first character
     * @param to index after its last character; equal to {@code from} where something is missing
     * @param question what to ask
     * @param choices texts to write in its stead, the likeliest first; none if there is nothing to choose
     */
    public record Question(int from, int to, Message question, List<String> choices) {
        /** Copies the choices. */
        public Question {
            choices = List.copyOf(choices);
        }
    }
}
