package org.ouzelbook.tracker.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.ouzelbook.tracker.domain.Message;

/** A second JVM that has a book open and keeps changing it, until it is killed. */
final class OtherProgram implements AutoCloseable {
    private final Process process;

    private OtherProgram(Process process) {
        this.process = process;
    }

    static OtherProgram start(Path book) throws IOException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-XX:TieredStopAtLevel=1",
                        "-XX:+UseSerialGC",
                        "-Xshare:auto",
                        "-cp",
                        System.getProperty("java.class.path"),
                        OtherProgram.class.getName(),
                        book.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        return new OtherProgram(process);
    }

    /** Waits until it has acknowledged its next change; {@return how that change was numbered} */
    int acknowledged() throws IOException {
        InputStream out = process.getInputStream();
        StringBuilder line = new StringBuilder();
        for (int next = out.read(); next != '\n'; next = out.read()) {
            if (next < 0) {
                throw new IOException("It ended after " + line);
            }
            line.append((char) next);
        }
        return Integer.parseInt(line.toString());
    }

    /** Kills it at once; {@return the last change that it had acknowledged, or the one given if no later} */
    int kill(int acknowledged) throws IOException, InterruptedException {
        process.toHandle().destroyForcibly();
        if (!process.waitFor(20, TimeUnit.SECONDS)) {
            throw new IOException("It cannot be killed");
        }
        String rest = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        String whole = rest.substring(0, rest.lastIndexOf('\n') + 1);
        List<String> lines = whole.lines().toList();
        return lines.isEmpty() ? acknowledged : Integer.parseInt(lines.get(lines.size() - 1));
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }

    /** Adds three sightings at a time, and prints the number of each change once it has been told that it is done. */
    public static void main(String[] arguments) {
        try (Book book = Book.open(Path.of(arguments[0]))) {
            int last = book.read(view -> view.sightings(SightingQuery.ALL).size()) / 3;
            for (int nr = last + 1; nr < 100_000; nr++) {
                String label = String.valueOf(nr);
                book.change(Message.of("test.something"), "other", edit -> {
                    edit.river("Arrel Water").ifPresent(river -> {
                        for (int i = 0; i < 3; i++) {
                            edit.add(BookFixture.casual(river, label, 8 + i));
                        }
                    });
                    return null;
                });
                System.out.write((nr + "\n").getBytes(StandardCharsets.UTF_8), 0, label.length() + 1);
                System.out.flush();
            }
        }
    }
}
