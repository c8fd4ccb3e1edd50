package org.ouzelbook.ui;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.lang.conditions.ArchConditions.callCodeUnitWhere;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.ACCESS_STANDARD_STREAMS;

import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import java.io.File;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.FileWriter;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.util.Set;
import javax.imageio.ImageIO;

/** The arrows of the house: ui → stats → tracker, and those between the rooms. */
@AnalyzeClasses(packages = "org.ouzelbook", importOptions = DoNotIncludeTests.class)
class ArchitectureTest {
    private static final String DOMAIN = "org.ouzelbook.tracker.domain..";
    private static final String STORE = "org.ouzelbook.tracker.store..";
    private static final String EXCHANGE = "org.ouzelbook.tracker.exchange..";
    private static final String STATS = "org.ouzelbook.stats..";
    private static final String ESTIMATOR = "org.ouzelbook.stats.estimator..";
    private static final String UI = "org.ouzelbook.ui..";
    private static final String APP = "org.ouzelbook.ui.app..";
    private static final String STRIP = "org.ouzelbook.ui.strip..";
    private static final String WINDOW = "org.ouzelbook.ui.window..";
    private static final String CLI = "org.ouzelbook.ui.cli..";
    private static final String REPORT = "org.ouzelbook.ui.report..";

    private static final Set<String> OWN_MEMORY = Set.of(
            "org.ouzelbook.ui.window.Desk",
            "org.ouzelbook.ui.window.Look",
            "org.ouzelbook.ui.window.RecentBooks",
            "org.ouzelbook.ui.window.StripBench",
            "org.ouzelbook.ui.cli.Failures");

    private static final Set<String> WAYS_OUT =
            Set.of("write", "writeString", "newOutputStream", "newBufferedWriter", "newByteChannel", "copy", "move");

    private static final ArchCondition<JavaClass> WRITE_A_FILE =
            callCodeUnitWhere(describe("writes a file", ArchitectureTest::writesAFile));

    private static boolean writesAFile(JavaCall<?> call) {
        JavaClass owner = call.getTargetOwner();
        String name = call.getTarget().getName();
        if (owner.isEquivalentTo(Files.class)) {
            return WAYS_OUT.contains(name);
        }
        if (owner.isEquivalentTo(ImageIO.class)) {
            return name.equals("write")
                    && call.getTarget().getRawParameterTypes().get(2).isEquivalentTo(File.class);
        }
        return name.equals("<init>")
                && call.getTarget().getRawParameterTypes().stream()
                        .noneMatch(type -> type.isEquivalentTo(FileDescriptor.class))
                && (owner.isEquivalentTo(FileOutputStream.class)
                        || owner.isEquivalentTo(FileWriter.class)
                        || owner.isEquivalentTo(RandomAccessFile.class));
    }

