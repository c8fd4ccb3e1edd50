package org.ouzelbook.ui.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.ouzelbook.ui.cli.CommandRun;

/** An invented river with a nest, a ringed bird and a person to hide, made through the command line. */
final class RiverOfPaper {
    private static final String RIVER = """
            {"type": "Feature", "properties": {"name": "Paper Water"}, "geometry":
             {"type": "LineString", "coordinates": [[-20.0, 52.0], [-20.0, 52.1]]}}
            """;
    private static final String LANDMARKS = """
            name,km,kind,nest_site
            Low Bridge,0.5,bridge,yes
            Otter Stone,3.2,rock,no
            High Weir,6.9,weir,no
            """;
    private static final String VISITS = """
            visit,date,from_km,to_km,species,observers
            v1,2026-03-01,0,7,dipper,Zebedee Quill
            v2,2026-03-20,0,7,dipper,Zebedee Quill
            v3,2026-04-20,0,7,dipper,Zebedee Quill
            """;
    private static final String SIGHTINGS = """
            sighting,visit,km,species,activity,rings,note
            odd-label,v1,3.137,dipper,song,R/W,a very private remark
            other,v2,3.311,dipper,carrying food,,
            """;
    private static final String NESTS = """
            nest,km,species,site,found
            hidden-nest,5.283,dipper,bridge,2026-04-01
            """;
    private static final String CHECKS = """
            nest,date,stage,eggs
            hidden-nest,2026-04-01,eggs,4
            """;
    private static final String BIRDS = """
            bird,left_upper,left_lower,right_upper,right_lower,ring,sex
            bird-one,,R,,W,AB12345,female
            """;

    private RiverOfPaper() {}

    /** {@return the book, made in a folder} */
    static Path book(Path folder) throws IOException {
        Path book = folder.resolve("paper.mv.db");
        Path tables = Files.createDirectories(folder.resolve("tables"));
        Files.writeString(folder.resolve("river.geojson"), RIVER);
        Files.writeString(tables.resolve("landmarks.csv"), LANDMARKS);
        Files.writeString(tables.resolve("visits.csv"), VISITS);
        Files.writeString(tables.resolve("sightings.csv"), SIGHTINGS);
        Files.writeString(tables.resolve("nests.csv"), NESTS);
        Files.writeString(tables.resolve("nest_checks.csv"), CHECKS);
        Files.writeString(tables.resolve("ringed_birds.csv"), BIRDS);
        run("new", book, "--river", folder.resolve("river.geojson"), "--mouth-at", "first");
        run("import", book, tables);
        return book;
    }

    static CommandRun run(Object... command) {
        CommandRun run = CommandRun.of(command);
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
        return run;
    }

    /** {@return the words of one page of a PDF, counted from 1} */
    static String page(Path pdf, int number) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            PDFTextStripper words = new PDFTextStripper();
            words.setStartPage(number);
            words.setEndPage(number);
            return words.getText(document).replaceAll("\\s+", " ");
        }
    }

    static int pages(Path pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            return document.getNumberOfPages();
        }
    }
}
