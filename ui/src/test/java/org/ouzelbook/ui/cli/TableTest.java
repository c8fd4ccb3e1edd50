package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.BufferedReader;
import java.io.PrintWriter;
import java.io.Reader;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class TableTest {
    @Test
    void setsNumbersRightAndWordsLeft() {
        Table table = Table.of("season", "reach", "per km");
        table.add("2025", "lower", "0.6");
        table.add("2026", "weir to bridge", "10.25");

        assertThat(printed(table, false)).isEqualTo("""
                        season  reach           per km
                          2025  lower              0.6
                          2026  weir to bridge   10.25
                        """);
    }

    @Test
    void keepsColumnsWhereACellIsEmptyOrADash() {
        Table table = Table.of("", "count");
        table.add("A", "–");
        table.add("Bø", "12");

        assertThat(printed(table, false)).isEqualTo("    count\nA       –\nBø     12\n");
    }

    @Test
    void printsNothingWithoutRows() {
        assertThat(printed(Table.of("season"), false)).isEmpty();
    }

    @Test
    void marksTheHeadingsOnlyWhereColourIsAllowed() {
        Table table = Table.of("season");
        table.add("2026");

        assertThat(printed(table, true)).startsWith("\u001b[1mseason\u001b[0m");
    }

    @Test
    void refusesARowOfAnotherWidth() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Table.of("season", "reach").add("2026"));
    }

    private static String printed(Table table, boolean colour) {
        StringWriter out = new StringWriter();
        PrintWriter writer = new PrintWriter(out);
        table.print(new Terminal(new BufferedReader(Reader.nullReader()), writer, writer, false, false, colour));
        return out.toString().replace(System.lineSeparator(), "\n");
    }
}
