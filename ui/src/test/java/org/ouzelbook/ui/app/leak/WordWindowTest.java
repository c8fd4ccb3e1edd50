package org.ouzelbook.ui.app.leak;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.ouzelbook.ui.app.leak.WordWindow.Word;

class WordWindowTest {
    /** Letters and numbers of every kind in Unicode, as Java’s own search finds them. */
    private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}]+");

    @Test
    void findsTheWordsThatTheSearchForLettersAndNumbersFinds() {
        Random random = new Random(11);
        for (int text = 0; text < 2_000; text++) {
            StringBuilder signs = new StringBuilder();
            for (int i = 0; i < 40; i++) {
                int most = random.nextBoolean() ? 0x250 : Character.MAX_CODE_POINT;
                signs.appendCodePoint(random.nextInt(3) == 0 ? ' ' : random.nextInt(most));
            }
            String given = signs.toString();
            List<String> wanted =
                    WORD.matcher(given).results().map(MatchResult::group).toList();
            assertThat(WordWindow.all(given).stream().map(Word::written).toList())
                    .isEqualTo(wanted);
        }
    }

    @Test
    void knowsWhereAWordStands() {
        Word word = WordWindow.all("a — Ödön’s ½").get(1);
        assertThat(word).isEqualTo(new Word("Ödön", "ödön", 4, 8));
    }
}
