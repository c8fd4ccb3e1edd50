package org.ouzelbook.tracker.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.exchange.cell.Words;
import org.ouzelbook.tracker.exchange.cell.WrittenNumber;
import org.ouzelbook.tracker.grid.GridReading;
import org.ouzelbook.tracker.grid.GridReference;
import org.ouzelbook.tracker.place.PlaceReading;
import org.ouzelbook.tracker.place.PlaceReading.Found;
import org.ouzelbook.tracker.place.PlaceReading.Unclear;

/**
 * The place of a row: river km, a landmark with an offset, coordinates, or a grid reference. Where a row gives more than one of them, they must
 * agree to 100 m or within their uncertainties, and the first of this order counts.
 */
final class RowPlace {
    private static final double AGREEMENT_METRES = 100;

    private final RowReader row;
    private final Optional<River> walked;
    private final BookIndex book;
    private final List<Found> found = new ArrayList<>();

    private RowPlace(RowReader row, Optional<River> walked) {
        this.row = row;
        this.walked = walked;
        this.book = row.table().book();
    }

    /** {@return the place that the row tells; empty if it tells none that can be used, which is then noted} */
    static Optional<Place> of(RowReader row) {
        return of(row, Optional.empty());
    }

    /**
     * {@return the place that the row tells; empty if it tells none that can be used, which is then noted}
     *
     * @param row the row
     * @param walked the river of the visit that the row names; it is meant where the row names no river
     */
    static Optional<Place> of(RowReader row, Optional<River> walked) {
        return new RowPlace(row, walked).read();
    }

    /** {@return the river that the row names, or the usual one; empty if it names none and there is no usual one} */
    static Optional<River> river(RowReader row) {
        Optional<String> name = row.known(Column.RIVER);
        if (name.isEmpty()) {
            return row.table().book().usualRiver();
        }
        Optional<River> river = row.table().book().river(name.get());
        if (river.isEmpty()) {
            row.problem(
                    Column.RIVER,
                    Message.of("import.river.unknown", row.table().book().riverNames()));
        }
        return river;
    }

    /** {@return the river that the row must have} */
    static Optional<River> neededRiver(RowReader row) {
        Optional<River> river = river(row);
        if (river.isEmpty() && row.known(Column.RIVER).isEmpty()) {
            askRiver(row, Column.RIVER);
        }
        return river;
    }

    private static void askRiver(RowReader row, Column column) {
        List<String> names = row.table().book().riverNames();
        if (names.isEmpty()) {
            row.problem(column, Message.of("import.river.none"));
        } else {
            row.question(column, Message.of("import.ask.river", names));
        }
    }

    private Optional<Place> read() {
        boolean named = row.known(Column.RIVER).isPresent();
        Optional<River> river = named ? river(row) : walked.or(() -> river(row));
        if (river.isEmpty() && named) {
            return Optional.empty();
        }
        // A landmark or a point may tell its river itself, and another one than that of the visit.
        Optional<UUID> known = named || walked.isEmpty() ? river.map(River::id) : Optional.empty();
        boolean troubled = row.has(Finding.PROBLEM);
        boolean byKm = km(river);
        boolean byLandmark = landmark(known);
        boolean byCoordinates = coordinates(known);
        boolean byGrid = gridReference(known);
        boolean unreadable = !troubled && row.has(Finding.PROBLEM);
        if (!byKm && !byLandmark && !byCoordinates && !byGrid && !unreadable) {
            row.problem(Column.KM, Message.of("import.place.missing"));
        }
        Bank bank = row.word(Column.BANK, Words.BANKS).orElse(Bank.UNKNOWN);
        Optional<Double> uncertainty = uncertainty();
        if (found.isEmpty() || !agree()) {
            return Optional.empty();
        }
        Place first = found.get(0).place();
        Bank side = bank == Bank.UNKNOWN ? first.bank() : bank;
        return Optional.of(new Place(
                first.riverId(),
                first.chainage(),
                side,
                uncertainty.orElse(first.uncertaintyMetres()),
                first.lineVersion()));
    }

