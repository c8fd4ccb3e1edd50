package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.FieldWater;
import org.ouzelbook.ui.app.Scope;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Which water of which book one goes out to. */
final class WaterOptions {
    @Parameters(paramLabel = "BOOK")
    private @Nullable Path book;

    @Option(names = "--river", paramLabel = "NAME")
    private @Nullable String river;

    @Option(names = "--reach", paramLabel = "NAME")
    private @Nullable String reach;

    /** {@return the water that is meant} */
    FieldWater water() {
        if (book == null) {
            throw new IllegalStateException("picocli asks for BOOK before a command runs");
        }
        Scope everything = Scope.everything();
        Scope asked = new Scope(
                Species.DIPPER,
                everything.season(),
                everything.from(),
                everything.to(),
                Optional.ofNullable(river),
                Optional.ofNullable(reach),
                everything.level());
        try (Book opened = Book.open(book)) {
            return FieldWater.of(opened, asked);
        }
    }
}
