package org.ouzelbook.ui.strip;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Contrast as W3C, Web Content Accessibility Guidelines 2.1, success criterion 1.4.3: at least 4.5 to 1 for text. */
class PaletteTest {
    static List<Arguments> textOnGround() {
        return List.of(Palette.LIGHT, Palette.DARK).stream()
                .flatMap(palette -> List.of(
                        Arguments.of(palette, Ink.INK, Ink.PAPER),
                        Arguments.of(palette, Ink.MUTED, Ink.PAPER),
                        Arguments.of(palette, Ink.MUTED, Ink.UNWALKED),
                        Arguments.of(palette, Ink.INK, Ink.COLUMN),
                        Arguments.of(palette, Ink.INK, Ink.PROBABLE),
                        Arguments.of(palette, Ink.INK, Ink.POSSIBLE),
                        Arguments.of(palette, Ink.ON_CONFIRMED, Ink.CONFIRMED),
                        Arguments.of(palette, Ink.CONFIRMED, Ink.PAPER))
                        .stream())
                .toList();
    }

    @ParameterizedTest(name = "{1} on {2}")
    @MethodSource("textOnGround")
    void keepsTextLegible(Palette palette, Ink text, Ink ground) {
        double one = luminance(palette.colour(text));
        double other = luminance(palette.colour(ground));

        assertThat((Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05))
                .isGreaterThanOrEqualTo(4.5);
    }

    private static double luminance(String colour) {
        double[] share = new double[3];
        for (int i = 0; i < 3; i++) {
            double value = Integer.parseInt(colour.substring(1 + 2 * i, 3 + 2 * i), 16) / 255.0;
            share[i] = value <= 0.03928 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
        }
        return 0.2126 * share[0] + 0.7152 * share[1] + 0.0722 * share[2];
    }

    @Test
    void agreesWithTheStyleSheetOfTheWindow() throws IOException {
        String css = Files.readString(Path.of("src/main/resources/org/ouzelbook/ui/window/window.css"));

        for (Ink ink : List.of(
                Ink.PAPER, Ink.INK, Ink.MUTED, Ink.GRID, Ink.WATER, Ink.STREAM, Ink.CONFIRMED, Ink.ON_CONFIRMED)) {
            String name = ink.name().toLowerCase(Locale.ROOT).replace('_', '-');
            assertThat(css).contains("-" + name + ": " + Palette.LIGHT.colour(ink) + ";");
        }
    }
}
