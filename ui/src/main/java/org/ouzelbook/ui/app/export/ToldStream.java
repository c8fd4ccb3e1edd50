package org.ouzelbook.ui.app.export;

import java.io.IOException;
import java.io.OutputStream;
import java.util.concurrent.CancellationException;
import org.ouzelbook.tracker.domain.Progress;

/** Tells how many thousand bytes were written, and stops if asked to. */
final class ToldStream extends OutputStream {
    private static final int THOUSAND = 1000;

    private final OutputStream out;
    private final Progress progress;
    private long written;

    ToldStream(OutputStream out, Progress progress) {
        this.out = out;
        this.progress = progress;
    }

    @Override
    public void write(int one) throws IOException {
        out.write(one);
        tell(1);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
        out.write(bytes, from, length);
        tell(length);
    }

    private void tell(int more) {
        boolean another = written / THOUSAND != (written + more) / THOUSAND;
        written += more;
        if (another && !progress.goOn(written / THOUSAND, 0)) {
            throw new CancellationException("Stopped while a file was written");
        }
    }

    @Override
    public void flush() throws IOException {
        out.flush();
    }

    @Override
    public void close() throws IOException {
        out.close();
    }
}
