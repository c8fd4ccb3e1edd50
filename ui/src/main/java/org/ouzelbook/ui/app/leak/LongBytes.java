package org.ouzelbook.ui.app.leak;

import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Bytes that may be many. Those that are written to it are kept in memory while they are few, and then in a file that has no name any
 * more and is gone when it is closed or the program ends, however it ends.
 */
final class LongBytes extends OutputStream {
    private static final int MOST_IN_MEMORY = 4 << 20;
    private static final int BLOCK = 1 << 16;

    /** The bytes that are not in the file. */
    private static final class Last extends ByteArrayOutputStream {
        void copy(int from, ByteBuffer into) {
            into.put(buf, from, Math.min(into.remaining(), count - from));
        }

        ByteBuffer shown() {
            return ByteBuffer.wrap(buf, 0, count);
        }
    }

    private final Last last = new Last();
    private @Nullable FileChannel file;
    private long inFile;

    /** Makes an empty one, to be written to. */
    LongBytes() {}

    private LongBytes(FileChannel file) throws IOException {
        this.file = file;
        this.inFile = file.size();
    }

    /** {@return the bytes of a file, which is not changed} */
    static LongBytes of(Path path) throws IOException {
        return new LongBytes(FileChannel.open(path, StandardOpenOption.READ));
    }

    /** {@return these bytes} */
    static LongBytes of(byte[] bytes) {
        LongBytes kept = new LongBytes();
        kept.last.writeBytes(bytes);
        return kept;
    }

    @Override
    public void write(int one) throws IOException {
        last.write(one);
        putAway();
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
        last.write(bytes, from, length);
        putAway();
    }

    private void putAway() throws IOException {
        if (last.size() < (file == null ? MOST_IN_MEMORY : BLOCK)) {
            return;
        }
        if (file == null) {
            file = FileChannel.open(
                    Files.createTempFile("ouzelbook-", ".part"),
                    StandardOpenOption.READ,
                    StandardOpenOption.WRITE,
                    StandardOpenOption.DELETE_ON_CLOSE);
        }
        ByteBuffer bytes = last.shown();
        while (bytes.hasRemaining()) {
            inFile += file.write(bytes, inFile);
        }
        last.reset();
    }

    long size() {
        return inFile + last.size();
    }

    /**
     * Reads some of the bytes.
     *
     * @param at where the first stands
     * @param into takes them
     * @return how many there were, fewer than asked for at the end
     */
    int read(long at, ByteBuffer into) throws IOException {
        int before = into.position();
        long next = at;
        while (file != null && into.hasRemaining() && next < inFile) {
            int some = file.read(into, next);
            if (some < 0) {
                throw new EOFException("A file became shorter while it was read");
            }
            next += some;
        }
        if (next >= inFile && next < size()) {
            last.copy((int) (next - inFile), into);
        }
        return into.position() - before;
    }

    /** {@return the bytes from the first, of which several can be read at once} */
    InputStream open() {
        return new InputStream() {
            private final ByteBuffer block = ByteBuffer.allocate(BLOCK).limit(0);
            private long at;

            @Override
            public int read() throws IOException {
                return fill() ? block.get() & 0xff : -1;
            }

            @Override
            public int read(byte[] into, int from, int length) throws IOException {
                if (length == 0) {
                    return 0;
                }
                if (!fill()) {
                    return -1;
                }
                int some = Math.min(length, block.remaining());
                block.get(into, from, some);
                return some;
            }

            private boolean fill() throws IOException {
                if (!block.hasRemaining()) {
                    at += LongBytes.this.read(at, block.clear());
                    block.flip();
                }
                return block.hasRemaining();
            }
        };
    }

    /** {@return all of them, which must find room in memory} */
    byte[] all() throws IOException {
        ByteBuffer all = ByteBuffer.allocate(Math.toIntExact(size()));
        read(0, all);
        return all.array();
    }

    /** {@return whether they begin with these, told as letters of one byte} */
    boolean startWith(String start) throws IOException {
        byte[] wanted = start.getBytes(StandardCharsets.ISO_8859_1);
        return Arrays.equals(first(wanted.length), wanted);
    }

    /** {@return so many of the first bytes, or as many as there are} */
    byte[] first(int count) throws IOException {
        ByteBuffer first = ByteBuffer.allocate(count);
        return Arrays.copyOf(first.array(), read(0, first));
    }

    @Override
    public void close() throws IOException {
        if (file != null) {
            file.close();
        }
    }
}
