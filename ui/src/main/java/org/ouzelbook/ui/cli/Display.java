package org.ouzelbook.ui.cli;

import java.util.Locale;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.ouzelbook.tracker.domain.Message;

/** Whether a window can be shown here. */
final class Display {
    private Display() {}

    /** {@return why no window can be shown; empty if one can} */
    static Optional<Message> missing() {
        return missing(
                System.getProperty("os.name"),
                name -> Optional.ofNullable(System.getenv(name)).orElse(""));
    }

    /**
     * {@return why no window can be shown on such a system; empty if one can}
     *
     * @param system name of the operating system
     * @param environment the value of a variable of the environment; blank where it is not set
     */
    static Optional<Message> missing(String system, UnaryOperator<String> environment) {
        boolean alwaysThere = system.toLowerCase(Locale.ROOT).matches("(windows|mac).*");
        boolean named = !environment.apply("DISPLAY").isBlank()
                || !environment.apply("WAYLAND_DISPLAY").isBlank();
        if (!alwaysThere && !named) {
            return Optional.of(Message.of("cli.open.noDisplay"));
        }
        try {
            Class.forName("javafx.application.Application", false, Display.class.getClassLoader());
            return Optional.empty();
        } catch (ClassNotFoundException e) {
            return Optional.of(Message.of("cli.open.noJavafx"));
        }
    }
}
