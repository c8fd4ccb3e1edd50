package org.ouzelbook.ui.strip;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.tracker.domain.Sighting;

/** The symbols of hand-drawn territory maps; see the legend. */
class SightingSymbolTest {
    @ParameterizedTest(name = "{0}")
    @CsvSource(textBlock = """
            a1, ONE,      true,  0
            a2, PAIR,     false, 0
            a3, MATERIAL, false, 0
            a4, FOOD,     false, 0
            c1, ONE,      false, 1
            c5, FOOD,     false, 0
            c6, ONE,      false, 2
            d3, PAIR,     true,  0
            x2, YOUNG,    false, 0
            """)
    void followsWhatTheBirdDid(String label, SightingSymbol.Middle middle, boolean sang, int underlines) {
        Sighting sighting = SampleRiver.of2026().records().sightings().stream()
                .filter(one -> one.label().equals(label))
                .findFirst()
                .orElseThrow();

        assertThat(SightingSymbol.of(sighting)).isEqualTo(new SightingSymbol(middle, sang, underlines));
    }
}
