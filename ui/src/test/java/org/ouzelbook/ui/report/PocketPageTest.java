package org.ouzelbook.ui.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.ui.cli.CommandRun;

/**
 * The notebook for a phone, in a real browser the size of a phone, without a network, with a position that the test gives it; what
 * it hands out goes through {@code import}.
 */
@Tag("window")
class PocketPageTest {
    private static final Path PICTURES = Path.of("target", "pictures");

    /**
     * Length of a degree of latitude at 52.03° N, in km: WGS84, by the series of Rapp (1991), Geometric Geodesy I, as cited from
     * memory; 111.132954 − 0.559822 cos 2φ + 0.001175 cos 4φ.
     */
    private static final double KM_PER_DEGREE = 111.132954
            - 0.559822 * Math.cos(Math.toRadians(2 * 52.03))
            + 0.001175 * Math.cos(Math.toRadians(4 * 52.03));

    @TempDir
    private Path folder;

    private Path book = Path.of("book");
    private Path page = Path.of("pocket.html");
    private Chromium phone;

    @BeforeEach
    void takeThePageToThePhone() throws IOException, InterruptedException {
        book = RiverOfPaper.book(folder);
        page = folder.resolve("pocket.html");
        RiverOfPaper.run("pocket", book, "-o", page);
        start();
    }

    @AfterEach
    void putThePhoneAway() {
        phone.close();
    }

    private void start() throws IOException, InterruptedException {
        phone = Chromium.start(folder.resolve("profile"));
        phone.size(390, 844, true);
        phone.tell(
                "Network.emulateNetworkConditions",
                Map.of("offline", true, "latency", 0, "downloadThroughput", 0, "uploadThroughput", 0));
    }

    /** Lets the phone know where it is, so many km up the river. */
    private void standAt(double km) {
        phone.tell("Browser.grantPermissions", Map.of("permissions", List.of("geolocation")));
        phone.tell(
                "Emulation.setGeolocationOverride",
                Map.of("latitude", 52.0 + km / KM_PER_DEGREE, "longitude", -20.0, "accuracy", 8));
    }

    private void open() {
        phone.open(page);
        phone.until("!document.getElementById('app').hidden");
    }

    private String text(String selector) {
        return phone.ask("document.querySelector('" + selector + "').textContent");
    }

    private void see(String code, String doing) {
        int before = Integer.parseInt(phone.ask("document.querySelectorAll('#notes li').length"));
        phone.tap("[data-species='" + code + "']");
        phone.tap("[data-doing=" + doing + "]");
        phone.until("document.querySelectorAll('#notes li').length == " + (before + 1));
    }

    @Test
    void notesAWalkWithoutANetworkThroughAnEmptyBatteryIntoTheBook() throws Exception {
        standAt(3.0);
        open();
        phone.until("document.getElementById('where').textContent.includes('km 3.00')");
        assertThat(text("#where")).isEqualTo("Paper Water km 3.00");
        assertThat(text("#fix")).isEqualTo("200 m below Otter Stone · ± 8 m");
        assertThat(text("#landmarks li")).isEqualTo("Otter Stone200 m upstream");

        phone.tap("#begin");
        phone.ask("document.getElementById('start-observers').value = 'Z.Q.'");
        phone.ask("document.getElementById('start-direction').value = 'upstream'");
        phone.keep(PICTURES.resolve("pocket-start.png"), false);
        phone.tap("#begin-now");
        phone.until("document.getElementById('running').textContent.includes('DI, GL, KF, CS')");

        standAt(3.2);
        phone.until("document.getElementById('where').textContent.includes('km 3.20')");
        see("dipper", "singing");
        standAt(3.5);
        phone.until("document.getElementById('where').textContent.includes('km 3.50')");
        see("dipper", "seen");
        phone.tap("#together");
        phone.until("document.getElementById('together').getAttribute('aria-pressed') == 'true'");
        standAt(3.9);
        phone.until("document.getElementById('where').textContent.includes('km 3.90')");
        phone.tap("#turned");
        phone.until("document.getElementById('turned').getAttribute('aria-pressed') == 'true'");
        phone.keep(PICTURES.resolve("pocket.png"), true);

        phone.kill();
        start();
        standAt(4.4);
        open();
        phone.until("document.querySelectorAll('#notes li').length == 3");
        assertThat(text("#running")).contains("Paper Water", "DI, GL, KF, CS");
        phone.until("document.getElementById('where').textContent.includes('km 4.40')");

        see("grey wagtail", "pair");
        see("kingfisher", "seen");
        phone.tap("#undo");
        phone.until("document.querySelectorAll('#notes li').length == 4");

        phone.tap("#finish");
        assertThat(text("#seen"))
                .isEqualTo("dipper: 2 notedgrey wagtail: 1 notedkingfisher: looked for, not seencommon sandpiper:"
                        + " looked for, not seen");
        phone.keep(PICTURES.resolve("pocket-end.png"), false);
        phone.tap("#finish-now");
        phone.until("document.getElementById('finish').hidden");

        Path handedOut = handOut();
        assertThat(phone.complaints()).isEmpty();
        assertThat(phone.asked()).allSatisfy(address -> assertThat(address).matches("(file|data|blob|about):.*"));

        CommandRun first = RiverOfPaper.run("import", book, handedOut);
        assertThat(first.out()).contains("4 rows are in the book");
        CommandRun second = RiverOfPaper.run("import", book, handedOut);
        assertThat(second.out()).doesNotContain("rows are in the book");
        isInTheBookAsItWasSeen();
    }

