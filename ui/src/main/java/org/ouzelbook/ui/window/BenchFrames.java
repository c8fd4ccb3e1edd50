package org.ouzelbook.ui.window;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import jdk.jfr.Event;
import jdk.jfr.Name;
import jdk.jfr.Recording;
import jdk.jfr.StackTrace;
import jdk.jfr.consumer.RecordedEvent;
import jdk.jfr.consumer.RecordingFile;

/**
 * Times frames by the clock of Java's own flight recorder, which the window system tells of each beat and of each painting: from the
 * moment when the hand's event comes until the last pixel of the picture with it is painted.
 */
final class BenchFrames {
    private static final String PHASE = "javafx.PulsePhase";

    private final Recording recording = new Recording();

    /** An event of the hand, while it is heard. */
    @Name("ouzelbook.Hand")
    @StackTrace(false)
    static final class Moved extends Event {
        /** Which frame, counted over all views. */
        int number;
    }

    /** Begins; must come before the first window of the program. */
    void start() {
        recording.enable(PHASE).withoutThreshold();
        recording.enable(Moved.class).withoutThreshold();
        recording.start();
    }

    /**
     * Ends, and tells how long each frame took.
     *
     * @param kept a file for what was recorded
     * @return milliseconds by the number of the frame
     */
    Map<Integer, Double> stop(Path kept) throws IOException {
        recording.stop();
        recording.dump(kept);
        recording.close();
        List<RecordedEvent> moves = new ArrayList<>();
        NavigableMap<Instant, Integer> beats = new TreeMap<>();
        Map<Integer, Instant> painted = new HashMap<>();
        for (RecordedEvent event : RecordingFile.readAllEvents(kept)) {
            if (!event.getEventType().getName().equals(PHASE)) {
                moves.add(event);
            } else if (event.getThread().getJavaName().startsWith("QuantumRenderer")) {
                painted.merge(event.getInt("pulseId"), event.getEndTime(), BenchFrames::later);
            } else {
                beats.put(event.getStartTime(), event.getInt("pulseId"));
            }
        }
        moves.sort(Comparator.comparing(RecordedEvent::getStartTime));
        Map<Integer, Double> frames = new HashMap<>();
        for (RecordedEvent move : moves) {
            Map.Entry<Instant, Integer> beat = beats.floorEntry(move.getStartTime());
            Instant end = beat == null
                    ? move.getEndTime()
                    : later(painted.getOrDefault(beat.getValue(), move.getEndTime()), move.getEndTime());
            frames.put(
                    move.getInt("number"),
                    Duration.between(move.getStartTime(), end).toNanos() / 1e6);
        }
        return frames;
    }

    private static Instant later(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }
}
