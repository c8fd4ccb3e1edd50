package org.ouzelbook.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The start script for POSIX shells, run with a Java that only writes down what it was asked to do. */
class LauncherTest {
    private static final String RECORDER = "#!/bin/sh\nfor word in \"$@\"; do echo \"$word\"; done\n";

    @TempDir
    private Path folder;

    private Path program;
    private Path java;

    @BeforeEach
    void installInAFolderWithABlank() throws IOException {
        program = folder.toRealPath().resolve("my programs/ouzelbook");
        Files.createDirectories(program.resolve("bin"));
        Files.copy(Path.of("src/launcher/bin/ouzelbook"), program.resolve("bin/ouzelbook"));
        java = folder.resolve("jdk");
        Files.createDirectories(java.resolve("bin"));
        write(java.resolve("bin/java"), RECORDER);
    }

    @Test
    void keepsTheWindowsModulesAwayFromOtherCommands() throws Exception {
        List<String> words = start(program.resolve("bin/ouzelbook"), "map", "my book.mv.db", "--why", "B");

        assertThat(words).doesNotContain("--module-path");
        assertThat(words)
                .endsWith("-cp", program + "/lib/*", "org.ouzelbook.ui.Main", "map", "my book.mv.db", "--why", "B");
    }

    @Test
    void bringsTheWindowsModulesWhenTheWindowIsAskedFor() throws Exception {
        assertThat(start(program.resolve("bin/ouzelbook"), "open", "book"))
                .containsSequence("--module-path", program + "/fx", "--add-modules", "javafx.controls");
        assertThat(start(program.resolve("bin/ouzelbook"), "demo", "--window")).contains("--module-path");
    }

    @Test
    void letsLongWorkBeCompiledFully() throws Exception {
        assertThat(start(program.resolve("bin/ouzelbook"), "show", "book")).contains("-XX:TieredStopAtLevel=1");
        assertThat(start(program.resolve("bin/ouzelbook"), "import", "book", "file"))
                .doesNotContain("-XX:TieredStopAtLevel=1")
                .endsWith("import", "book", "file");
        Path large = Files.createFile(folder.resolve("large book.mv.db"));
        try (RandomAccessFile file = new RandomAccessFile(large.toFile(), "rw")) {
            file.setLength(60_000_000);
        }
        for (String named : new String[] {large.toString(), large.toString().replace(".mv.db", "")}) {
            assertThat(start(program.resolve("bin/ouzelbook"), "export", named, "--as", "csv"))
                    .doesNotContain("-XX:TieredStopAtLevel=1");
        }
        for (String byModel : new String[] {"map", "density", "trend", "report"}) {
            assertThat(start(program.resolve("bin/ouzelbook"), byModel, "book"))
                    .contains("-XX:Tier4InvocationThreshold=50000")
                    .doesNotContain("-XX:TieredStopAtLevel=1");
        }
        assertThat(start(program.resolve("bin/ouzelbook"), "estimate", "territories", "table"))
                .doesNotContain("-XX:TieredStopAtLevel=1");
        assertThat(start(program.resolve("bin/ouzelbook"), "estimate", "trend", "table"))
                .contains("-XX:TieredStopAtLevel=1");
    }

    @Test
    void findsItsFolderThroughLinks() throws Exception {
        Path first = Files.createSymbolicLink(folder.resolve("first"), program.resolve("bin/ouzelbook"));
        Path second = Files.createSymbolicLink(folder.resolve("second"), first.getFileName());

        assertThat(start(second, "--version")).contains(program + "/lib/*");
    }

    @Test
    void saysWhenJavaIsTooOld() throws Exception {
        Files.writeString(java.resolve("release"), "IMPLEMENTOR=\"x\"\nJAVA_VERSION=\"11.0.2\"\n");
        assertThat(start(program.resolve("bin/ouzelbook"), "--version"))
                .first()
                .asString()
                .startsWith("Ouzelbook needs Java 17 or newer, but ")
                .endsWith("is Java 11.0.2.");

        Files.writeString(java.resolve("release"), "JAVA_VERSION=\"1.8.0_402\"\n");
        assertThat(start(program.resolve("bin/ouzelbook"), "--version"))
                .first()
                .asString()
                .endsWith("is Java 1.8.0_402.");

        Files.writeString(java.resolve("release"), "JAVA_VERSION=\"21\"\n");
        assertThat(start(program.resolve("bin/ouzelbook"), "--version")).endsWith("--version");
    }

    @Test
    void saysWhenThereIsNoJava() throws Exception {
        Files.delete(java.resolve("bin/java"));

        assertThat(start(program.resolve("bin/ouzelbook"), "--version"))
                .first()
                .asString()
                .startsWith("Ouzelbook needs Java 17 or newer, and there is none in JAVA_HOME");
    }

    private List<String> start(Path script, String... arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("sh", script.toString()));
        command.addAll(List.of(arguments));
        ProcessBuilder builder =
                new ProcessBuilder(command).directory(folder.toFile()).redirectErrorStream(true);
        Map<String, String> environment = builder.environment();
        environment.put("JAVA_HOME", java.toString());
        environment.remove("OUZELBOOK_MEMORY");
        Process process = builder.start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        process.waitFor();
        return printed.lines().toList();
    }

    private static void write(Path file, String text) throws IOException {
        Files.writeString(file, text);
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
    }
}
