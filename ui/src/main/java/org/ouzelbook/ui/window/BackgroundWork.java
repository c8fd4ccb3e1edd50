package org.ouzelbook.ui.window;

import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.application.Platform;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.ouzelbook.tracker.domain.Progress;

/** Work on one thread beside the window's own. */
final class BackgroundWork implements Work, AutoCloseable {
    private final ExecutorService thread = Executors.newSingleThreadExecutor(job -> {
        Thread worker = new Thread(job, "work");
        worker.setDaemon(true);
        return worker;
    });
    private final ReadOnlyStringWrapper doing = new ReadOnlyStringWrapper("");
    private final ReadOnlyDoubleWrapper share = new ReadOnlyDoubleWrapper(-1);
    private final Queue<AtomicBoolean> stops = new ConcurrentLinkedQueue<>();

    /** {@return what is being done now; blank if nothing is} */
    ReadOnlyStringProperty doing() {
        return doing.getReadOnlyProperty();
    }

    /** {@return the share that is done, 0 to 1; negative if not known} */
    ReadOnlyDoubleProperty share() {
        return share.getReadOnlyProperty();
    }

    /** Asks everything that was started and is not done to stop, and to leave all as it was. */
    void stop() {
        stops.forEach(stop -> stop.set(true));
    }

    @Override
    public <T> void start(String what, Function<Progress, T> job, Consumer<T> done, Consumer<Throwable> failed) {
        if (thread.isShutdown()) {
            return;
        }
        AtomicBoolean stop = new AtomicBoolean();
        stops.add(stop);
        thread.execute(() -> {
            onWindow(() -> show(what, -1));
            try {
                T result = job.apply((part, whole) -> goesOn(stop, part, whole));
                onWindow(() -> {
                    over(stop);
                    try {
                        done.accept(result);
                    } catch (RuntimeException e) {
                        // What cannot be shown is told like what cannot be worked out: nobody is left waiting.
                        failed.accept(e);
                    }
                });
            } catch (RuntimeException | Error e) {
                onWindow(() -> {
                    over(stop);
                    failed.accept(e);
                });
            }
        });
    }

    private boolean goesOn(AtomicBoolean stop, long part, long whole) {
        if (whole > 0) {
            onWindow(() -> share.set((double) part / whole));
        }
        return !stop.get();
    }

    private void over(AtomicBoolean stop) {
        stops.remove(stop);
        show("", -1);
    }

    private void show(String what, double part) {
        doing.set(what);
        share.set(part);
    }

    private static void onWindow(Runnable news) {
        Platform.runLater(news);
    }

    /** Lets no further work start: what is asked for later is passed over, as nobody is there to see it. */
    @Override
    public void close() {
        stop();
        thread.shutdown();
    }
}
