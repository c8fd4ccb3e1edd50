package org.ouzelbook.ui.app.leak;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.cli.CommandRun;

/** A book with secrets of every kind, and what looks for them. The nest KX7 is at 57.229951° N, 6.411974° W and km 3.413. */
record LeakBook(Path path, LeakCheck check) {
    private static final List<String> TABLES = List.of("""
            name,km,kind,aliases
            Mill Bridge,3.1,bridge,Dubh Brae
            Weir,6.2,weir,
            """, """
            visit,date,start,end,from_km,to_km,species,observers,note
            IB-1,2026-03-02,07:00,09:35,1.2,5.4,dipper,Ina Brekke;Jérôme Öztürk;Seán O’Hara;Brook;Al,"old Hendry let us through, as always"
            """, """
            sighting,visit,km,time,species,count,rings,note
            b1,IB-1,3.42,07:12,dipper,2,R/N m/W,Wotherspoon saw it first
            """, """
            nest,km,species,site,note
            KX7,3.413,dipper,bridge,second arch from the left behind the ivy
            QX8,4.74,dipper,weir,
            """, """
            bird,left_upper,left_lower,right_upper,right_lower,ring
            BD1,R/N,m,W,,ZZ98765
            BD2,R/N,m,B,,AB 12345
            """);

    static LeakBook in(Path folder) throws IOException {
        Path path = folder.resolve("arrel.mv.db");
        run("new", path, "--river", Files.writeString(folder.resolve("river.geojson"), """
                {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
                  [[-6.43,57.28],[-6.42,57.25],[-6.40,57.20]]}}
                """));
        for (int i = 0; i < TABLES.size(); i++) {
            run("import", path, Files.writeString(folder.resolve("table" + i + ".csv"), TABLES.get(i)));
        }
        try (Book book = Book.open(path)) {
            return new LeakBook(path, book.read(view -> LeakCheck.of(view, false)));
        }
    }

    private static void run(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
    }

    List<Leak.Kind> kinds(String text) throws IOException {
        return kinds("x.txt", text.getBytes(StandardCharsets.UTF_8));
    }

    List<Leak.Kind> kinds(String name, byte[] bytes) throws IOException {
        return check.in(name, bytes).stream().map(Leak::kind).distinct().toList();
    }
}
