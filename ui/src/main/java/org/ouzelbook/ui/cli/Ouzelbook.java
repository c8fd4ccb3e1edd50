package org.ouzelbook.ui.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.ouzelbook.ui.app.ProgramVersion;
import org.ouzelbook.ui.app.Texts;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** The command {@code ouzelbook}, under which every other stands. */
@Command(name = "ouzelbook")
public final class Ouzelbook implements Callable<Integer> {
    private static final int HELP_WIDTH = 90;

    private final Terminal terminal;

    private Ouzelbook(Terminal terminal) {
        this.terminal = terminal;
    }

    /** The commands by name, in the order in which the help lists them. */
    private static Map<String, Function<Terminal, Object>> commands() {
        Map<String, Function<Terminal, Object>> commands = new LinkedHashMap<>();
        commands.put("demo", DemoCommand::new);
        commands.put("new", NewCommand::new);
        commands.put("log", LogCommand::new);
        commands.put("correct", CorrectCommand::new);
        commands.put("import", ImportCommand::new);
        commands.put("map", MapCommand::new);
        commands.put("picture", PictureCommand::new);
        commands.put("decide", DecideCommand::new);
        commands.put("density", DensityCommand::new);
        commands.put("occupancy", OccupancyCommand::new);
        commands.put("trend", TrendCommand::new);
        commands.put("plan", PlanCommand::new);
        commands.put("nests", NestsCommand::new);
        commands.put("survival", SurvivalCommand::new);
        commands.put("benthos", BenthosCommand::new);
        commands.put("report", ReportCommand::new);
        commands.put("sheet", SheetCommand::new);
        commands.put("pocket", PocketCommand::new);
        commands.put("seal", SealCommand::new);
        commands.put("export", ExportCommand::new);
        commands.put("merge", MergeCommand::new);
        commands.put("estimate", EstimateCommand::of);
        commands.put("show", ShowCommand::new);
        commands.put("undo", UndoCommand::new);
        commands.put("check", CheckCommand::new);
        commands.put("backup", BackupCommand::new);
        commands.put("open", OpenCommand::new);
        return commands;
    }

    /**
     * Runs one command.
     *
     * @param terminal where it reads and writes
     * @param arguments the command and what follows it
     * @return 0 done, 1 the data had problems, 2 wrong usage
     */
    public static int run(Terminal terminal, String... arguments) {
        CommandLine line = commandLine(terminal, arguments);
        try {
            return line.execute(arguments);
        } catch (OutOfMemoryError e) {
            terminal.err().println(Texts.of("cli.outOfMemory"));
            return ExitCode.PROBLEMS;
        }
    }

    /**
     * {@return the command line, ready to run: with the one command that is asked for, since to lay out all of them takes as
     * long as Java needs to start; with all of them where none is named, or none that is known}
     *
     * @param terminal where commands read and write
     * @param arguments the command and what follows it
     */
    static CommandLine commandLine(Terminal terminal, String... arguments) {
        Map<String, Function<Terminal, Object>> commands = commands();
        if (arguments.length > 0 && commands.containsKey(arguments[0])) {
            commands.keySet().retainAll(List.of(arguments[0]));
        }
        CommandLine line = new CommandLine(new Ouzelbook(terminal));
        commands.forEach((name, command) -> line.addSubcommand(name, command.apply(terminal)));
        line.getSubcommands().values().forEach(Ouzelbook::layOut);
        line.getCommandSpec()
                .addOption(help())
                .addOption(OptionSpec.builder("--version").versionHelp(true).build())
                .version(version());
        Failures failures = new Failures(terminal);
        return line.setOut(terminal.out())
                .setErr(terminal.err())
                .setResourceBundle(new HelpTexts())
                .setColorScheme(CommandLine.Help.defaultColorScheme(terminal.colour() ? Ansi.ON : Ansi.OFF))
                .setUsageHelpWidth(HELP_WIDTH)
                .setCaseInsensitiveEnumValuesAllowed(true)
                .setParameterExceptionHandler(failures)
                .setExecutionExceptionHandler(failures);
    }

    private static void layOut(CommandLine command) {
        CommandSpec spec = command.getCommandSpec();
        spec.addOption(help());
        spec.usageMessage()
                .abbreviateSynopsis(true)
                .sortOptions(false)
                .parameterListHeading("%n")
                .optionListHeading("%n");
        command.getSubcommands().values().forEach(Ouzelbook::layOut);
    }

    private static OptionSpec help() {
        return OptionSpec.builder("-h", "--help").usageHelp(true).build();
    }

    /** {@return the program's name and version} */
    static String version() {
        return Texts.of("cli.versionLine", ProgramVersion.words());
    }

    /** Called bare, it explains itself. */
    @Override
    public Integer call() {
        commandLine(terminal).usage(terminal.out());
        return ExitCode.DONE;
    }
}
