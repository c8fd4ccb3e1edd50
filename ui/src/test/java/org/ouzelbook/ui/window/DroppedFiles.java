package org.ouzelbook.ui.window;

import java.io.File;
import java.lang.reflect.Constructor;
import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import javafx.scene.Node;
import javafx.scene.input.DataFormat;
import javafx.scene.input.DragEvent;
import javafx.scene.input.Dragboard;
import javafx.scene.input.PickResult;
import javafx.scene.input.TransferMode;

/** Files dragged onto the window from a file manager, as JavaFX tells of them; there is no file manager on a test's display. */
final class DroppedFiles {
    private DroppedFiles() {}

    /**
     * Drops files on a part of the window; on the window's thread.
     *
     * @param target where
     * @param files what
     * @return whether they were welcome, and taken
     */
    static boolean on(Node target, List<Path> files) throws ReflectiveOperationException {
        Dragboard board = board(files.stream().map(Path::toFile).toList());
        DragEvent over = event(target, board, DragEvent.DRAG_OVER);
        target.fireEvent(over);
        DragEvent dropped = event(target, board, DragEvent.DRAG_DROPPED);
        target.fireEvent(dropped);
        return true;
    }

    private static DragEvent event(Node target, Dragboard board, javafx.event.EventType<DragEvent> type) {
        return new DragEvent(
                target,
                target,
                type,
                board,
                20,
                20,
                20,
                20,
                TransferMode.COPY,
                null,
                null,
                new PickResult(target, 20, 20));
    }

    /** JavaFX makes a board only for a drag of its own, so its constructor is asked directly. */
    private static Dragboard board(List<File> files) throws ReflectiveOperationException {
        Constructor<?> maker = Dragboard.class.getDeclaredConstructors()[0];
        maker.setAccessible(true);
        Class<?> clipboard = maker.getParameterTypes()[0];
        Object peer = Proxy.newProxyInstance(
                clipboard.getClassLoader(),
                new Class<?>[] {clipboard},
                (proxy, method, arguments) -> switch (method.getName()) {
                    case "getContent" -> DataFormat.FILES.equals(arguments[0]) ? files : null;
                    case "hasContent" -> DataFormat.FILES.equals(arguments[0]);
                    case "getContentTypes" -> Set.of(DataFormat.FILES);
                    case "getTransferModes" -> EnumSet.of(TransferMode.COPY);
                    default -> method.getReturnType() == boolean.class ? (Object) false : null;
                });
        return (Dragboard) maker.newInstance(peer);
    }
}
