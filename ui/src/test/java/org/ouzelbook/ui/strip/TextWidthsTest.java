package org.ouzelbook.ui.strip;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.FontRenderContext;
import java.io.IOException;
import java.io.InputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TextWidthsTest {
    /** Measured by the font machinery of the JDK with the font that the program brings along. */
    @ParameterizedTest
    @ValueSource(strings = {"Arrel Water", "km from the mouth", "28 Feb–1 Mar", "Çà Ñañá ×½", "confirmed"})
    void neverGivesTooLittleRoomAndNotMuchTooMuch(String text) throws IOException, FontFormatException {
        try (InputStream in = Shape.class.getResourceAsStream("SourceSans3-Regular.ttf")) {
            Font font = Font.createFont(Font.TRUETYPE_FONT, in).deriveFont((float) Shape.Lettering.BODY.size());
            double measured = font.getStringBounds(text, new FontRenderContext(null, true, true))
                    .getWidth();

            assertThat(TextWidths.of(text, Shape.Lettering.BODY)).isBetween(measured - 0.1, 1.35 * measured);
        }
    }

    @Test
    void cutsWithAnEllipsisOnlyWhatIsTooLong() {
        assertThat(TextWidths.cut("Sorn Beck", Shape.Lettering.STRONG, 200)).isEqualTo("Sorn Beck");
        assertThat(TextWidths.cut("Water of the Nine Bridges", Shape.Lettering.STRONG, 90))
                .endsWith("…")
                .startsWith("Water");
    }
}