    /** {@return a reading; where it leaves open which river, the one of the visit is meant} */
    private PlaceReading orWhereWalked(Optional<UUID> riverId, Function<Optional<UUID>, PlaceReading> read) {
        PlaceReading reading = read.apply(riverId);
        if (reading instanceof Found || riverId.isPresent() || walked.isEmpty()) {
            return reading;
        }
        PlaceReading there = read.apply(walked.map(River::id));
        return there instanceof Found ? there : reading;
    }

    private boolean km(Optional<River> river) {
        if (row.known(Column.KM).isEmpty()) {
            return false;
        }
        Optional<WrittenNumber.Read> km = row.writtenNumber(Column.KM);
        if (river.isEmpty()) {
            askRiver(row, Column.KM);
        } else if (km.isPresent() && km.get().value() < 0) {
            row.problem(Column.KM, Message.of("import.km.negative"));
        } else if (km.isPresent()) {
            take(
                    Column.KM,
                    book.places()
                            .atKm(river.get().id(), km.get().value(), km.get().decimals()));
        }
        return true;
    }

    private boolean landmark(Optional<UUID> riverId) {
        Optional<String> name = row.known(Column.LANDMARK);
        if (name.isEmpty()) {
            return false;
        }
        OptionalDouble offset = row.number(Column.OFFSET_M);
        PlaceReading byName = orWhereWalked(riverId, on -> book.places().atLandmark(name.get(), offset.orElse(0), on));
        if (byName instanceof Unclear && offset.isEmpty()) {
            PlaceReading byText = orWhereWalked(riverId, on -> book.places().read(name.get(), on));
            take(Column.LANDMARK, byText instanceof Found ? byText : byName);
        } else {
            take(Column.LANDMARK, byName);
        }
        return true;
    }

    private boolean coordinates(Optional<UUID> riverId) {
        boolean latitudeTold = row.known(Column.LATITUDE).isPresent();
        boolean longitudeTold = row.known(Column.LONGITUDE).isPresent();
        if (latitudeTold != longitudeTold) {
            row.problem(latitudeTold ? Column.LONGITUDE : Column.LATITUDE, Message.of("import.coordinates.half"));
            return true;
        }
        if (!latitudeTold) {
            return false;
        }
        OptionalDouble latitude = row.number(Column.LATITUDE);
        OptionalDouble longitude = row.number(Column.LONGITUDE);
        if (latitude.isEmpty() || longitude.isEmpty()) {
            return true;
        }
        double north = latitude.getAsDouble();
        double east = longitude.getAsDouble();
        // only asked where the point does not fit: the way from the other side of the earth is long
        BooleanSupplier exchangedFits =
                () -> Math.abs(north) <= 180 && Math.abs(east) <= 90 && near(east, north, riverId);
        if (Math.abs(north) > 90 || Math.abs(east) > 180) {
            row.problem(
                    Math.abs(north) > 90 ? Column.LATITUDE : Column.LONGITUDE,
                    Message.of(
                            exchangedFits.getAsBoolean()
                                    ? "import.coordinates.exchanged"
                                    : "import.coordinates.range"));
            return true;
        }
        GeoPoint point = new GeoPoint(north, east);
        PlaceReading reading = orWhereWalked(riverId, on -> book.places().atPoint(point, OptionalDouble.empty(), on));
        boolean held = reading instanceof Unclear unclear && unclear.choices().isEmpty();
        if (held && exchangedFits.getAsBoolean()) {
            row.problem(Column.LATITUDE, Message.of("import.coordinates.exchanged"));
        } else {
            take(Column.LATITUDE, reading);
        }
        return true;
    }

    private boolean near(double latitude, double longitude, Optional<UUID> riverId) {
        PlaceReading reading =
                book.places().atPoint(new GeoPoint(latitude, longitude), OptionalDouble.empty(), riverId);
        return reading instanceof Found || !((Unclear) reading).choices().isEmpty();
    }

