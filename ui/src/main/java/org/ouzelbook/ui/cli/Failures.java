package org.ouzelbook.ui.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ouzelbook.tracker.store.BookException;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.WrongRequest;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;

/** The one place where what went wrong becomes plain words and an exit code. A person never meets a stack trace. */
final class Failures implements CommandLine.IParameterExceptionHandler, CommandLine.IExecutionExceptionHandler {
    private final Terminal terminal;

    Failures(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public int handleParseException(ParameterException failure, String[] arguments) {
        if (failure.getCause() instanceof WrongRequest wrong) {
            tell(Texts.of(wrong.message()));
        } else {
            tell(usage(failure));
        }
        String command = failure.getCommandLine().getCommandSpec().qualifiedName();
        terminal.err().println(Texts.of("cli.wrong.help", command));
        return ExitCode.WRONG_USAGE;
    }

    private static String usage(ParameterException failure) {
        if (failure instanceof MissingParameterException missing) {
            return Texts.of(
                    "cli.wrong.missing",
                    missing.getMissing().stream().map(Failures::name).toList());
        }
        if (failure instanceof UnmatchedArgumentException unmatched) {
            return unknown(unmatched);
        }
        ArgSpec argument = failure.getArgSpec();
        return argument == null || failure.getValue() == null
                ? Texts.of("cli.wrong.usage", String.valueOf(failure.getMessage()))
                : Texts.of("cli.wrong.value", name(argument), failure.getValue());
    }

    private static String unknown(UnmatchedArgumentException failure) {
        String first = failure.getUnmatched().get(0);
        CommandLine line = failure.getCommandLine();
        boolean option = first.startsWith("-");
        boolean command = !option && !line.getSubcommands().isEmpty();
        String unknown = Texts.of(command ? "cli.wrong.command" : "cli.wrong.argument", first);
        Set<String> known = option
                ? line.getCommandSpec().optionsMap().keySet()
                : line.getSubcommands().keySet();
        List<String> near = NearWords.of(first.replaceFirst("=.*", ""), known);
        return near.isEmpty() ? unknown : unknown + " " + Texts.of("cli.wrong.near", near);
    }

    private static String name(ArgSpec argument) {
        return argument instanceof OptionSpec option ? option.longestName() : argument.paramLabel();
    }

    @Override
    public int handleExecutionException(Exception failure, CommandLine command, ParseResult parsed) {
        if (failure instanceof WrongRequest wrong) {
            tell(Texts.of(wrong.message()));
            return ExitCode.WRONG_USAGE;
        }
        if (failure instanceof BookException refused) {
            tell(Texts.of(refused.told()));
            return ExitCode.PROBLEMS;
        }
        tell(file(failure).orElseGet(() -> unforeseen(failure, parsed.originalArgs())));
        return ExitCode.PROBLEMS;
    }

    private static Optional<String> file(Exception failure) {
        Throwable cause = failure instanceof UncheckedIOException ? failure.getCause() : failure;
        if (!(cause instanceof FileSystemException file) || file.getFile() == null) {
            return Optional.empty();
        }
        if (file instanceof NoSuchFileException) {
            return Optional.of(Texts.of("cli.file.missing", file.getFile()));
        }
        if (file instanceof FileAlreadyExistsException) {
            return Optional.of(Texts.of("cli.file.exists", file.getFile()));
        }
        if (file instanceof AccessDeniedException) {
            return Optional.of(Texts.of("cli.file.denied", file.getFile()));
        }
        String reason = Optional.ofNullable(file.getReason()).orElse(file.toString());
        return Optional.of(Texts.of("cli.file.other", file.getFile(), reason));
    }

    /** Writes down what nobody foresaw, for whoever can mend it. */
    static String unforeseen(Throwable failure, List<String> arguments) {
        StringWriter trace = new StringWriter();
        failure.printStackTrace(new PrintWriter(trace));
        String details = String.join(
                System.lineSeparator(),
                Ouzelbook.version(),
                "Java " + System.getProperty("java.version") + ", " + System.getProperty("os.name"),
                "ouzelbook " + String.join(" ", arguments),
                trace.toString());
        try {
            Path file = Files.createTempFile("ouzelbook-problem-", ".txt");
            Files.writeString(file, details);
            return Texts.of("cli.unforeseen", file.toString());
        } catch (IOException e) {
            return Texts.of("cli.unforeseenUnwritten", failure.toString());
        }
    }

    private void tell(String words) {
        terminal.out().flush();
        terminal.err().println(words);
    }
}
