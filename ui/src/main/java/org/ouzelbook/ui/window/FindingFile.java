package org.ouzelbook.ui.window;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.exchange.export.CsvFiles;
import org.ouzelbook.tracker.exchange.export.DataTable;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.leak.Leak;
import org.ouzelbook.ui.app.leak.LeakCheck;
import org.ouzelbook.ui.app.leak.PrivateFile;
import org.ouzelbook.ui.app.leak.PublicFile;
import org.ouzelbook.ui.strip.Ink;
import org.ouzelbook.ui.strip.IntervalFigure.Figure;
import org.ouzelbook.ui.strip.Palette;
import org.ouzelbook.ui.strip.Picture;
import org.ouzelbook.ui.strip.Point;
import org.ouzelbook.ui.strip.Shape;
import org.ouzelbook.ui.strip.Shape.Anchor;
import org.ouzelbook.ui.strip.Shape.Lettering;
import org.ouzelbook.ui.strip.SvgPen;

/**
 * A finding that becomes a file: its picture (SVG, PNG) or its table (CSV, with every cell harmless to a spreadsheet). It is looked
 * through like everything that is meant for everybody; what tells of nests or ringed birds says in its name and its picture that it is
 * private instead.
 */
final class FindingFile {
    private static final int LEAKS_SHOWN = 6;
    private static final double LINE = 26;

    private final Topic topic;
    private final Path file;
    private final byte[] content;
    /** What a stranger could read of it; the letters of a PNG are shapes. */
    private final byte[] readable;

    private FindingFile(Topic topic, Path file, byte[] content, byte[] readable) {
        this.topic = topic;
        this.file = file;
        this.content = content;
        this.readable = readable;
    }

    /**
     * {@return the file of a finding; empty where there is nothing to write}
     *
     * <p>A PNG is drawn at once, on the window's thread.
     *
     * @param topic what was asked
     * @param sheet the answer
     * @param wanted where to; its ending says what: svg, png or csv
     * @throws IOException if the picture cannot be drawn
     */
    static Optional<FindingFile> of(Topic topic, FindingSheet sheet, Path wanted) throws IOException {
        String name = String.valueOf(wanted.getFileName()).toLowerCase(Locale.ROOT);
        Path file = topic.isPrivate() ? marked(wanted) : wanted;
        if (!name.endsWith(".svg") && !name.endsWith(".png")) {
            if (sheet.lines().isEmpty()) {
                return Optional.empty();
            }
            byte[] table = CsvFiles.text(table(topic.term(), sheet)).getBytes(StandardCharsets.UTF_8);
            return Optional.of(new FindingFile(topic, file, table, table));
        }
        if (sheet.figure().isEmpty()) {
            return Optional.empty();
        }
        Picture drawn = sheet.figure().map(Figure::picture).orElseThrow();
        Picture picture = topic.isPrivate() ? marked(drawn) : drawn;
        byte[] svg = SvgPen.write(picture, Palette.LIGHT, "finding").getBytes(StandardCharsets.UTF_8);
        return Optional.of(new FindingFile(
                topic, file, name.endsWith(".svg") ? svg : PictureFile.png(picture, Palette.LIGHT), svg));
    }

    /**
     * Writes it, unless it would tell everybody what must stay private.
     *
     * @param book knows what must stay private
     * @return what came of it, in words
     * @throws UncheckedIOException if it cannot be written
     */
    String write(Book book) {
        try {
            if (topic.isPrivate()) {
                PrivateFile.write(file, content);
                return Texts.of("window.findings.savedPrivate", file);
            }
            LeakCheck check = book.read(view -> LeakCheck.of(view, false));
            List<Leak> leaks = new ArrayList<>(check.in("finding" + (readable == content ? "" : ".svg"), readable));
            if (leaks.isEmpty()) {
                leaks.addAll(PublicFile.write(check, file, content));
            }
            return leaks.isEmpty()
                    ? Texts.of("window.findings.saved", file)
                    : stopped("window.findings.saveStopped", leaks);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * {@return that something was not written, and what it would have told}
     *
     * @param key of the words
     * @param leaks what was found
     */
    static String stopped(String key, List<Leak> leaks) {
        return Texts.of(key)
                + leaks.stream()
                        .limit(LEAKS_SHOWN)
                        .map(leak -> "\n" + leak.place() + ": " + Texts.of(leak.what()))
                        .collect(Collectors.joining());
    }

    private static Path marked(Path wanted) {
        String name = String.valueOf(wanted.getFileName());
        String mark = Texts.of("window.findings.privateMark");
        if (name.toLowerCase(Locale.ROOT).contains(mark)) {
            return wanted;
        }
        int dot = name.lastIndexOf('.');
        return wanted.resolveSibling(
                dot < 0 ? name + "-" + mark : name.substring(0, dot) + "-" + mark + name.substring(dot));
    }

    private static Picture marked(Picture picture) {
        List<Shape> shapes = new ArrayList<>(picture.shapes());
        String words = Texts.of("window.findings.private");
        shapes.add(new Shape.Label(
                new Point(0, picture.height() + LINE - 6), words, Anchor.START, Lettering.SMALL, Ink.INK));
        return new Picture(
                picture.width(), picture.height() + LINE, shapes, picture.title(), words + " " + picture.description());
    }

    private static DataTable table(String name, FindingSheet sheet) {
        return new DataTable(
                name,
                sheet.columns(),
                sheet.lines().stream()
                        .map(line ->
                                line.cells().stream().map(FindingFile::cell).toList())
                        .toList());
    }

    /** A number stays a number, whatever its sign; "–" is nothing. */
    private static Object cell(String text) {
        if (text.equals("–")) {
            return "";
        }
        if (text.matches("[0-9]{1,9}")) {
            return Integer.valueOf(text);
        }
        return text.matches("-?[0-9]{1,9}\\.[0-9]+") ? (Object) Double.valueOf(text) : text;
    }
}
