package org.ouzelbook.ui.app.leak;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/**
 * Writes a file for people who may know where birds nest, which rings they wear and who was out. What is written must say of itself
 * that it is private.
 */
public final class PrivateFile {
    private PrivateFile() {}

    /** What is to stand in a file. */
    @FunctionalInterface
    public interface Content {
        /**
         * Writes it.
         *
         * @param out where to
         * @throws IOException if it cannot be written
         */
        void write(OutputStream out) throws IOException;
    }

    /**
     * Writes it, whole or not at all.
     *
     * @param file where to; one that is there is written over
     * @param content writes what is to stand in it
     * @throws IOException if it cannot be written
     */
    public static void write(Path file, Content content) throws IOException {
        WholeFile.write(file, content);
    }

    /**
     * Writes it, whole or not at all.
     *
     * @param file where to; one that is there is written over
     * @param content what is to stand in it
     * @throws IOException if it cannot be written
     */
    public static void write(Path file, byte[] content) throws IOException {
        WholeFile.write(file, out -> out.write(content));
    }

    /**
     * Writes a text, whole or not at all.
     *
     * @param file where to; one that is there is written over
     * @param text what is to stand in it, in UTF-8
     * @throws IOException if it cannot be written
     */
    public static void write(Path file, String text) throws IOException {
        write(file, text.getBytes(StandardCharsets.UTF_8));
    }
}
