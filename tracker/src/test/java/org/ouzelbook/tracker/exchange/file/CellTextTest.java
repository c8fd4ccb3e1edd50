package org.ouzelbook.tracker.exchange.file;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** OWASP, CSV Injection: cells that begin with =, +, -, @, a tab or a carriage return. */
class CellTextTest {
    @ParameterizedTest
    @ValueSource(
            strings = {"=1+1", "+cmd|' /C calc'!A0", "-2+3", "@SUM(A1)", "\tx", "=HYPERLINK(\"http://x\")", "'=1", "-a"
            })
    void makesFormulasHarmlessAndBringsThemBack(String text) {
        String harmless = CellText.harmless(text);

        assertThat(harmless).startsWith("'");
        assertThat(CellText.original(harmless)).isEqualTo(text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"-", "-3.5", "+50", "", "otter stone +50", "'t Hooge"})
    void leavesTheRestAlone(String text) {
        assertThat(CellText.harmless(text)).isEqualTo(text);
        assertThat(CellText.original(text)).isEqualTo(text);
    }
}