    private Path handOut() throws Exception {
        Path out = Files.createDirectory(folder.resolve("handed-out"));
        phone.tell("Browser.setDownloadBehavior", Map.of("behavior", "allow", "downloadPath", out.toString()));
        phone.tap("#save");
        long end = System.nanoTime() + Duration.ofSeconds(30).toNanos();
        while (System.nanoTime() < end) {
            try (Stream<Path> files = Files.list(out)) {
                List<Path> zips =
                        files.filter(file -> file.toString().endsWith(".zip")).toList();
                if (!zips.isEmpty()) {
                    return zips.get(0);
                }
            }
            Thread.sleep(50);
        }
        throw new AssertionError("nothing was handed out");
    }

    private void isInTheBookAsItWasSeen() {
        JsonArray dippers = shown("dipper");
        assertThat(dippers).hasSize(2);
        JsonObject singing = dippers.get(0).getAsJsonObject();
        JsonObject other = dippers.get(1).getAsJsonObject();
        assertThat(singing.get("km").getAsDouble()).isCloseTo(3.2, within(0.002));
        assertThat(other.get("km").getAsDouble()).isCloseTo(3.5, within(0.002));
        assertThat(singing.toString()).contains("singing");
        assertThat(other.get("turnedBack").getAsBoolean()).isTrue();
        assertThat(other.get("flewToKm").getAsDouble()).isCloseTo(3.9, within(0.002));
        assertThat(other.get("simultaneousWith").toString())
                .contains(singing.get("key").getAsString());
        assertThat(shown("grey wagtail").get(0).getAsJsonObject().get("count").getAsInt())
                .isEqualTo(2);
        assertThat(shown("kingfisher")).isEmpty();
    }

    /** The records of this year's walk, as scripts read them. */
    private JsonArray shown(String species) {
        LocalDate yesterday = LocalDate.now(ZoneId.systemDefault()).minusDays(1);
        CommandRun run =
                RiverOfPaper.run("show", book, "sightings", "--species", species, "--from", yesterday, "--json");
        return JsonParser.parseString(run.out()).getAsJsonObject().getAsJsonArray("sightings");
    }

    @Test
    void takesALandmarkWhereThePhoneTellsNoPosition() {
        phone.tell("Browser.setPermission", Map.of("permission", Map.of("name", "geolocation"), "setting", "denied"));
        open();
        phone.until("document.getElementById('fix').textContent.includes('refuses')");
        assertThat(text("#where")).isEqualTo("Where are you?");
        assertThat(text("#fix")).contains("kept as a file", "Choose a landmark");

        phone.tap("[data-species=dipper]");
        phone.tap("[data-doing=food]");
        assertThat(text("#warning")).contains("First a place");
        phone.tap("#landmarks li:nth-child(2) button");
        phone.until("document.querySelectorAll('#notes li').length == 1");

        assertThat(text("#said")).endsWith("DI food in bill, Paper Water km 3.20");
        phone.tap("#up50");
        assertThat(text("#where")).isEqualTo("Paper Water km 3.25");
        assertThat(text("#fix")).isEqualTo("50 m above Otter Stone · as you chose");
    }

