package org.ouzelbook.ui.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.ChoiceFormat;
import java.text.Format;
import java.text.MessageFormat;
import java.time.LocalDate;
import java.time.Year;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.ui.cli.HelpKeys;

/** The file of texts and the sources name the same keys. */
class TextsTest {
    private static final List<Path> SOURCES = Stream.of("../tracker", "../stats", ".")
            .map(module -> Path.of(module, "src/main/java"))
            .toList();

    /** A literal handed straight to a message. */
    private static final Pattern MESSAGE =
            Pattern.compile("(?:Message\\.of|new Message|Texts\\.of)\\(\\s*\"([^\"]+)\"");

    /** A literal that looks like a key. */
    private static final Pattern KEY = Pattern.compile("\"([a-z][A-Za-z]*(?:\\.[A-Za-z0-9_-]+)+)\"");

    /** The fixed part of a key whose end is a name known at run time. */
    private static final Pattern PREFIX = Pattern.compile("\"([a-z][A-Za-z]*\\.(?:[A-Za-z0-9_-]+\\.)*)\"");

    private static final Pattern FILE_NAME =
            Pattern.compile(".*\\.(csv|txt|gpx|geojson|json|html|svg|zip|sql|properties|css)");

    @Test
    void writesFactsTheSameWayEverywhere() {
        assertThat(Texts.word(Stretch.ofKm(14.2, 14.55))).isEqualTo("14.20–14.55");
        assertThat(Texts.word(LocalDate.of(2026, 3, 16))).isEqualTo("16 Mar 2026");
        assertThat(Texts.word(Year.of(2026))).isEqualTo("2026");
        assertThat(Texts.word(Bank.LEFT)).isEqualTo("left bank");
        assertThat(Texts.word(List.of("a1", "a2"))).isEqualTo("a1, a2");
    }

    @Test
    void refusesAKeyThatIsNotThere() {
        assertThatIllegalArgumentException().isThrownBy(() -> Texts.of(new Message("no.such.key", List.of())));
    }

    @Test
    void everyKeyInTheSourcesHasItsText() throws IOException {
        Set<String> sections = Texts.keys().stream()
                .map(key -> key.substring(0, key.indexOf('.')))
                .collect(Collectors.toSet());
        Set<String> used = literals(MESSAGE);
        literals(KEY).stream()
                .filter(key -> sections.contains(key.substring(0, key.indexOf('.'))))
                .filter(key -> !FILE_NAME.matcher(key).matches())
                .forEach(used::add);
        used.removeIf(key -> key.endsWith("."));

        assertThat(used).isNotEmpty().isSubsetOf(Texts.keys());
    }

    @Test
    void everyTextIsUsed() throws IOException {
        Set<String> unused = new TreeSet<>(Texts.keys());
        unused.removeAll(literals(KEY));
        unused.removeAll(HelpKeys.all());
        unused.removeAll(terms("org.ouzelbook"));
        Set<String> prefixes = literals(PREFIX);
        prefixes.remove("term.");
        unused.removeIf(key -> prefixes.stream().anyMatch(key::startsWith) && !key.startsWith("cli.option."));

        assertThat(unused).isEmpty();
    }

    @Test
    void everyTextIsAPatternAndSoIsEachOfItsChoices() {
        for (String key : Texts.keys()) {
            assertThatCode(() -> checkPattern(Texts.pattern(key))).as(key).doesNotThrowAnyException();
        }
    }

    private static void checkPattern(String pattern) {
        for (Format format : new MessageFormat(pattern, Locale.ENGLISH).getFormats()) {
            if (format instanceof ChoiceFormat choices) {
                for (Object choice : choices.getFormats()) {
                    checkPattern((String) choice);
                }
            }
        }
    }

    @Test
    void everyConstantThatCanBeShownHasItsTerm() {
        assertThat(terms("org.ouzelbook.tracker.domain", "org.ouzelbook.stats.survey"))
                .isNotEmpty()
                .isSubsetOf(Texts.keys());
    }

    @Test
    void noKeyStandsTwice() throws IOException {
        Path file = Path.of("src/main/resources/org/ouzelbook/ui/messages.properties");
        List<String> keys = Files.readAllLines(file).stream()
                .filter(line -> line.matches("[a-z][A-Za-z]*\\..*=.*"))
                .map(line -> line.substring(0, line.indexOf('=')))
                .toList();

        assertThat(keys).isNotEmpty().doesNotHaveDuplicates();
    }

    @Test
    void noTextHasAStraightApostropheWhichWouldSwallowItsFacts() {
        assertThat(Texts.keys())
                .allSatisfy(
                        key -> assertThat(Texts.pattern(key).replace("''", "")).doesNotContain("'"));
    }

    private static Set<String> terms(String... packages) {
        return new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests()).importPackages(packages).stream()
                        .filter(JavaClass::isEnum)
                        .filter(type -> type.getModifiers().contains(JavaModifier.PUBLIC))
                        .map(JavaClass::reflect)
                        .flatMap(type -> Arrays.stream(type.getEnumConstants())
                                .map(constant -> "term." + type.getSimpleName() + "." + ((Enum<?>) constant).name()))
                        .collect(Collectors.toCollection(TreeSet::new));
    }

    private static Set<String> literals(Pattern pattern) throws IOException {
        Set<String> found = new TreeSet<>();
        for (Path root : SOURCES) {
            try (Stream<Path> files = Files.walk(root)) {
                for (Path file :
                        files.filter(path -> path.toString().endsWith(".java")).toList()) {
                    pattern.matcher(Files.readString(file))
                            .results()
                            .map((MatchResult match) -> match.group(1))
                            .forEach(found::add);
                }
            }
        }
        return found;
    }
}
