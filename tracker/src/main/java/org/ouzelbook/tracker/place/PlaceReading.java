package org.ouzelbook.tracker.place;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;

/** What became of a place as somebody wrote it: found, or a question. */
public sealed interface PlaceReading {

    /**
     * {@return this reading with the bank that was written beside it}
     *
     * @param bank the side, looking downstream
     */
    PlaceReading withBank(Bank bank);

    /**
     * {@return this reading with the uncertainty that was written beside it}
     *
     * @param metres uncertainty along the water, in metres; positive
     */
    PlaceReading withUncertainty(double metres);

    /**
     * A place on a river.
     *
     * @param place the place
     * @param landmark the landmark that it was told by
     * @param metresFromLine how far the coordinates that it was told by lie from the river's line, in metres
     */
    record Found(Place place, Optional<Landmark> landmark, OptionalDouble metresFromLine) implements PlaceReading {
        @Override
        public Found withBank(Bank bank) {
            return with(bank, place.uncertaintyMetres());
        }

        @Override
        public Found withUncertainty(double metres) {
            return with(place.bank(), metres);
        }

        private Found with(Bank bank, double uncertaintyMetres) {
            Place changed = new Place(place.riverId(), place.chainage(), bank, uncertaintyMetres, place.lineVersion());
            return new Found(changed, landmark, metresFromLine);
        }
    }

    /**
     * Not to be told without asking.
     *
     * @param question what to ask, with what the person can do
     * @param choices places that may be meant, the likeliest first; a single one only wants a yes; none if there is nothing
     *     to choose
     */
    record Unclear(Message question, List<Found> choices) implements PlaceReading {
        /** Copies the choices. */
        public Unclear {
            choices = List.copyOf(choices);
        }

        static Unclear of(String key, Object... facts) {
            return new Unclear(Message.of(key, facts), List.of());
        }

        @Override
        public Unclear withBank(Bank bank) {
            return new Unclear(
                    question,
                    choices.stream().map(choice -> choice.withBank(bank)).toList());
        }

        @Override
        public Unclear withUncertainty(double metres) {
            return new Unclear(
                    question,
                    choices.stream()
                            .map(choice -> choice.withUncertainty(metres))
                            .toList());
        }
    }
}
