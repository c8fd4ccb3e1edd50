package org.ouzelbook.tracker.exchange.darwin;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.ouzelbook.tracker.exchange.file.FileSource;
import org.ouzelbook.tracker.exchange.file.TableFile;
import org.ouzelbook.tracker.exchange.file.UnreadableFile;

/**
 * An archive among the files of an import: described by a meta.xml, or the bare files {@code event} and {@code occurrence} whose
 * headers are terms of Darwin Core.
 *
 * @param name the name that problems are told by
 * @param files its files
 * @param parts all files of the import that belong to it, the description too
 */
public record ReadArchive(String name, List<ArchiveFile> files, Set<FileSource> parts) {
    /** Copies the collections. */
    public ReadArchive {
        files = List.copyOf(files);
        parts = Set.copyOf(parts);
    }

    /**
     * {@return whether a file describes the files beside it}
     *
     * @param source a file
     */
    public static boolean isMeta(FileSource source) {
        return bareName(source).equals("meta.xml");
    }

    private static String bareName(FileSource source) {
        return source.plainName().replaceFirst(".*!", "");
    }

    /**
     * {@return whether a file is the description of an archive or of its data set}
     *
     * @param source a file
     */
    public static boolean isDescription(FileSource source) {
        return source.plainName().endsWith(".xml");
    }

    /**
     * {@return the archive that a meta.xml describes}
     *
     * @param meta the meta.xml
     * @param all all files of the import
     * @throws UnreadableFile if it is broken, or describes a file that is not beside it
     * @throws IOException if it cannot be read
     */
    public static ReadArchive described(FileSource meta, List<FileSource> all) throws IOException {
        Map<String, FileSource> beside = new HashMap<>();
        Set<FileSource> parts = new HashSet<>();
        for (FileSource source : all) {
            if (folder(source).equals(folder(meta))) {
                beside.put(source.name().substring(folder(source).length()), source);
                if (isDescription(source)) {
                    parts.add(source);
                }
            }
        }
        List<ArchiveFile> files = MetaReader.read(meta, name -> Optional.ofNullable(beside.get(name)));
        files.forEach(file -> parts.add(file.source()));
        return new ReadArchive(meta.name(), files, parts);
    }

    /**
     * {@return the archive of a folder that holds its files without a description; empty if a file is no such}
     *
     * @param first a file that may be its core
     * @param all all files of the import
     * @throws IOException if one cannot be read
     */
    public static Optional<ReadArchive> bare(FileSource first, List<FileSource> all) throws IOException {
        List<ArchiveFile> files = new ArrayList<>();
        for (FileSource source : all) {
            if (folder(source).equals(folder(first))) {
                bareFile(source).ifPresent(files::add);
            }
        }
        boolean hasFirst = files.stream().anyMatch(file -> file.source().equals(first));
        return hasFirst
                ? Optional.of(new ReadArchive(
                        first.name(),
                        files,
                        new HashSet<>(files.stream().map(ArchiveFile::source).toList())))
                : Optional.empty();
    }

    private static Optional<ArchiveFile> bareFile(FileSource source) throws IOException {
        String rowType = bareRowType(source);
        if (rowType.isEmpty()) {
            return Optional.empty();
        }
        TableFile table = TableFile.of(source, ReadArchive::terms);
        Map<String, Integer> columns = new HashMap<>();
        for (int i = 0; i < table.header().size(); i++) {
            columns.putIfAbsent(MetaReader.bare(table.header().get(i)), i);
        }
        boolean needed = rowType.equals("Occurrence")
                ? columns.containsKey("occurrenceID") || columns.containsKey("basisOfRecord")
                : columns.containsKey("eventID");
        if (!needed) {
            return Optional.empty();
        }
        return Optional.of(new ArchiveFile(
                source,
                rowType,
                table.bytes().encoding(),
                table.separator(),
                Optional.of('"'),
                Math.toIntExact(table.headerRow()),
                columns.getOrDefault("eventID", -1),
                columns,
                Map.of()));
    }

    private static int terms(List<String> cells) {
        return (int) cells.stream()
                .map(MetaReader::bare)
                .filter(cell -> cell.matches("[a-z]+([A-Z][A-Za-z]*)+"))
                .count();
    }

    private static String bareRowType(FileSource source) {
        String stem = bareName(source).replaceFirst("\\.(txt|csv|tsv)$", "");
        return switch (stem) {
            case "event", "events" -> "Event";
            case "occurrence", "occurrences" -> "Occurrence";
            case "humboldt" -> "ecoEvent";
            case "emof", "extendedmeasurementorfact" -> "ExtendedMeasurementOrFact";
            default -> "";
        };
    }

    private static String folder(FileSource source) {
        String name = source.name();
        int end = Math.max(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')), name.lastIndexOf('!'));
        return name.substring(0, end + 1);
    }

    /** {@return the files whose rows are of a type} */
    List<ArchiveFile> of(String rowType) {
        return files.stream().filter(file -> file.rowType().equals(rowType)).toList();
    }
}