    @ArchTest
    static final ArchRule trackerKnowsNeitherMeaningNorScreens = noClasses()
            .that()
            .resideInAPackage("org.ouzelbook.tracker..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(STATS, UI, "javafx..")
            .because("records outlive every analysis and every screen that is made of them");

    @ArchTest
    static final ArchRule statsKnowsNoScreens = noClasses()
            .that()
            .resideInAPackage(STATS)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(UI, "javafx..")
            .because("an answer must be the same in the window, at the command line and in the report");

    @ArchTest
    static final ArchRule statsKnowsNoStoreAndNoFiles = noClasses()
            .that()
            .resideInAPackage(STATS)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(STORE, EXCHANGE, "java.sql..")
            .because("an analysis takes records as values, so that it can be tested and repeated without a book");

    @ArchTest
    static final ArchRule domainKnowsTheJdkOnly = classes()
            .that()
            .resideInAPackage(DOMAIN)
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(DOMAIN, "java..", "org.jspecify.annotations")
            .because("everything stands on the records, so they stand on nothing");

    @ArchTest
    static final ArchRule estimatorKnowsNothingOfOurs = noClasses()
            .that()
            .resideInAPackage(ESTIMATOR)
            .should()
            .dependOnClassesThat(resideInAPackage("org.ouzelbook..").and(resideOutsideOfPackage(ESTIMATOR)))
            .because("a statistician must be able to check an estimator against a paper without knowing any bird");

    @ArchTest
    static final ArchRule riverKnowsRecordsOnly = noClasses()
            .that()
            .resideInAPackage("org.ouzelbook.tracker.river..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(STORE, EXCHANGE)
            .because("a distance along the water does not depend on where the line is kept");

    @ArchTest
    static final ArchRule storeKnowsNoFileFormats = noClasses()
            .that()
            .resideInAPackage(STORE)
            .should()
            .dependOnClassesThat()
            .resideInAPackage(EXCHANGE)
            .because("the book must open and close whatever formats come and go");

    @ArchTest
    static final ArchRule sqlStaysInTheStore = noClasses()
            .that()
            .resideOutsideOfPackages(STORE, "org.ouzelbook.tracker.exchange.geopackage..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("java.sql..", "javax.sql..", "org.h2..")
            .because("only the book may know how it is kept; a GeoPackage is a SQLite file by its standard");

    @ArchTest
    static final ArchRule appKnowsNoFace = noClasses()
            .that()
            .resideInAPackage(APP)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(WINDOW, CLI, REPORT, "javafx..", "picocli..")
            .because("one use case has three faces, and serves each alike");

    @ArchTest
    static final ArchRule stripKnowsNoPaper = noClasses()
            .that()
            .resideInAPackage(STRIP)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(WINDOW, CLI, REPORT, "javafx..")
            .because("the same shapes make the window, the report and the printed sheet");

    @ArchTest
    static final ArchRule reportKnowsNoScreen = noClasses()
            .that()
            .resideInAPackage(REPORT)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(WINDOW, CLI, "javafx..")
            .because("a report must be made where there is no display");

    @ArchTest
    static final ArchRule commandLineKnowsNoJavafx = noClasses()
            .that()
            .resideInAnyPackage(CLI, "org.ouzelbook.ui")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("javafx..")
            .because("a command must run on a machine that has no display and no JavaFX");

    @ArchTest
    static final ArchRule windowKnowsNoCommandLine = noClasses()
            .that()
            .resideInAPackage(WINDOW)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(CLI, "picocli..")
            .because("what both can do is a use case, and stands in ui.app");

    @ArchTest
    static final ArchRule picocliStaysAtTheCommandLine = noClasses()
            .that()
            .resideOutsideOfPackage(CLI)
            .should()
            .dependOnClassesThat()
            .resideInAPackage("picocli..")
            .because("only commands are parsed");

    @ArchTest
    static final ArchRule printingToPaperStaysInTheReport = noClasses()
            .that()
            .resideOutsideOfPackage(REPORT)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("com.openhtmltopdf..", "org.apache.fontbox..", "org.apache.batik..")
            .because("only pages are printed, and the printer may change");

    @ArchTest
    static final ArchRule paperIsReadWhereLeaksAreSought = noClasses()
            .that()
            .resideOutsideOfPackages(REPORT, "org.ouzelbook.ui.app.leak..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("org.apache.pdfbox..")
            .because("a printed page is read again only to see that it tells no nest");

    @ArchTest
    static final ArchRule nobodyPrintsPastTheTerminal = noClasses()
            .that()
            .doNotHaveFullyQualifiedName("org.ouzelbook.stats.simulate.calibration.Calibration")
            .should(ACCESS_STANDARD_STREAMS)
            .because(
                    "whatever a person reads goes through the terminal that the command was given, so that tests see it;"
                            + " the bench is run by those who build the program, and shows them how far it is");

    @ArchTest
    static final ArchRule whoWritesAFileSaysForWhom = noClasses()
            .that()
            .resideInAPackage(UI)
            .and()
            .resideOutsideOfPackage("org.ouzelbook.ui.app.leak..")
            .and(describe("keep no memory of the program’s own", one -> !OWN_MEMORY.contains(one.getFullName())))
            .should(WRITE_A_FILE)
            .because(
                    "a file is written by PublicFile, which looks through it, or by PrivateFile, so that nothing goes out unlooked"
                            + " at by mistake; those named keep what the program remembers of itself, in files that no one is given")
            .allowEmptyShould(false);

    @ArchTest
    static final ArchRule onlyMainEndsTheProgram = noClasses()
            .that()
            .doNotHaveFullyQualifiedName("org.ouzelbook.ui.Main")
            .should()
            .callMethod(System.class, "exit", int.class)
            .because("a command says how it went and leaves the end to Main");
}
