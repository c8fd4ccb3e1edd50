package org.ouzelbook.tracker.exchange;

import java.util.Random;

/** Cells as no reader likes them: likely ones, likely ones with a letter changed, and any letters at all. */
final class NastyCells {
    private static final String[] LIKELY = {
        "",
        "",
        "a1",
        "V1",
        "2026-03-16",
        "16/03/2026",
        "3.4.98",
        "mid Apr",
        "31/04/2025",
        "46125",
        "0712",
        "7.12",
        "25:99",
        "8.4",
        "8,35",
        "1,234.5",
        "-3",
        "1e9",
        "999999999999",
        "99999999999999999999",
        "0",
        "none",
        "–",
        "2",
        "pair",
        "dipper",
        "kingfisher; dipper",
        "song; food",
        "LB",
        "ad",
        "f",
        "FF",
        "16",
        "57.05",
        "-3.4",
        "91",
        "Mill Bridge",
        "km 8",
        "yes",
        "B",
        "Baetidae",
        "\u00a0",
        "♀",
        "12/13-4-01",
        "2026-04-13T07:10+01:00/2026-04-13T10:35+01:00",
        "2026-03-29T25:00Z",
        "29/02/2025",
        "00/00/00",
        "9999-12-31",
        "2026-13-45",
        "#REF!",
        "=1+1",
        "NaN",
        "Infinity",
        "0x1F",
        "١٢",
        "½",
        "\uFEFF"
    };

    private NastyCells() {}

    static String cell(Random random) {
        String cell = LIKELY[random.nextInt(LIKELY.length)];
        int way = random.nextInt(10);
        if (way < 2 && !cell.isEmpty()) {
            int at = random.nextInt(cell.length());
            cell = cell.substring(0, at) + letter(random) + cell.substring(at + 1);
        } else if (way == 2) {
            StringBuilder any = new StringBuilder();
            for (int i = random.nextInt(12); i > 0; i--) {
                any.append(letter(random));
            }
            cell = any.toString();
        }
        return '"' + cell.replace("\"", "\"\"") + '"';
    }

    private static char letter(Random random) {
        return (char) (random.nextInt(4) == 0 ? random.nextInt(0xD800) : 1 + random.nextInt(0x7E));
    }
}
