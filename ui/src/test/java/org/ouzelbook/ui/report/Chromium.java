package org.ouzelbook.ui.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.google.gson.JsonPrimitive;
import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.net.http.WebSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** A real browser without a display, driven by the protocol that its own developer tools speak. */
final class Chromium implements AutoCloseable {
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    private static final List<String> NAMES = List.of("chromium", "chromium-browser", "google-chrome", "chrome");

    private final Process process;
    private final WebSocket socket;
    private final AtomicInteger lastId = new AtomicInteger();
    private final Map<Integer, CompletableFuture<JsonObject>> waiting = new ConcurrentHashMap<>();
    private final List<String> asked = new CopyOnWriteArrayList<>();
    private final List<String> complaints = new CopyOnWriteArrayList<>();

    private Chromium(Process process, String address) {
        this.process = process;
        this.socket = HttpClient.newHttpClient()
                .newWebSocketBuilder()
                .buildAsync(URI.create(address), new Listener())
                .orTimeout(PATIENCE.toSeconds(), TimeUnit.SECONDS)
                .join();
        tell("Page.enable", Map.of());
        tell("Runtime.enable", Map.of());
        tell("Network.enable", Map.of());
    }

    /** Starts the browser with a profile; the same profile again finds what pages kept. */
    static Chromium start(Path profile) throws IOException, InterruptedException {
        Files.createDirectories(profile);
        Path port = profile.resolve("DevToolsActivePort");
        Files.deleteIfExists(port);
        List<String> command = new ArrayList<>(List.of(
                program(),
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--hide-scrollbars",
                "--remote-debugging-port=0",
                "--user-data-dir=" + profile.toAbsolutePath()));
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(profile.resolve("output.txt").toFile())
                .start();
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (!Files.exists(port) || Files.readString(port).isBlank()) {
            assertThat(process.isAlive() && System.nanoTime() < end)
                    .as("the browser did not start: " + Files.readString(profile.resolve("output.txt")))
                    .isTrue();
            Thread.sleep(50);
        }
        String page = HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(URI.create("http://127.0.0.1:"
                                        + Files.readAllLines(port).get(0) + "/json/new?about:blank"))
                                .PUT(HttpRequest.BodyPublishers.noBody())
                                .build(),
                        BodyHandlers.ofString())
                .body();
        return new Chromium(
                process,
                JsonParser.parseString(page)
                        .getAsJsonObject()
                        .get("webSocketDebuggerUrl")
                        .getAsString());
    }

    private static String program() {
        return Pattern.compile(Pattern.quote(File.pathSeparator))
                .splitAsStream(System.getenv("PATH"))
                .flatMap(folder -> NAMES.stream().map(name -> Path.of(folder, name)))
                .filter(Files::isExecutable)
                .map(Path::toString)
                .findFirst()
                .orElseThrow(() -> new AssertionError(
                        "no Chromium to open the pages in; run the tests by .ci/with-display, which installs it"));
    }

    private final class Listener implements WebSocket.Listener {
        private final StringBuilder text = new StringBuilder();

        @Override
        public @Nullable CompletionStage<?> onText(WebSocket from, CharSequence data, boolean last) {
            text.append(data);
            if (last) {
                hear(JsonParser.parseString(text.toString()).getAsJsonObject());
                text.setLength(0);
            }
            from.request(1);
            return null;
        }
    }

    private void hear(JsonObject message) {
        if (message.has("id")) {
            CompletableFuture<JsonObject> answer =
                    waiting.remove(message.get("id").getAsInt());
            if (answer != null) {
                answer.complete(message);
            }
            return;
        }
        String method = message.get("method").getAsString();
        if (method.equals("Network.requestWillBeSent")) {
            asked.add(message.getAsJsonObject("params")
                    .getAsJsonObject("request")
                    .get("url")
                    .getAsString());
        } else if (method.equals("Runtime.exceptionThrown")) {
            complaints.add(message.getAsJsonObject("params").toString());
        }
    }

    /** Sends one command of the protocol and waits for its answer. */
    JsonObject tell(String method, Map<String, Object> parameters) {
        int id = lastId.incrementAndGet();
        CompletableFuture<JsonObject> answer = new CompletableFuture<>();
        waiting.put(id, answer);
        JsonObject command = new JsonObject();
        command.addProperty("id", id);
        command.addProperty("method", method);
        command.add("params", element(parameters));
        socket.sendText(command.toString(), true).join();
        JsonObject told =
                answer.orTimeout(PATIENCE.toSeconds(), TimeUnit.SECONDS).join();
        assertThat(told.has("error")).as(method + ": " + told).isFalse();
        return told.getAsJsonObject("result");
    }

    private static JsonElement element(Object value) {
        if (value instanceof Number number) {
            return new JsonPrimitive(number);
        }
        if (value instanceof Map<?, ?> values) {
            JsonObject object = new JsonObject();
            values.forEach((name, one) -> object.add(name.toString(), element(one)));
            return object;
        }
        if (value instanceof List<?> list) {
            JsonArray array = new JsonArray();
            list.forEach(one -> array.add(element(one)));
            return array;
        }
        return value instanceof Boolean yes ? new JsonPrimitive(yes) : new JsonPrimitive(value.toString());
    }

    /** Opens a file and waits until it is there. */
    void open(Path page) {
        tell("Page.navigate", Map.of("url", page.toUri().toString()));
        until("document.readyState === 'complete' && location.href !== 'about:blank'");
    }

    /** The size of the window, in pixels of the page; a phone has no mouse. */
    void size(int width, int height, boolean phone) {
        tell(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", phone ? 2 : 1, "mobile", phone));
        tell("Emulation.setTouchEmulationEnabled", Map.of("enabled", phone));
    }

    /** What an expression of the page gives, as text; an object as JSON. */
    String ask(String expression) {
        JsonObject told = tell(
                "Runtime.evaluate",
                Map.of("expression", expression, "returnByValue", true, "awaitPromise", true, "userGesture", true));
        assertThat(told.has("exceptionDetails")).as(expression + ": " + told).isFalse();
        JsonElement value = told.getAsJsonObject("result").get("value");
        return value == null ? "" : value.isJsonPrimitive() ? value.getAsString() : value.toString();
    }

    /** Waits until an expression of the page is true. */
    void until(String expression) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (!ask("!!(" + expression + ")").equals("true")) {
            assertThat(System.nanoTime() < end).as("never: " + expression).isTrue();
            try {
                Thread.sleep(30);
            } catch (InterruptedException e) {
                throw new AssertionError(e);
            }
        }
    }

    /** Presses and lets go a key, by its name in the standard of keyboard events. */
    void press(String key) {
        int code = Map.of("Tab", 9, "Enter", 13, "ArrowLeft", 37, "ArrowUp", 38, "ArrowRight", 39, "ArrowDown", 40)
                .getOrDefault(key, 0);
        for (String type : List.of("rawKeyDown", "keyUp")) {
            tell(
                    "Input.dispatchKeyEvent",
                    Map.of("type", type, "key", key, "code", key, "windowsVirtualKeyCode", code));
        }
    }

    /** Where the middle of an element is, after it was brought into view: {@code [x, y]}. */
    private List<Double> middle(String selector) {
        String box = ask("""
                (() => { const e = document.querySelector(%s); e.scrollIntoView({block: 'center', inline: 'center'});
                const b = e.getBoundingClientRect(); return [b.x + b.width / 2, b.y + b.height / 2]; })()""".formatted(new JsonPrimitive(selector)));
        List<Double> place = new ArrayList<>();
        JsonParser.parseString(box).getAsJsonArray().forEach(one -> place.add(one.getAsDouble()));
        return place;
    }

    /** Moves the mouse onto an element. */
    void pointAt(String selector) {
        List<Double> place = middle(selector);
        tell("Input.dispatchMouseEvent", Map.of("type", "mouseMoved", "x", place.get(0), "y", place.get(1)));
    }

    /** Taps an element with a finger. */
    void tap(String selector) {
        List<Double> place = middle(selector);
        tell(
                "Input.dispatchTouchEvent",
                Map.of("type", "touchStart", "touchPoints", List.of(Map.of("x", place.get(0), "y", place.get(1)))));
        tell("Input.dispatchTouchEvent", Map.of("type", "touchEnd", "touchPoints", List.of()));
    }

    /** Keeps a picture of what is seen. */
    void keep(Path picture, boolean whole) throws IOException {
        JsonObject shot = tell("Page.captureScreenshot", Map.of("format", "png", "captureBeyondViewport", whole));
        Files.createDirectories(picture.toAbsolutePath().getParent());
        Files.write(picture, Base64.getDecoder().decode(shot.get("data").getAsString()));
    }

    /** Prints what is open, on paper as the page asks for it. */
    byte[] print() {
        JsonObject printed = tell("Page.printToPDF", Map.of("preferCSSPageSize", true));
        return Base64.getDecoder().decode(printed.get("data").getAsString());
    }

    /** Everything that was fetched so far. */
    List<String> asked() {
        return List.copyOf(asked);
    }

    /** Mistakes of scripts so far. */
    List<String> complaints() {
        return List.copyOf(complaints);
    }

    /** Ends the browser at once, as a phone does that runs empty. */
    void kill() {
        process.descendants().forEach(ProcessHandle::destroyForcibly);
        process.destroyForcibly();
        process.onExit().join();
    }

    @Override
    public void close() {
        kill();
    }
}