    /** Who walks on from a landmark does not think of the phone. */
    @Test
    void followsThePhoneAgainWhereItHasGoneOn() {
        standAt(1.0);
        open();
        phone.until("document.getElementById('where').textContent.includes('km 1.00')");
        phone.tap("#landmarks li:nth-child(1) button");
        phone.until("document.getElementById('fix').textContent.includes('as you chose')");

        standAt(1.4);

        phone.until("document.getElementById('where').textContent.includes('km 1.40')");
        assertThat(text("#warning")).contains("gone on");
    }

    @Test
    void bringsBackWhatWasDeletedByMistake() {
        standAt(1.0);
        open();
        phone.until("document.getElementById('where').textContent.includes('km 1.00')");
        see("dipper", "seen");
        phone.tap("#undo");
        phone.until("document.querySelectorAll('#notes li').length == 0");

        phone.tap("#last button");

        phone.until("document.querySelectorAll('#notes li').length == 1");
    }

    @Test
    void saysSoWhereTheBrowserKeepsNothing() {
        phone.tell("Page.addScriptToEvaluateOnNewDocument", Map.of("source", """
                Object.defineProperty(window, 'indexedDB', { get() { throw new DOMException('no', 'SecurityError'); } });
                Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError'); } });
                """));
        standAt(1.0);
        open();

        phone.until("document.getElementById('warning').textContent.includes('keeps nothing')");
        phone.until("document.getElementById('where').textContent.includes('km 1.00')");
        see("dipper", "seen");
        phone.ask("document.dispatchEvent(new Event('visibilitychange'))");
        assertThat(phone.ask("document.querySelectorAll('#notes li').length")).isEqualTo("1");
        assertThat(text("#warning")).contains("keeps nothing");
    }

    /** A visit that is deleted takes no bird with it. */
    @Test
    void handsOutTheBirdsOfADeletedVisitAsCasual() throws Exception {
        standAt(1.0);
        open();
        phone.until("document.getElementById('where').textContent.includes('km 1.00')");
        phone.tap("#begin");
        phone.tap("#begin-now");
        phone.until("!document.getElementById('finish').hidden");
        see("dipper", "singing");
        assertThat(text("#kept")).contains("Held back until the visit is ended: 2.");
        phone.tap("#notes .walk button");
        phone.tap("#notes .walk button");
        phone.until("document.querySelectorAll('#notes li').length == 1");

        CommandRun run = RiverOfPaper.run("import", book, handOut());

        assertThat(run.out()).contains("1 row is in the book");
        assertThat(shown("dipper").get(0).getAsJsonObject().get("visit").isJsonNull())
                .isTrue();
    }

    /** A casual bird beside which another of an open walk was seen waits for it: alone, its table would name a record that is not there. */
    @Test
    void holdsBackWhatWasSeenAtOnceWithABirdThatIsHeldBack() throws Exception {
        standAt(1.0);
        open();
        phone.until("document.getElementById('where').textContent.includes('km 1.00')");
        see("dipper", "singing");
        phone.tap("#begin");
        phone.tap("#begin-now");
        phone.until("!document.getElementById('finish').hidden");
        see("dipper", "seen");
        phone.tap("#together");
        phone.until("document.getElementById('together').getAttribute('aria-pressed') == 'true'");
        assertThat(text("#kept")).contains("Held back until the visit is ended: 3.");
        assertThat(phone.ask("document.getElementById('save').disabled")).isEqualTo("true");

        standAt(1.4);
        phone.until("document.getElementById('where').textContent.includes('km 1.40')");
        phone.tap("#finish");
        phone.tap("#finish-now");
        phone.until("document.getElementById('finish').hidden");
        CommandRun run = RiverOfPaper.run("import", book, handOut());

        assertThat(run.out()).contains("3 rows are in the book").doesNotContain("Worth a look");
        phone.tap("#one-more");
        assertThat(text("#warning")).contains("handed out before");
    }

    @Test
    void hearsOfWhatIsNotedInAnotherTab() throws Exception {
        standAt(1.0);
        open();
        phone.until("document.getElementById('where').textContent.includes('km 1.00')");
        see("dipper", "seen");

        // The store of another tab, as that tab writes it.
        phone.ask("""
                (async () => {
                  const key = 'ouzelbook-pocket-' + JSON.parse(document.getElementById('water').textContent).key;
                  const db = await new Promise(done => { const asked = indexedDB.open(key); asked.onsuccess = () => done(asked.result); });
                  const step = db.transaction('entries', 'readwrite');
                  const entries = step.objectStore('entries');
                  entries.getAll().onsuccess = told => entries.put({ ...told.target.result[0], id: 'b'.repeat(36), species: 'kingfisher' });
                  await new Promise(done => { step.oncomplete = done; });
                  new BroadcastChannel(key).postMessage('changed');
                })()""");

        phone.until("document.querySelectorAll('#notes li').length == 2");
    }

