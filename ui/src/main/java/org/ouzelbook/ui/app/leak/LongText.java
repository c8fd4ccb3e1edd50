package org.ouzelbook.ui.app.leak;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;

/**
 * A text of which a few pages are in memory, wherever it is read. So every search reads a long text as it would a short one, and what is
 * held does not grow with the text. Made by {@link Scratch}.
 */
final class LongText implements CharSequence {
    /** Letters of a page, as a power of two. */
    private static final int PAGE_BITS = 15;

    private static final int PAGE = 1 << PAGE_BITS;

    /** Pages in memory: a search looks back and forth from where it stands. */
    private static final int PAGES = 8;

    /** The longest piece that is copied when it is asked for. */
    private static final int SHORT = 1 << 12;

    private final LongBytes letters;
    private final int length;
    private final Runnable turned;
    private final char[][] pages = new char[PAGES][];
    private final int[] numbers = new int[PAGES];
    private char[] open = new char[0];
    private int openNumber = -1;

    /**
     * @param letters each as two bytes, the higher first
     * @param turned hears whenever a page is read
     */
    LongText(LongBytes letters, Runnable turned) {
        this.letters = letters;
        this.length = Math.toIntExact(letters.size() / Character.BYTES);
        this.turned = turned;
        java.util.Arrays.fill(numbers, -1);
    }

    @Override
    public int length() {
        return length;
    }

    @Override
    public char charAt(int index) {
        int number = index >> PAGE_BITS;
        if (number != openNumber) {
            turnTo(number);
        }
        return open[index & PAGE - 1];
    }

    private void turnTo(int number) {
        int place = number % PAGES;
        if (numbers[place] != number) {
            pages[place] = read(number);
            numbers[place] = number;
            turned.run();
        }
        open = pages[place];
        openNumber = number;
    }

    private char[] read(int number) {
        long at = (long) number * PAGE;
        char[] page = new char[(int) Math.min(PAGE, length - at)];
        ByteBuffer bytes = ByteBuffer.allocate(page.length * Character.BYTES);
        try {
            letters.read(at * Character.BYTES, bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        bytes.flip().asCharBuffer().get(page);
        return page;
    }

    @Override
    public CharSequence subSequence(int start, int end) {
        return end - start > SHORT ? new Piece(this, start, end) : copied(start, end);
    }

    private String copied(int start, int end) {
        StringBuilder copy = new StringBuilder(end - start);
        for (int i = start; i < end; i++) {
            copy.append(charAt(i));
        }
        return copy.toString();
    }

    @Override
    public String toString() {
        return copied(0, length);
    }

    /** A long piece of it. */
    private record Piece(LongText text, int start, int end) implements CharSequence {
        @Override
        public int length() {
            return end - start;
        }

        @Override
        public char charAt(int index) {
            return text.charAt(start + index);
        }

        @Override
        public CharSequence subSequence(int from, int to) {
            return text.subSequence(start + from, start + to);
        }

        @Override
        public String toString() {
            return text.copied(start, end);
        }
    }

    /** {@return what reads a text from its beginning} */
    static Reader reader(CharSequence text) {
        return new Reader() {
            private int at;

            @Override
            public int read(char[] into, int from, int count) {
                int some = Math.min(count, text.length() - at);
                for (int i = 0; i < some; i++) {
                    into[from + i] = text.charAt(at++);
                }
                return some == 0 && count > 0 ? -1 : some;
            }

            @Override
            public void close() {
                // nothing is open
            }
        };
    }
}
