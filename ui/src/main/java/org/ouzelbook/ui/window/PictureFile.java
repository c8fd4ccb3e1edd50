package org.ouzelbook.ui.window;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import javafx.scene.SnapshotParameters;
import javafx.scene.canvas.Canvas;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.transform.Scale;
import javax.imageio.ImageIO;
import org.ouzelbook.ui.app.leak.PrivateFile;
import org.ouzelbook.ui.strip.Palette;
import org.ouzelbook.ui.strip.Picture;
import org.ouzelbook.ui.strip.SvgPen;

/** Writes a picture that says that it is private to a file: SVG where the name says so, else PNG at twice the size on the screen. */
final class PictureFile {
    private static final double PIXELS = 2;

    private PictureFile() {}

    /**
     * Writes a picture; on the window's thread.
     *
     * @param picture the picture
     * @param palette its colours
     * @param file the file; an older one is replaced
     * @throws IOException if it cannot be written
     */
    static void write(Picture picture, Palette palette, Path file) throws IOException {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        if (name.endsWith(".svg")) {
            PrivateFile.write(file, SvgPen.write(picture, palette, "s"));
        } else {
            PrivateFile.write(file, png(picture, palette));
        }
    }

    /**
     * {@return a picture as PNG, twice as fine as on the screen; on the window's thread}
     *
     * @param picture the picture
     * @param palette its colours
     * @throws IOException if it cannot be drawn
     */
    static byte[] png(Picture picture, Palette palette) throws IOException {
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        ImageIO.write(image(picture, palette), "png", png);
        return png.toByteArray();
    }

    /**
     * {@return a canvas with the picture}
     *
     * @param picture the picture
     * @param palette its colours
     */
    static Canvas canvas(Picture picture, Palette palette) {
        Canvas canvas = new Canvas(picture.width(), picture.height());
        new CanvasPen(canvas.getGraphicsContext2D(), palette).draw(picture);
        canvas.setAccessibleText(picture.title() + ". " + picture.description());
        return canvas;
    }

    private static BufferedImage image(Picture picture, Palette palette) {
        SnapshotParameters twice = new SnapshotParameters();
        twice.setTransform(new Scale(PIXELS, PIXELS));
        WritableImage seen = canvas(picture, palette).snapshot(twice, null);
        int width = (int) seen.getWidth();
        int height = (int) seen.getHeight();
        int[] pixels = new int[width * height];
        seen.getPixelReader().getPixels(0, 0, width, height, PixelFormat.getIntArgbInstance(), pixels, 0, width);
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        image.setRGB(0, 0, width, height, pixels, 0, width);
        return image;
    }
}
