package org.ouzelbook.tracker.exchange.file;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import org.ouzelbook.tracker.domain.Message;

/** A stream that refuses to go on after so many bytes, whatever the file said of its size. */
public class LimitedStream extends FilterInputStream {
    private final long maxBytes;
    private long seen;

    /**
     * Makes the stream.
     *
     * @param in the bytes
     * @param maxBytes the most that may be read
     */
    public LimitedStream(InputStream in, long maxBytes) {
        super(in);
        this.maxBytes = maxBytes;
    }

    @Override
    public int read() throws IOException {
        int read = super.read();
        count(read < 0 ? 0 : 1);
        return read;
    }

    @Override
    public int read(byte[] bytes, int from, int length) throws IOException {
        int read = super.read(bytes, from, length);
        count(Math.max(0, read));
        return read;
    }

    @Override
    public boolean markSupported() {
        return false;
    }

    private void count(int bytes) throws UnreadableFile {
        seen += bytes;
        if (seen > maxBytes) {
            throw new UnreadableFile(Message.of("import.file.tooLarge", maxBytes >> 20));
        }
    }
}