    /** A reading with one choice, far from the line, only wants a yes; anything else that is unclear must be mended. */
    private void take(Column column, PlaceReading reading) {
        if (reading instanceof Found one) {
            found.add(one);
            return;
        }
        Unclear unclear = (Unclear) reading;
        if (unclear.question().key().equals("place.ask")) {
            row.question(column, Message.of("import.ask.offRiver", unclear.question()));
        } else {
            row.problem(column, unclear.question());
        }
    }

    private boolean gridReference(Optional<UUID> riverId) {
        Optional<String> text = row.known(Column.GRID_REF);
        if (text.isEmpty()) {
            return false;
        }
        GridReading reading = GridReference.of(text.get());
        if (reading instanceof GridReading.Read read) {
            take(Column.GRID_REF, orWhereWalked(riverId, on -> book.places().atSquare(read.square(), on)));
        } else {
            row.problem(Column.GRID_REF, ((GridReading.Refused) reading).why());
        }
        return true;
    }

    private Optional<Double> uncertainty() {
        OptionalDouble metres = row.number(Column.UNCERTAINTY_M);
        if (metres.isEmpty()) {
            return Optional.empty();
        }
        if (metres.getAsDouble() < 0) {
            row.problem(Column.UNCERTAINTY_M, Message.of("import.uncertainty.negative"));
            return Optional.empty();
        }
        if (metres.getAsDouble() == 0) {
            row.warning(Column.UNCERTAINTY_M, Message.of("import.uncertainty.zero"));
            return Optional.empty();
        }
        return Optional.of(metres.getAsDouble());
    }

    private boolean agree() {
        Place first = found.get(0).place();
        for (Found other : found) {
            Place place = other.place();
            boolean sameRiver = place.riverId().equals(first.riverId());
            double allowed = Math.max(AGREEMENT_METRES, first.uncertaintyMetres() + place.uncertaintyMetres());
            if (!sameRiver || place.chainage().distanceTo(first.chainage()) > allowed) {
                row.problem(
                        other.landmark().isPresent() ? Column.LANDMARK : Column.LATITUDE,
                        Message.of(
                                "import.place.disagree",
                                book.riverName(first.riverId()),
                                first.chainage(),
                                book.riverName(place.riverId()),
                                place.chainage()));
                return false;
            }
        }
        return true;
    }

    /** {@return the stretch between two km of the row; empty if it names none, or one that cannot be used} */
    static Optional<Stretch> stretch(RowReader row, Optional<River> river) {
        boolean fromTold = row.known(Column.FROM_KM).isPresent();
        boolean toTold = row.known(Column.TO_KM).isPresent();
        Optional<Chainage> from = kmOnRiver(row, Column.FROM_KM, river);
        Optional<Chainage> to = kmOnRiver(row, Column.TO_KM, river);
        if (fromTold != toTold) {
            row.problem(fromTold ? Column.TO_KM : Column.FROM_KM, Message.of("import.stretch.half"));
        }
        if (from.isEmpty() || to.isEmpty()) {
            return Optional.empty();
        }
        if (from.get().equals(to.get())) {
            row.problem(Column.TO_KM, Message.of("import.stretch.noLength"));
            return Optional.empty();
        }
        return Optional.of(Stretch.between(from.get(), to.get()));
    }

    /** {@return a point of the river by its km alone; empty if the row does not tell it, or not so that it can be used} */
    static Optional<Chainage> kmOnRiver(RowReader row, Column column, Optional<River> river) {
        Optional<WrittenNumber.Read> km = row.writtenNumber(column);
        if (km.isEmpty() || river.isEmpty()) {
            return Optional.empty();
        }
        if (km.get().value() < 0) {
            row.problem(column, Message.of("import.km.negative"));
            return Optional.empty();
        }
        PlaceReading reading = row.table()
                .book()
                .places()
                .atKm(river.get().id(), km.get().value(), km.get().decimals());
        if (reading instanceof Unclear unclear) {
            row.problem(column, unclear.question());
            return Optional.empty();
        }
        return Optional.of(((Found) reading).place().chainage());
    }
}
