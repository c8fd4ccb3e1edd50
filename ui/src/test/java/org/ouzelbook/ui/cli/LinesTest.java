package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class LinesTest {
    @Test
    void breaksAtBlanksAndSetsTheRestFurtherIn() {
        String[] lines = Lines.of("Note: " + "word ".repeat(40).strip(), 6).split(System.lineSeparator());

        assertThat(lines)
                .hasSize(3)
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
        assertThat(lines[1]).startsWith("      word");
        assertThat(String.join(" ", lines).replaceAll(" +", " "))
                .isEqualTo("Note: " + "word ".repeat(40).strip());
    }

    @Test
    void leavesAWordWholeThatIsLongerThanALine() {
        assertThat(Lines.of("x".repeat(150), 4)).isEqualTo("x".repeat(150));
    }

    @Test
    void keepsTheBlanksBeforeTheFirstWord() {
        assertThat(Lines.of("  – short", 4)).isEqualTo("  – short");
    }
}
