package org.ouzelbook.ui.app.leak;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A text that lies on the disk reads as the same text in memory does, letter by letter and match by match. */
class LongTextTest {
    private static final int LETTERS = 3_000_001;
    private static final Pattern WORDS = Pattern.compile("(?<![a-c])([a-c]+)\\s*(?:([^ -~])|\\b)");

    /** Words, lines, umlauts, and letters of two characters each. */
    private static String text(long seed) {
        Random random = new Random(seed);
        StringBuilder text = new StringBuilder();
        while (text.length() < LETTERS) {
            switch (random.nextInt(8)) {
                case 0 -> text.append(' ');
                case 1 -> text.append('\n');
                case 2 -> text.append('ü');
                case 3 -> text.appendCodePoint(0x1F426);
                default -> text.append((char) ('a' + random.nextInt(6)));
            }
        }
        return text.toString();
    }

    private static LongBytes bytes(String text) throws IOException {
        LongBytes bytes = new LongBytes();
        bytes.write(text.getBytes(StandardCharsets.UTF_8));
        return bytes;
    }

    @Test
    void readsAsTheSameTextInMemory() throws IOException {
        String text = text(1);
        try (LongBytes bytes = bytes(text);
                Scratch scratch = new Scratch(() -> {})) {
            CharSequence paged = scratch.decoded(bytes);

            assertThat(paged).isInstanceOf(LongText.class).hasSameSizeAs(text);
            assertThat(paged.toString().equals(text)).isTrue();
            assertThat(paged.subSequence(32_760, 40_000).subSequence(5, 6_000).toString())
                    .isEqualTo(text.substring(32_765, 38_760));
            Matcher here = WORDS.matcher(paged);
            Matcher there = WORDS.matcher(text);
            while (there.find()) {
                assertThat(here.find()).isTrue();
                if (here.start() != there.start() || !here.group().equals(there.group())) {
                    assertThat(here.start()).isEqualTo(there.start());
                    assertThat(here.group()).isEqualTo(there.group());
                }
            }
            assertThat(here.find()).isFalse();
        }
    }

    @Test
    void isRewrittenAsAShortTextIs() throws IOException {
        String text = text(2);
        try (LongBytes bytes = bytes(text);
                Scratch scratch = new Scratch(() -> {})) {
            CharSequence rewritten = scratch.replaced(scratch.decoded(bytes), WORDS, word -> "<" + word.group(1) + ">");

            assertThat(rewritten).isInstanceOf(LongText.class);
            assertThat(rewritten.toString().equals(WORDS.matcher(text).replaceAll("<$1>")))
                    .isTrue();
        }
    }

    @Test
    void bytesAreReadFromAnyPlaceAndSeveralTimesAtOnce() throws IOException {
        byte[] all = new byte[9_000_007];
        new Random(3).nextBytes(all);
        try (LongBytes bytes = new LongBytes()) {
            bytes.write(all, 0, 5_000_000);
            bytes.write(all[5_000_000]);
            bytes.write(all, 5_000_001, all.length - 5_000_001);
            try (InputStream one = bytes.open();
                    InputStream other = bytes.open()) {
                one.skipNBytes(4_194_300);
                assertThat(other.readNBytes(10)).isEqualTo(Arrays.copyOf(all, 10));
                assertThat(one.readNBytes(10)).isEqualTo(Arrays.copyOfRange(all, 4_194_300, 4_194_310));
            }
            assertThat(Arrays.equals(bytes.all(), all)).isTrue();
        }
    }

    @Test
    void leavesNothingOnTheDiskAndCanBeStopped() throws IOException {
        Set<Path> before = unnamed();
        String text = text(4);
        try (LongBytes bytes = bytes(text + text);
                Scratch scratch = new Scratch(() -> {
                    throw new CancellationException("enough");
                })) {
            assertThatThrownBy(() -> scratch.decoded(bytes)).isInstanceOf(CancellationException.class);
        }
        assertThat(unnamed()).isEqualTo(before);
    }

    private static Set<Path> unnamed() throws IOException {
        try (Stream<Path> files = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
            return files.filter(file -> file.getFileName().toString().matches("ouzelbook-.*\\.part"))
                    .collect(Collectors.toSet());
        }
    }
}
