package org.ouzelbook.tracker.exchange.file;

import java.io.IOException;
import java.nio.file.FileVisitOption;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import org.ouzelbook.tracker.domain.Message;

/**
 * The files that a surveyor named, with folders and zips opened up.
 *
 * <p>A zip is never unpacked to the disk. It is refused if a name in it leads out of it or stands in it twice, if it holds more than 1 000
 * files, if together they would unpack to more than 4 GiB, or if one would unpack to more than 250 times its size (above 50 MiB).
 *
 * @param files what can be read, sorted by name within each folder or zip
 * @param skipped files of a folder or zip that are no tables, with the reason
 */
public record FileSources(List<FileSource> files, List<Message> skipped) {
    private static final int MAX_FILES = 1000;
    private static final int MAX_DEPTH = 4;
    private static final long MAX_ZIP_BYTES = 4L << 30;
    private static final long MAX_RATIO = 250;
    private static final long RATIO_MATTERS_ABOVE = 50L << 20;
    private static final Set<String> READ =
            Set.of("csv", "tsv", "txt", "geojson", "json", "gpx", "xlsx", "xlsm", "xml", "kml");
    /** A KMZ is a zip that holds a KML document. */
    private static final Set<String> ZIPPED = Set.of("zip", "kmz");

    private static final Set<String> NOT_READ_YET = Set.of("xls", "ods", "numbers");

    /** Copies the lists. */
    public FileSources {
        files = List.copyOf(files);
        skipped = List.copyOf(skipped);
    }

    /**
     * Opens up what the surveyor named.
     *
     * @param paths files, folders and zips
     * @return the files in them
     * @throws UnreadableFile if one is not there, cannot be read, or is a zip that must be refused
     */
    public static FileSources of(List<Path> paths) throws UnreadableFile {
        List<FileSource> files = new ArrayList<>();
        List<Message> skipped = new ArrayList<>();
        for (Path path : paths) {
            try {
                if (Files.isDirectory(path)) {
                    addFolder(path, files, skipped);
                } else if (!Files.isReadable(path)) {
                    throw new UnreadableFile(Message.of("import.file.missing", path.toString()));
                } else if (ZIPPED.contains(extension(path.toString()))) {
                    addZip(path, files, skipped);
                } else {
                    addNamed(path, files);
                }
            } catch (UnreadableFile e) {
                throw e;
            } catch (ZipException e) {
                throw new UnreadableFile(Message.of("import.file.brokenZip", path.toString()));
            } catch (IOException e) {
                throw new UnreadableFile(Message.of("import.file.unreadable", path.toString(), reason(e)));
            }
        }
        return new FileSources(files, skipped);
    }

    private static String reason(IOException e) {
        return Optional.ofNullable(e.getMessage()).orElse(e.getClass().getSimpleName());
    }

    private static void addNamed(Path path, List<FileSource> files) throws UnreadableFile {
        String extension = extension(path.toString());
        if (NOT_READ_YET.contains(extension)) {
            throw new UnreadableFile(Message.of("import.file.notReadYet", path.toString(), extension));
        }
        files.add(new FileSource.OnDisk(path.toString(), path));
    }

    private static void addFolder(Path folder, List<FileSource> files, List<Message> skipped) throws IOException {
        List<Path> found;
        try (Stream<Path> walk = Files.walk(folder, MAX_DEPTH, new FileVisitOption[0])) {
            found = walk.filter(Files::isRegularFile)
                    .sorted()
                    .limit(MAX_FILES + 1L)
                    .toList();
        }
        if (found.size() > MAX_FILES) {
            throw new UnreadableFile(Message.of("import.file.tooManyFiles", folder.toString(), MAX_FILES));
        }
        for (Path path : found) {
            Optional<Message> why = whySkipped(path.getFileName().toString(), path.toString());
            if (extension(path.toString()).equals("kmz")) {
                addZip(path, files, skipped);
            } else if (why.isPresent()) {
                skipped.add(why.get());
            } else if (!isHidden(path.getFileName().toString())) {
                files.add(new FileSource.OnDisk(path.toString(), path));
            }
        }
    }

    private static void addZip(Path path, List<FileSource> files, List<Message> skipped) throws IOException {
        try (ZipFile zip = new ZipFile(path.toFile())) {
            List<? extends ZipEntry> entries = new ArrayList<>(Collections.list(zip.entries()));
            entries.removeIf(ZipEntry::isDirectory);
            if (entries.size() > MAX_FILES) {
                throw new UnreadableFile(Message.of("import.file.tooManyFiles", path.toString(), MAX_FILES));
            }
            long total = 0;
            Set<String> names = new HashSet<>();
            for (ZipEntry entry : entries) {
                if (!names.add(entry.getName())) {
                    throw new UnreadableFile(Message.of("import.file.zipTwice", path.toString(), entry.getName()));
                }
                refuseLeadingOut(path, entry.getName());
                refuseBomb(path, entry);
                total += Math.max(0, entry.getSize());
                String plain = entry.getName().replaceAll(".*[/\\\\]", "");
                String shown = path + "!" + CellText.visible(entry.getName());
                Optional<Message> why = whySkipped(plain, shown);
                if (why.isPresent()) {
                    skipped.add(why.get());
                } else if (!isHidden(plain) && !entry.getName().startsWith("__MACOSX/")) {
                    files.add(new FileSource.InZip(shown, path, entry.getName(), Math.max(0, entry.getSize())));
                }
            }
            if (total > MAX_ZIP_BYTES) {
                throw new UnreadableFile(Message.of("import.file.zipTooLarge", path.toString(), MAX_ZIP_BYTES >> 30));
            }
        }
    }

    private static void refuseLeadingOut(Path zip, String name) throws UnreadableFile {
        String plain = name.replace('\\', '/');
        boolean leadsOut = plain.startsWith("/")
                || plain.matches("[A-Za-z]:.*")
                || List.of(plain.split("/", -1)).contains("..");
        if (leadsOut) {
            throw new UnreadableFile(Message.of("import.file.zipLeadsOut", zip.toString(), name));
        }
    }

    private static void refuseBomb(Path zip, ZipEntry entry) throws UnreadableFile {
        long size = entry.getSize();
        long packed = Math.max(1, entry.getCompressedSize());
        if (size > RATIO_MATTERS_ABOVE && size / packed > MAX_RATIO) {
            throw new UnreadableFile(
                    Message.of("import.file.zipBomb", zip.toString(), entry.getName(), size >> 20, MAX_RATIO));
        }
    }

    private static boolean isHidden(String plainName) {
        return plainName.startsWith(".") || plainName.startsWith("~$");
    }

    private static Optional<Message> whySkipped(String plainName, String shown) {
        String extension = extension(plainName);
        if (isHidden(plainName)) {
            return Optional.empty();
        }
        if (NOT_READ_YET.contains(extension)) {
            return Optional.of(Message.of("import.skipped.notReadYet", shown, extension));
        }
        if (plainName.toLowerCase(Locale.ROOT).endsWith("-rejected.csv")) {
            return Optional.of(Message.of("import.skipped.rejectedRows", shown));
        }
        return READ.contains(extension) ? Optional.empty() : Optional.of(Message.of("import.skipped.noTable", shown));
    }

    private static String extension(String name) {
        int dot = name.lastIndexOf('.');
        return dot < 0 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
    }
}
