package org.ouzelbook.ui.window;

import java.util.Optional;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.ouzelbook.stats.survey.ModelledCounts;
import org.ouzelbook.tracker.domain.Species;

/**
 * What the model counts in the contents shown, as far as it has come. While it counts anew after a change, what it counted before is
 * kept, so that a number stays where it is read until a better one is there.
 */
final class ModelFigures {
    private final ReadOnlyObjectWrapper<Optional<ModelledCounts>> counts =
            new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyBooleanWrapper stopped = new ReadOnlyBooleanWrapper();
    private Optional<ModelledCounts> earlier = Optional.empty();
    private Optional<Species> species = Optional.empty();
    private Runnable again = () -> {};

    /** How far the model has come. */
    enum Standing {
        /** It has counted what is shown. */
        COUNTED,
        /** It is still at it. */
        COUNTING,
        /** Somebody stopped it, or it could not count. */
        STOPPED
    }

    /**
     * What may be told by the model.
     *
     * @param counts its counts, those before the last change while it counts anew; empty if there are none
     * @param standing how far it has come
     */
    record Told(Optional<ModelledCounts> counts, Standing standing) {}

    /** {@return what the model counts in the contents shown; empty until it has counted} */
    ReadOnlyObjectProperty<Optional<ModelledCounts>> counts() {
        return counts.getReadOnlyProperty();
    }

    /** {@return whether somebody stopped the model, or it could not count} */
    ReadOnlyBooleanProperty stopped() {
        return stopped.getReadOnlyProperty();
    }

    /** {@return what may be told now} */
    Told told() {
        if (counts.get().isPresent()) {
            return new Told(counts.get(), Standing.COUNTED);
        }
        return stopped.get() ? new Told(Optional.empty(), Standing.STOPPED) : new Told(earlier, Standing.COUNTING);
    }

    /**
     * Begins with other contents, which are not counted yet.
     *
     * @param shown the species shown
     */
    void about(Species shown) {
        earlier = species.equals(Optional.of(shown)) ? counts.get().or(() -> earlier) : Optional.empty();
        species = Optional.of(shown);
        counts.set(Optional.empty());
        stopped.set(false);
    }

    /**
     * Takes the counts of the contents shown.
     *
     * @param counted the counts
     */
    void take(ModelledCounts counted) {
        counts.set(Optional.of(counted));
    }

    /** Hears that the model was stopped, or could not count. */
    void stop() {
        stopped.set(true);
    }

    /**
     * Sets who counts when somebody asks for it again.
     *
     * @param counting does it
     */
    void onCountAgain(Runnable counting) {
        again = counting;
    }

    /** Lets the model count, after it was stopped. */
    void countAgain() {
        stopped.set(false);
        again.run();
    }
}