    @Test
    void fallsBackToTheSmallerStore() {
        phone.tell("Page.addScriptToEvaluateOnNewDocument", Map.of("source", """
                Object.defineProperty(window, 'indexedDB', { get() { throw new DOMException('no', 'SecurityError'); } });
                """));
        standAt(1.0);
        open();
        phone.until("document.getElementById('where').textContent.includes('km 1.00')");
        see("dipper", "seen");

        open();

        phone.until("document.querySelectorAll('#notes li').length == 1");
    }

    @Test
    void saysSoWhereThePhoneIsFull() {
        phone.tell("Page.addScriptToEvaluateOnNewDocument", Map.of("source", """
                IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError'); };
                """));
        standAt(1.0);
        open();
        phone.until("document.getElementById('where').textContent.includes('km 1.00')");
        see("dipper", "seen");

        phone.until("document.getElementById('warning').textContent.includes('could not keep')");
        assertThat(phone.ask("document.getElementById('save').disabled")).isEqualTo("false");
    }

    /** Text of twice the size: Web Content Accessibility Guidelines 2.1, 1.4.4 Resize Text, W3C 2018. */
    @ParameterizedTest(name = "{0} pixels wide, {1} %")
    @CsvSource({"320, 100", "360, 100", "412, 100", "640, 100", "320, 200", "360, 200"})
    void fitsPhonesOfEveryWidthAndLargeLetters(int width, int percent) {
        standAt(1.0);
        phone.size(width, 640, true);
        open();
        phone.until("document.getElementById('where').textContent.includes('km 1.00')");
        phone.ask("document.documentElement.style.fontSize = '" + 1.125 * percent + "%'");

        assertThat(phone.ask("document.documentElement.scrollWidth")).isEqualTo(String.valueOf(width));
        assertThat(phone.ask("""
                [...document.querySelectorAll('button')].filter(b => b.scrollWidth > b.clientWidth + 1).map(b => b.textContent)""")).isEqualTo("[]");
        assertThat(phone.ask("""
                [...document.querySelectorAll('#notes button, input, select')].filter(e => !e.ariaLabel && !e.closest('label')).length""")).isEqualTo("0");
    }

    @Test
    void isDarkWhereThePhoneIs() throws IOException {
        phone.tell(
                "Emulation.setEmulatedMedia",
                Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", "dark"))));
        standAt(1.0);
        open();
        phone.until("document.getElementById('where').textContent.includes('km 1.00')");
        see("dipper", "seen");
        phone.keep(PICTURES.resolve("pocket-dark.png"), false);

        assertThat(phone.ask("getComputedStyle(document.documentElement).backgroundColor"))
                .isEqualTo("rgb(0, 0, 0)");
        assertThat(JsonParser.parseString(phone.ask(Weak.EYES))
                        .getAsJsonObject()
                        .get("faint")
                        .toString())
                .isEqualTo("[]");
    }

    @Test
    void hasTargetsForColdFingersAndFitsThePhone() {
        standAt(1.0);
        open();
        phone.until("document.getElementById('where').textContent.includes('km 1.00')");

        assertThat(phone.ask("document.documentElement.scrollWidth")).isEqualTo("390");
        // 44 CSS pixels: Web Content Accessibility Guidelines 2.1, 2.5.5 Target Size, W3C 2018.
        assertThat(phone.ask("""
                [...document.querySelectorAll('button')].filter(b => b.getClientRects().length)
                  .map(b => b.getBoundingClientRect()).filter(b => b.width < 44 || b.height < 44).length""")).isEqualTo("0");
        assertThat(JsonParser.parseString(phone.ask(Weak.EYES))
                        .getAsJsonObject()
                        .get("faint")
                        .toString())
                .isEqualTo("[]");
    }

    @Test
    void holdsNoNestNoRingAndNoPerson() throws IOException {
        assertThat(Files.readString(page))
                .contains("Otter Stone")
                .doesNotContain(
                        "hidden-nest", "5.28", "AB12345", "bird-one", "Quill", "odd-label", "nest_site", "nestSite");
    }

    @Test
    void isTheSameByteForByteWhenMadeAgain() {
        RiverOfPaper.run("pocket", book, "-o", folder.resolve("again.html"));

        assertThat(folder.resolve("again.html")).hasSameBinaryContentAs(page);
    }
}
