package org.ouzelbook.ui.cli;

import java.io.BufferedReader;
import java.io.PrintWriter;
import java.io.Reader;
import java.io.Writer;
import java.util.Set;
import java.util.TreeSet;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** The keys of the texts by which commands and options are explained. */
public final class HelpKeys {
    private HelpKeys() {}

    /** {@return every key that a command's help may use, shared or its own} */
    public static Set<String> all() {
        Set<String> keys = new TreeSet<>();
        add(commandLine(), keys);
        return keys;
    }

    /** {@return the whole command line, reading and writing nothing} */
    static CommandLine commandLine() {
        PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
        return Ouzelbook.commandLine(
                new Terminal(new BufferedReader(Reader.nullReader()), nowhere, nowhere, false, false, false));
    }

    private static void add(CommandLine command, Set<String> keys) {
        String prefix = "cli." + command.getCommandSpec().qualifiedName(".").replaceFirst("^ouzelbook\\.?", "");
        prefix = prefix.endsWith(".") ? prefix : prefix + ".";
        for (String part : new String[] {"header", "description", "footer"}) {
            keys.add(prefix + "usage." + part);
        }
        for (OptionSpec option : command.getCommandSpec().options()) {
            addNamed(option.longestName().replaceFirst("^-+", ""), prefix, keys);
        }
        for (PositionalParamSpec argument : command.getCommandSpec().positionalParameters()) {
            addNamed(argument.paramLabel(), prefix, keys);
        }
        command.getSubcommands().values().forEach(inner -> add(inner, keys));
    }

    private static void addNamed(String name, String prefix, Set<String> keys) {
        keys.add(prefix + name);
        keys.add("cli.option." + name);
    }
}
