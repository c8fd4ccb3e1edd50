package org.ouzelbook.tracker.exchange;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.exchange.file.FileSource;
import org.ouzelbook.tracker.exchange.river.RiverFile;
import org.ouzelbook.tracker.river.DrawnRiver;
import org.ouzelbook.tracker.river.RiverAnswers;
import org.ouzelbook.tracker.river.UnderstoodRiver;
import org.ouzelbook.tracker.river.UnderstoodRivers;
import org.ouzelbook.tracker.store.BookEdit;

/** The river files of an import. They go in before every table; a river that the book has is never changed by them. */
final class RiverSources {
    private static final Set<String> EXTENSIONS = Set.of("geojson", "json", "gpx", "kml");

    private final List<String> names;
    private final RiverFile drawn;
    private final UnderstoodRivers understood;

    private RiverSources(List<String> names, RiverFile drawn, RiverAnswers answers) {
        this.names = names;
        this.drawn = drawn;
        this.understood = UnderstoodRivers.of(drawn.rivers(), answers);
    }

    /** {@return whether a file is read as a river, by the end of its name} */
    static boolean isRiver(FileSource source) {
        String name = source.plainName();
        return EXTENSIONS.contains(name.substring(name.lastIndexOf('.') + 1));
    }

    /** {@return the rivers of these files; a file in a zip is unpacked for the while} */
    static RiverSources of(List<FileSource> sources, RiverAnswers answers) throws IOException {
        Path folder = Files.createTempDirectory("ouzelbook-rivers-");
        try {
            List<Path> paths = new ArrayList<>();
            for (FileSource source : sources) {
                paths.add(source instanceof FileSource.OnDisk file ? file.path() : unpacked(source, folder));
            }
            List<String> names = sources.stream().map(FileSource::name).toList();
            return new RiverSources(names, RiverFile.read(paths), answers);
        } finally {
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path path : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(path);
                }
            }
        }
    }

    private static Path unpacked(FileSource source, Path folder) throws IOException {
        Path target = folder.resolve(source.plainName());
        try (InputStream in = source.open()) {
            Files.copy(in, target, StandardCopyOption.REPLACE_EXISTING);
        }
        return target;
    }

    /** Adds the rivers that the book does not have. What is open is asked only if it concerns one of these. */
    List<RiverResult> into(BookEdit edit, Findings findings) {
        drawn.problems().forEach(problem -> findings.add(Finding.PROBLEM, told(problem)));
        drawn.remarks().forEach(remark -> findings.add(Finding.WARNING, told(remark)));
        boolean allKnown = drawn.rivers().stream()
                .map(DrawnRiver::name)
                .allMatch(name -> edit.river(name).isPresent());
        if (!understood.questions().isEmpty() && !allKnown) {
            understood.questions().forEach(question -> ask(question, findings));
            return List.of();
        }
        List<RiverResult> results = new ArrayList<>();
        for (UnderstoodRiver river : understood.rivers()) {
            boolean known = edit.river(river.river().name()).isPresent();
            if (!known) {
                edit.add(river.river());
                edit.add(river.line());
            } else if (!hasLine(edit, river)) {
                findings.add(
                        Finding.WARNING,
                        told(Message.of("import.river.otherLine", river.river().name())));
            }
            results.add(new RiverResult(river.river().name(), river.lengthMetres() / 1000, !known));
        }
        return results;
    }

    /** An import has no answer to which end of a track is its mouth: it is told instead what to do. */
    private void ask(Message question, Findings findings) {
        if (question.key().equals("river.walked")) {
            Message walked = Message.of("import.river.walked", question.facts().toArray());
            findings.add(Finding.PROBLEM, told(walked));
        } else {
            findings.add(Finding.QUESTION, told(question));
        }
    }

    private static boolean hasLine(BookEdit edit, UnderstoodRiver river) {
        Optional<RiverLine> newest =
                edit.river(river.river().name()).flatMap(known -> edit.network().line(known.id()));
        return newest.isPresent() && newest.get().points().equals(river.line().points());
    }

    private Problem told(Message message) {
        return new Problem(file(message), 0, "", "", message);
    }

    /** {@return the file that a message speaks of, which its first fact then tells; else all of them} */
    private String file(Message message) {
        if (!message.key().startsWith("river.file.")) {
            return String.join(", ", names);
        }
        String plain = String.valueOf(message.facts().get(0));
        return names.stream()
                .filter(name -> name.matches("(.*[!/\\\\])?" + Pattern.quote(plain)))
                .findFirst()
                .orElse(plain);
    }
}
