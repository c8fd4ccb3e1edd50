package org.ouzelbook.ui.app.leak;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.Writer;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Room for what one part of a file is unpacked, decoded and rewritten to; all of it is given back at the end. */
final class Scratch implements Closeable {
    private static final Charset WINDOWS = Charset.forName("windows-1252");
    private static final int BLOCK = 1 << 13;

    /** The longest text that is kept in memory. */
    private static final int SHORT = 1 << 20;

    private final Runnable working;
    private final Deque<LongBytes> kept = new ArrayDeque<>();

    /**
     * @param working hears now and then that the work goes on, and may throw to stop it
     */
    Scratch(Runnable working) {
        this.working = working;
    }

    /** {@return room for bytes} */
    LongBytes bytes() {
        LongBytes room = new LongBytes();
        kept.push(room);
        return room;
    }

    @Override
    public void close() throws IOException {
        while (!kept.isEmpty()) {
            kept.pop().close();
        }
    }

    /** A text that is being written. */
    private final class Writing {
        private final StringBuilder last = new StringBuilder();
        private LongBytes before = new LongBytes();

        void add(CharSequence text, int from, int to) throws IOException {
            for (int at = from; at < to; at += BLOCK) {
                last.append(text, at, Math.min(to, at + BLOCK));
                if (last.length() > SHORT) {
                    putAway();
                }
            }
        }

        private void putAway() throws IOException {
            if (before.size() == 0) {
                before = bytes();
            }
            ByteBuffer letters = ByteBuffer.allocate(last.length() * Character.BYTES);
            letters.asCharBuffer().put(last.toString());
            before.write(letters.array());
            last.setLength(0);
            working.run();
        }

        CharSequence done() throws IOException {
            if (before.size() == 0) {
                return last.toString();
            }
            putAway();
            return new LongText(before, working);
        }
    }

    /** {@return the text of a file, in UTF-16 if it says so, else in UTF-8 if it can be, else in the old letters of Windows} */
    CharSequence decoded(LongBytes bytes) throws IOException {
        if (bytes.startWith("\u00ff\u00fe") || bytes.startWith("\u00fe\u00ff")) {
            return decoded(bytes, StandardCharsets.UTF_16);
        }
        try {
            return decoded(bytes, StandardCharsets.UTF_8.newDecoder());
        } catch (CharacterCodingException e) {
            return decoded(bytes, WINDOWS);
        }
    }

    /** {@return the text of a file, with a sign in place of what is no letter} */
    CharSequence decoded(LongBytes bytes, Charset letters) throws IOException {
        try (InputStream in = bytes.open()) {
            return read(new InputStreamReader(in, letters));
        }
    }

    private CharSequence decoded(LongBytes bytes, CharsetDecoder letters) throws IOException {
        try (InputStream in = bytes.open()) {
            return read(new InputStreamReader(in, letters));
        }
    }

    private CharSequence read(Reader reader) throws IOException {
        Writing text = new Writing();
        char[] block = new char[BLOCK];
        for (int some = reader.read(block); some >= 0; some = reader.read(block)) {
            text.add(new String(block, 0, some), 0, some);
        }
        return text.done();
    }

    /** What writes a text. */
    @FunctionalInterface
    interface Text {
        void write(Writer out) throws IOException;
    }

    /** {@return what was written} */
    CharSequence written(Text text) throws IOException {
        Writing writing = new Writing();
        text.write(new Writer() {
            @Override
            public void write(char[] letters, int from, int count) throws IOException {
                writing.add(CharBuffer.wrap(letters), from, from + count);
            }

            @Override
            public void flush() {
                // nothing waits
            }

            @Override
            public void close() {
                // nothing is open
            }
        });
        return writing.done();
    }

    /** {@return the text with something else wherever it matches} */
    CharSequence replaced(CharSequence text, Pattern pattern, Function<MatchResult, String> other) throws IOException {
        Matcher match = pattern.matcher(text);
        if (!match.find()) {
            return text;
        }
        Writing written = new Writing();
        int from = 0;
        do {
            written.add(text, from, match.start());
            String instead = other.apply(match);
            written.add(instead, 0, instead.length());
            from = match.end();
        } while (match.find());
        written.add(text, from, text.length());
        return written.done();
    }

    /** {@return the text with something else wherever it matches, which it does nowhere without this sign} */
    CharSequence replaced(CharSequence text, char sign, Pattern pattern, Function<MatchResult, String> other)
            throws IOException {
        return Spelling.holds(text, sign) ? replaced(text, pattern, other) : text;
    }

    /** {@return every place of a text that matches, each on a line of its own} */
    CharSequence matches(CharSequence text, Pattern pattern) throws IOException {
        Writing written = new Writing();
        Matcher match = pattern.matcher(text);
        while (match.find()) {
            written.add(text, match.start(), match.end());
            written.add("\n", 0, 1);
        }
        return written.done();
    }
}
