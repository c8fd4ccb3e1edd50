package org.ouzelbook.ui.window;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import javafx.geometry.Bounds;
import javafx.geometry.Rectangle2D;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.SnapshotParameters;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ComboBoxBase;
import javafx.scene.control.Labeled;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.BackgroundFill;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.paint.Paint;

/**
 * What somebody who cannot see the window well, or does not use a mouse, needs of it: names, readable words, an order that follows
 * the page, and a sign of where the keyboard is. Contrast: WCAG 2.1, success criterion 1.4.3 and the definition of contrast ratio;
 * order: 2.4.3; focus: 2.4.7; names and roles: 4.1.2.
 */
final class Accessibility {
    private static final double LEAST_CONTRAST = 4.5;

    private Accessibility() {}

    /** {@return everything that is wrong with what is seen now; to be asked on the window's thread} */
    static List<String> wrongWith(Scene scene) {
        scene.getRoot().applyCss();
        scene.getRoot().layout();
        List<Node> reached = new ArrayList<>();
        List<Node> seen = new ArrayList<>();
        walk(scene.getRoot(), seen);
        seen.stream().filter(Node::isFocusTraversable).forEach(reached::add);
        Set<String> wrong = new LinkedHashSet<>();
        reached.forEach(node -> named(node).ifPresent(wrong::add));
        seen.forEach(node -> readable(node).ifPresent(wrong::add));
        wrong.addAll(order(reached));
        wrong.addAll(unmarked(scene, reached));
        return List.copyOf(wrong);
    }

    /** What looks no different when the keyboard comes to it. */
    private static List<String> unmarked(Scene scene, List<Node> reached) {
        Node before = scene.getFocusOwner();
        List<String> wrong = new ArrayList<>();
        for (int i = 0; i < reached.size() && reached.size() > 1; i++) {
            Node node = reached.get(i);
            reached.get(i == 0 ? 1 : i - 1).requestFocus();
            int[] without = pixels(scene, node);
            node.requestFocus();
            if (scene.getFocusOwner() == node && Arrays.equals(without, pixels(scene, node))) {
                wrong.add("looks the same with the keyboard on it: " + name(node));
            }
        }
        if (before != null) {
            before.requestFocus();
        }
        return wrong;
    }

    private static int[] pixels(Scene scene, Node node) {
        scene.getRoot().applyCss();
        scene.getRoot().layout();
        Bounds bounds = node.localToScene(node.getBoundsInLocal());
        double x = Math.max(0, bounds.getMinX() - 4);
        double y = Math.max(0, bounds.getMinY() - 4);
        double width = Math.min(scene.getWidth() - x, bounds.getWidth() + 8);
        double height = Math.min(scene.getHeight() - y, bounds.getHeight() + 8);
        SnapshotParameters part = new SnapshotParameters();
        part.setViewport(new Rectangle2D(x, y, Math.max(1, width), Math.max(1, height)));
        WritableImage image = scene.getRoot().snapshot(part, null);
        int wide = (int) image.getWidth();
        int high = (int) image.getHeight();
        int[] pixels = new int[wide * high];
        image.getPixelReader().getPixels(0, 0, wide, high, PixelFormat.getIntArgbInstance(), pixels, 0, wide);
        return pixels;
    }

    private static void walk(Node node, List<Node> seen) {
        if (!node.isVisible() || node.isDisabled()) {
            return;
        }
        seen.add(node);
        if (node instanceof Parent parent) {
            parent.getChildrenUnmodifiable().forEach(child -> walk(child, seen));
        }
    }

    private static Optional<String> named(Node node) {
        boolean named = !name(node).isBlank();
        boolean role =
                node.getAccessibleRole() != AccessibleRole.NODE && node.getAccessibleRole() != AccessibleRole.PARENT;
        boolean plain = node instanceof ButtonBase || node instanceof ComboBoxBase;
        boolean help = plain
                || (node.getAccessibleHelp() != null
                        && !node.getAccessibleHelp().isBlank());
        return named && role && help
                ? Optional.empty()
                : Optional.of(
                        (named ? role ? "no help: " : "no role: " : "no name: ") + node + " “" + name(node) + "”");
    }

    private static String name(Node node) {
        String text = node.getAccessibleText();
        if (text != null && !text.isBlank()) {
            return text;
        }
        return node instanceof Labeled labelled && labelled.getText() != null ? labelled.getText() : "";
    }

    private static Optional<String> readable(Node node) {
        if (!(node instanceof Labeled labelled)
                || labelled.getText() == null
                || labelled.getText().isBlank()) {
            return Optional.empty();
        }
        Optional<Color> ground = ground(node);
        Paint ink = labelled.getTextFill();
        if (ground.isEmpty() || !(ink instanceof Color colour)) {
            return Optional.empty();
        }
        double contrast = contrast(colour, ground.get());
        return contrast >= LEAST_CONTRAST
                ? Optional.empty()
                : Optional.of(String.format(
                        Locale.ROOT,
                        "contrast %.2f: “%s” %s on %s",
                        contrast,
                        labelled.getText(),
                        colour,
                        ground.get()));
    }

    private static Optional<Color> ground(Node node) {
        for (Node one = node; one != null; one = one.getParent()) {
            if (one instanceof Region region && region.getBackground() != null) {
                List<BackgroundFill> fills = region.getBackground().getFills();
                for (int i = fills.size() - 1; i >= 0; i--) {
                    if (fills.get(i).getFill() instanceof Color colour && colour.isOpaque()) {
                        return Optional.of(colour);
                    }
                }
            }
        }
        return Optional.empty();
    }

    static double contrast(Color one, Color other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(Color colour) {
        return 0.2126 * linear(colour.getRed())
                + 0.7152 * linear(colour.getGreen())
                + 0.0722 * linear(colour.getBlue());
    }

    private static double linear(double channel) {
        return channel <= 0.04045 ? channel / 12.92 : Math.pow((channel + 0.055) / 1.055, 2.4);
    }

    /** The keyboard goes down a column, or on to the next column on the right; never back up or back to the left. */
    private static List<String> order(List<Node> reached) {
        List<String> wrong = new ArrayList<>();
        for (int i = 1; i < reached.size(); i++) {
            Bounds before = place(reached.get(i - 1));
            Bounds now = place(reached.get(i));
            boolean above = now.getMaxY() <= before.getMinY() + 1 && now.getMinX() < before.getMaxX() - 1;
            boolean leftOnTheLine = now.getMaxX() <= before.getMinX() + 1
                    && now.getMinY() < before.getMaxY() - 1
                    && now.getMaxY() > before.getMinY() + 1;
            if (above || leftOnTheLine) {
                wrong.add("comes back to “" + name(reached.get(i)) + "” after “" + name(reached.get(i - 1)) + "”");
            }
        }
        return wrong;
    }

    private static Bounds place(Node node) {
        return node.localToScene(node.getBoundsInLocal());
    }
}
