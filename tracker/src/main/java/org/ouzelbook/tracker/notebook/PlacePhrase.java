package org.ouzelbook.tracker.notebook;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.place.PlaceReading;
import org.ouzelbook.tracker.place.PlaceScan;
import org.ouzelbook.tracker.place.Word;

/** Finds places in the words of a line, and asks about those that are unclear. */
final class PlacePhrase {
    private final LineContext context;
    private final BirdLine.Found found;

    PlacePhrase(LineContext context, BirdLine.Found found) {
        this.context = context;
        this.found = found;
    }

    /**
     * {@return the place with which the words start, on the river of the place already told or of the visit; a landmark may
     * lie elsewhere}
     */
    Optional<PlaceScan> at(Optional<Place> told, List<Word> words) {
        Optional<UUID> river = told.map(Place::riverId).or(context::river);
        Optional<PlaceScan> onRiver = context.places().scan(words, river, Vocabulary::startsPhrase);
        boolean elsewhere = onRiver.isPresent()
                && onRiver.get().reading() instanceof PlaceReading.Unclear unclear
                && unclear.question().key().equals("place.otherRiver");
        return elsewhere ? context.places().scan(words, Optional.empty(), Vocabulary::startsPhrase) : onRiver;
    }

    /** {@return the place in words} */
    Message named(PlaceReading.Found where) {
        String river = context.places().network().river(where.place().riverId()).name();
        return where.landmark()
                .map(landmark -> Message.of(
                        "log.landmark", landmark.name(), where.place().chainage()))
                .orElseGet(() -> Message.of("log.riverKm", river, where.place().chainage()));
    }

    /** Asks which place is meant, with texts to write in its stead. */
    void ask(List<Word> told, PlaceReading.Unclear unclear) {
        List<String> choices = unclear.choices().stream()
                .map(choice -> {
                    String river = context.places()
                            .network()
                            .river(choice.place().riverId())
                            .name();
                    String km = String.format(
                            Locale.ROOT, "%.2f", choice.place().chainage().km());
                    boolean alone = unclear.choices().stream()
                                    .filter(other -> other.landmark()
                                            .map(l -> l.name())
                                            .equals(choice.landmark().map(l -> l.name())))
                                    .count()
                            == 1;
                    return choice.landmark().isPresent() && alone
                            ? choice.landmark().get().name()
                            : river + " " + km;
                })
                .toList();
        found.question(told.get(0), told.get(told.size() - 1), unclear.question(), choices);
    }
}
