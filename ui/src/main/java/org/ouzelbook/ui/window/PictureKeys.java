package org.ouzelbook.ui.window;

import java.io.File;
import java.io.IOException;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.print.PageLayout;
import javafx.print.PageOrientation;
import javafx.print.Paper;
import javafx.print.Printer;
import javafx.print.PrinterJob;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.transform.Scale;
import javafx.stage.FileChooser;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Palette;
import org.ouzelbook.ui.strip.Picture;
import org.ouzelbook.ui.strip.RiverStrip;
import org.ouzelbook.ui.strip.Shape;
import org.ouzelbook.ui.strip.StripDrawing;

/** What can be done with the strip that is shown: save it as a picture, print it with its legend, read it in words. */
final class PictureKeys {
    private static final double LEGEND_WIDTH = 900;
    private static final double WORDS_WIDTH = 640;
    private static final double WORDS_HEIGHT = 420;

    private final BookViewModel book;
    private final Look look;
    private final Overlay overlay;

    PictureKeys(BookViewModel book, Look look, Overlay overlay) {
        this.book = book;
        this.look = look;
        this.overlay = overlay;
    }

    private Optional<Picture> shown() {
        return book.strip().drawing().get().map(RiverStrip::sheet);
    }

    /** Asks for a file and saves what is shown, with its legend. */
    void save() {
        shown().ifPresentOrElse(
                        picture -> {
                            FileChooser chooser = new FileChooser();
                            chooser.setTitle(Texts.of("window.picture.title"));
                            chooser.setInitialFileName(Texts.of("window.picture.file"));
                            chooser.getExtensionFilters()
                                    .addAll(
                                            new FileChooser.ExtensionFilter(Texts.of("window.picture.png"), "*.png"),
                                            new FileChooser.ExtensionFilter(Texts.of("window.picture.svg"), "*.svg"));
                            File file =
                                    chooser.showSaveDialog(overlay.getScene().getWindow());
                            if (file != null) {
                                try {
                                    PictureFile.write(picture, look.palette(), file.toPath());
                                    book.say(Texts.of("window.picture.saved", file.toString()));
                                } catch (IOException e) {
                                    book.say(Texts.of("window.picture.failed", file.toString()));
                                }
                            }
                        },
                        this::nothing);
    }

    private void nothing() {
        book.say(Texts.of("window.picture.nothing"));
    }

    /** Prints what is shown, with its legend, on light paper. */
    void print() {
        shown().ifPresentOrElse(picture -> print(PictureFile.canvas(picture, Palette.LIGHT)), this::nothing);
    }

    private void print(Canvas canvas) {
        PrinterJob job = PrinterJob.createPrinterJob();
        if (job == null) {
            book.say(Texts.of("window.print.none"));
            return;
        }
        if (!job.showPrintDialog(overlay.getScene().getWindow())) {
            return;
        }
        PageLayout page =
                job.getPrinter().createPageLayout(Paper.A4, PageOrientation.LANDSCAPE, Printer.MarginType.DEFAULT);
        double share =
                Math.min(page.getPrintableWidth() / canvas.getWidth(), page.getPrintableHeight() / canvas.getHeight());
        canvas.getTransforms().add(new Scale(share, share));
        boolean printed = job.printPage(page, canvas) && job.endJob();
        book.say(Texts.of(printed ? "window.print.done" : "window.print.failed"));
    }

    /** Shows the legend. */
    void legend() {
        StripDrawing legend = RiverStrip.legend(LEGEND_WIDTH);
        Canvas drawn = PictureFile.canvas(legend.picture(), look.palette());
        // Whoever does not see the marks hears at least what there is to see.
        drawn.setAccessibleText(legend.picture().shapes().stream()
                .filter(Shape.Label.class::isInstance)
                .map(shape -> ((Shape.Label) shape).text())
                .collect(Collectors.joining("; ")));
        overlay.show(Texts.of("strip.legend"), drawn, Texts.of("window.close"));
    }

    /** Shows in words what the strip shows. */
    void words() {
        book.strip()
                .drawing()
                .get()
                .ifPresentOrElse(
                        drawing ->
                                overlay.show(drawing.title(), words(drawing.description()), Texts.of("window.close")),
                        this::nothing);
    }

    private static Node words(String description) {
        Label label = new Label(description.replace(". ", ".\n"));
        label.setWrapText(true);
        label.setPrefWidth(WORDS_WIDTH);
        label.getStyleClass().add("sentence");
        ScrollPane pane = new ScrollPane(label);
        pane.getStyleClass().add("words");
        pane.setFitToWidth(true);
        pane.setPrefSize(WORDS_WIDTH + 30, WORDS_HEIGHT);
        return pane;
    }
}
