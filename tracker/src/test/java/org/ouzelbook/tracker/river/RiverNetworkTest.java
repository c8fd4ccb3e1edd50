package org.ouzelbook.tracker.river;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.River;

class RiverNetworkTest {
    private final River arrel = new River(new UUID(0, 1), "Arrel Water", Optional.empty());
    private final River beck = tributary(2, "Sorn Beck", arrel, 16.4);
    private final River gill = tributary(3, "Lang Gill", beck, 1.0);
    private final River burn = tributary(4, "Mose Burn", arrel, 3.0);
    private final River other = new River(new UUID(0, 5), "Far River", Optional.empty());
    private final RiverNetwork network = RiverNetwork.of(List.of(beck, arrel, gill, other, burn), List.of());

    private static River tributary(int key, String name, River receiving, double km) {
        return new River(new UUID(0, key), name, Optional.of(new River.Confluence(receiving.id(), Chainage.ofKm(km))));
    }

    private static Place at(River river, double km) {
        return new Place(river.id(), Chainage.ofKm(km), Bank.UNKNOWN, 20, 1);
    }

    /** Main river km 16.7, and 0.3 km up the beck that joins at 16.4: 0.3 + 0.3 = 0.6 km along the water. */
    @Test
    void measuresThroughAConfluence() {
        assertThat(network.distance(at(arrel, 16.7), at(beck, 0.3)).getAsDouble())
                .isCloseTo(600, within(1e-6));
        assertThat(network.distance(at(beck, 0.3), at(arrel, 16.7)).getAsDouble())
                .isCloseTo(600, within(1e-6));
        assertThat(network.distance(at(beck, 0.3), at(arrel, 16.0)).getAsDouble())
                .isCloseTo(700, within(1e-6));
    }

    @Test
    void measuresAlongOneRiverAndThroughSeveralConfluences() {
        assertThat(network.distance(at(beck, 0.3), at(beck, 1.5)).getAsDouble()).isCloseTo(1200, within(1e-6));
        assertThat(network.distance(at(gill, 0.2), at(burn, 0.5)).getAsDouble())
                .isCloseTo(200 + 1000 + 13400 + 500, within(1e-6));
    }

    @Test
    void tellsTheWayLegByLeg() {
        assertThat(network.way(at(gill, 0.2), at(arrel, 16.7)))
                .containsExactly(
                        new RiverNetwork.Leg(gill.id(), Chainage.ofKm(0.2), Chainage.ofKm(0)),
                        new RiverNetwork.Leg(beck.id(), Chainage.ofKm(1.0), Chainage.ofKm(0)),
                        new RiverNetwork.Leg(arrel.id(), Chainage.ofKm(16.4), Chainage.ofKm(16.7)));
    }

    @Test
    void tellsWhereTheWaterOfARiverLeaves() {
        assertThat(network.outlet(gill.id())).isEqualTo(arrel);
        assertThat(network.outlet(burn.id())).isEqualTo(arrel);
        assertThat(network.outlet(arrel.id())).isEqualTo(arrel);
        assertThat(network.outlet(other.id())).isEqualTo(other);
    }

    @Test
    void knowsThatNoWaterJoinsSomeRivers() {
        assertThat(network.distance(at(arrel, 1), at(other, 1))).isEmpty();
        assertThat(network.way(at(arrel, 1), at(other, 1))).isEmpty();
    }

    @Test
    void ordersRiversByTheWater() {
        assertThat(network.inOrderOfWater()).containsExactly(arrel, burn, beck, gill, other);
    }

    @Test
    void refusesACircle() {
        River one = tributary(6, "One", new River(new UUID(0, 7), "Two", Optional.empty()), 1);
        River two = tributary(7, "Two", one, 1);

        assertThatThrownBy(() -> RiverNetwork.of(List.of(one, two), List.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("joins itself");
    }
}
