package org.ouzelbook.tracker.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.ouzelbook.tracker.store.BookFixture.*;

import java.nio.file.Path;
import java.time.Clock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Progress;

class MigrationsTest {
    @TempDir
    Path folder;

    @Test
    void bringsAnOlderBookUpToDateAfterCopyingIt() {
        Migrations next = Migrations.ALL.and("for-tests.sql");
        try (Book book = Book.create(folder.resolve("arrel"))) {
            addEverything(book);
        }

        try (Book book = Book.open(folder.resolve("arrel"), next, Clock.systemUTC())) {
            assertThat(book.check(Progress.NONE)).isEmpty();
            String weather = book.read(view -> view.database()
                    .first("SELECT weather FROM air_temperature", result -> result.getString(1))
                    .orElseThrow());
            assertThat(weather).isEqualTo("still; dry");
        }

        assertThat(folder.resolve("arrel-backups/arrel-before-version-" + next.newest() + ".zip"))
                .exists();
        assertThatThrownBy(() -> Book.open(folder.resolve("arrel")).close())
                .isInstanceOfSatisfying(
                        BookException.class, e -> assertThat(e.told().key()).isEqualTo("book.newer"));
    }
}
