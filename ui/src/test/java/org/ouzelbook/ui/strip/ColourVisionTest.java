package org.ouzelbook.ui.strip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.ouzelbook.tracker.domain.LandmarkKind;

/** What only a colour tells is told to everybody, whatever colours they see; what a shape tells has a shape of its own. */
class ColourVisionTest {
    /**
     * From a difference of 5 on, people who look see two colours: W. S. Mokrzycki and M. Tatol (2011), Colour difference ΔE – a survey,
     * Machine Graphics and Vision 20:383–411, cited from memory; there of the older CIELAB differences, which are larger than CIEDE2000 for most
     * pairs, so that the check is the stricter one.
     */
    private static final double TWO_COLOURS = 5;

    /** Some pairs of Sharma, Wu and Dalal (2005), table 1, values from memory: where hue turns round, where the blue term acts, and far apart. */
    @ParameterizedTest
    @CsvSource(textBlock = """
            50, 2.6772, -79.7751, 50, 0.0000, -82.7485,  2.0425
            50, 3.1571, -77.2803, 50, 0.0000, -82.7485,  2.8615
            50, 2.8361, -74.0200, 50, 0.0000, -82.7485,  3.4412
            50, 2.5000,   0.0000, 50, 0.0000,  -2.5000,  4.3065
            50, 2.5000,   0.0000, 73, 25.0000, -18.0000, 27.1492
            """)
    void measuresDifferencesAsPublished(
            double l1, double a1, double b1, double l2, double a2, double b2, double difference) {
        ColourVision.Lab one = new ColourVision.Lab(l1, a1, b1);
        ColourVision.Lab other = new ColourVision.Lab(l2, a2, b2);

        assertThat(one.from(other)).isCloseTo(difference, within(0.5e-4));
        assertThat(other.from(one)).isCloseTo(difference, within(0.5e-4));
    }

    /** A person of any colour vision sees grey as grey; with missing cones white and black stay the same. */
    @ParameterizedTest
    @EnumSource
    void leavesGreyGrey(ColourVision vision) {
        for (String grey : List.of("#000000", "#777777", "#ffffff")) {
            assertThat(vision.seen(grey).from(ColourVision.USUAL.seen(grey)))
                    .as(grey)
                    .isLessThan(0.1);
        }
    }

    /** Red and green of equal lightness are one colour to who has no red or no green cones, and two to everybody else. */
    @Test
    void takesTheDifferencesThatPeopleWithoutConesMiss() {
        String red = "#c87137";
        String green = "#8a8a00";

        assertThat(difference(ColourVision.USUAL, red, green)).isGreaterThan(4 * TWO_COLOURS);
        assertThat(difference(ColourVision.DEUTERANOPIA, red, green)).isLessThan(TWO_COLOURS);
        assertThat(difference(ColourVision.TRITANOPIA, red, green)).isGreaterThan(4 * TWO_COLOURS);
    }

    private static double difference(ColourVision vision, String one, String other) {
        return vision.seen(one).from(vision.seen(other));
    }

    /** Colours side by side of which nothing but the colour tells one from the other. */
    static Stream<Arguments> toldByColourAlone() {
        return Stream.of(Palette.LIGHT, Palette.DARK)
                .flatMap(palette -> Stream.of(
                        Arguments.of(palette, Ink.CONFIRMED, Ink.PROBABLE),
                        Arguments.of(palette, Ink.PROBABLE, Ink.POSSIBLE),
                        Arguments.of(palette, Ink.CONFIRMED, Ink.POSSIBLE),
                        Arguments.of(palette, Ink.POSSIBLE, Ink.PAPER),
                        Arguments.of(palette, Ink.COLUMN, Ink.PAPER),
                        Arguments.of(palette, Ink.WATER, Ink.PAPER),
                        Arguments.of(palette, Ink.STREAM, Ink.WATER),
                        Arguments.of(palette, Ink.INK, Ink.MUTED),
                        Arguments.of(palette, Ink.INK, Ink.COLUMN),
                        Arguments.of(palette, Ink.MUTED, Ink.COLUMN),
                        Arguments.of(palette, Ink.HATCHING, Ink.UNWALKED),
                        Arguments.of(palette, Ink.WALKED, Ink.PAPER),
                        Arguments.of(palette, Ink.WALKED, Ink.COLUMN),
                        Arguments.of(palette, Ink.PROOF, Ink.COLUMN),
                        Arguments.of(palette, Ink.BUILDING, Ink.COLUMN),
                        Arguments.of(palette, Ink.SAMPLE, Ink.COLUMN),
                        Arguments.of(palette, Ink.NEST, Ink.COLUMN),
                        Arguments.of(palette, Ink.STONE, Ink.WATER)));
    }

    @ParameterizedTest(name = "{1} beside {2}")
    @MethodSource("toldByColourAlone")
    void tellsEverybodyWhatOnlyAColourTells(Palette palette, Ink one, Ink other) {
        for (ColourVision vision : ColourVision.values()) {
            assertThat(difference(vision, palette.colour(one), palette.colour(other)))
                    .as("%s beside %s, %s", one, other, vision)
                    .isGreaterThanOrEqualTo(TWO_COLOURS);
        }
    }

    /** All marks that stand among the dates or on the ribbon, in one ink and at one place: none may look like another. */
    @Test
    void givesEveryMarkAnOutlineOfItsOwn() {
        Map<String, List<Shape>> marks = new HashMap<>();
        Point at = new Point(100, 100);
        for (SightingSymbol.Middle middle : SightingSymbol.Middle.values()) {
            for (boolean sang : List.of(false, true)) {
                for (int lines = 0; lines < 3; lines++) {
                    SightingSymbol symbol = new SightingSymbol(middle, sang, lines);
                    marks.put(symbol.toString(), symbol.parts(at, Ink.INK, 1));
                }
            }
        }
        for (LandmarkKind kind : LandmarkKind.values()) {
            marks.put(kind.name(), LandmarkSymbol.parts(kind, at.x(), at.y()));
        }
        marks.put("kick sample", ShownSample.shapes(at));
        marks.put("nest", ShownNest.star(at));
        marks.put("crowd", new Crowd(12, 0, 0, 0).parts(at));
        marks.put("crowd with food", new Crowd(12, 0, 0, 1).parts(at));
        marks.put("crowd that builds", new Crowd(12, 0, 1, 0).parts(at));
        marks.put("crowd that builds and feeds", new Crowd(12, 0, 1, 1).parts(at));
        Map<String, String> known = new HashMap<>();
        List<String> alike = new ArrayList<>();

        marks.forEach((name, parts) -> {
            String before = known.put(outline(parts), name);
            if (before != null) {
                alike.add(before + " and " + name);
            }
        });

        assertThat(alike).isEmpty();
        assertThat(known).hasSize(marks.size());
    }

    /** The shapes without their colours, filled or not. */
    private static String outline(List<Shape> parts) {
        String all = parts.toString();
        for (Ink ink : Ink.values()) {
            all = all.replaceAll("\\b" + ink + "\\b", "ink");
        }
        return all;
    }
}
