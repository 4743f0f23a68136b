package longthrow;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchCondition;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The arrows of the house as code: who may know whom. It lives here because this module sees all the others. */
class ArchitectureTest {
    /** Packages of core, first to last: a later one may use an earlier one, never the other way. */
    private static final List<String> CORE_ORDER = List.of(
            "quantity",
            "formula",
            "term",
            "catalogue",
            "measurement",
            "answer",
            "build",
            "motion",
            "gas",
            "recording",
            "reduce",
            "gain",
            "flow",
            "pipe",
            "cycle",
            "engine",
            "measure",
            "fit",
            "life",
            "power",
            "dyno",
            "overlay",
            "shake",
            "clearance",
            "clear",
            "book");

    private static final String CORE = "longthrow.core..";
    private static final String VECTOR = "longthrow.vector..";
    private static final String BUILDFILE = "longthrow.buildfile..";
    /** Written by the template compiler at every build. */
    private static final String PAGES = "longthrow.workshop.web.pages..";

    private static final String WORKSHOP = "longthrow.workshop..";

    private static final String WEB = "longthrow.workshop.web";
    private static final String STORE = "longthrow.workshop.store..";

    /** Ways to a database. */
    private static final String[] DATABASES = {
        "java.sql..", "javax.sql..", "org.sqlite..", "org.jdbi..", "org.flywaydb..", "com.zaxxer.hikari.."
    };

    /** Ways to files, network, clock-stamped logs and the terminal. */
    private static final String[] EDGES = {
        "java.nio.file..", "java.net..", "java.sql..", "javax.sql..", "java.util.logging..", "java.awt..", "java.rmi.."
    };

    /** What of java.io may be used all the same: none of it reaches outside the process. */
    private static final List<String> IN_MEMORY_IO = List.of(
            "Serializable",
            "IOException",
            "UncheckedIOException",
            "Reader",
            "StringReader",
            "Writer",
            "StringWriter",
            "InputStream",
            "ByteArrayInputStream",
            "OutputStream",
            "ByteArrayOutputStream");

    private static final JavaClasses LONGTHROW = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("longthrow");

    @Test
    void coreKnowsOnlyItselfTheLanguageHipparchusAndJspecify() {
        // Array types of primitives live in the package without name.
        classes()
                .that(resideInAnyPackage(CORE))
                .should()
                .onlyDependOnClassesThat(
                        resideInAnyPackage(CORE, "java..", "org.hipparchus..", "org.jspecify.annotations..", ""))
                .allowEmptyShould(true)
                .check(LONGTHROW);
    }

    @Test
    void buildfileKnowsOnlyItselfCoreTheLanguageTheYamlAndCsvReadersAndJspecify() {
        classes()
                .that(resideInAnyPackage(BUILDFILE))
                .should()
                .onlyDependOnClassesThat(resideInAnyPackage(
                        BUILDFILE,
                        CORE,
                        "java..",
                        "org.snakeyaml.engine..",
                        "de.siegmar.fastcsv..",
                        "org.jspecify.annotations..",
                        ""))
                .allowEmptyShould(true)
                .check(LONGTHROW);
    }

    @Test
    void vectorKnowsOnlyCoreAndTheIncubatorAndNobodyElseKnowsThat() {
        classes()
                .that(resideInAnyPackage(VECTOR))
                .should()
                .onlyDependOnClassesThat(resideInAnyPackage(
                        VECTOR, CORE, "java..", "jdk.incubator.vector..", "org.jspecify.annotations..", ""))
                .check(LONGTHROW);
        noClasses()
                .that(resideOutsideOfPackage(VECTOR))
                .should()
                .dependOnClassesThat(resideInAnyPackage("jdk.incubator.."))
                .check(LONGTHROW);
    }

    @Test
    void coreAndBuildfileReachNoFileNetworkStoreOrLog() {
        noClasses()
                .that(resideInAnyPackage(CORE, BUILDFILE))
                .should()
                .dependOnClassesThat(resideInAnyPackage(EDGES))
                .orShould()
                .dependOnClassesThat(
                        describe("belong to java.io and can reach outside the process", ArchitectureTest::isFileIo))
                .allowEmptyShould(true)
                .check(LONGTHROW);
    }

    @Test
    void coreAndBuildfileDoNotSpeakToTheTerminal() {
        noClasses()
                .that(resideInAnyPackage(CORE, BUILDFILE))
                .should()
                .accessField(System.class, "out")
                .orShould()
                .accessField(System.class, "err")
                .orShould()
                .accessField(System.class, "in")
                .orShould()
                .dependOnClassesThat(describe("are print streams", type -> type.isEquivalentTo(PrintStream.class)))
                .allowEmptyShould(true)
                .check(LONGTHROW);
    }

    @Test
    void coreReadsNoClock() {
        noClasses()
                .that(resideInAnyPackage(CORE))
                .should()
                .callMethod(System.class, "currentTimeMillis")
                .orShould()
                .callMethod(System.class, "nanoTime")
                .orShould()
                .callMethodWhere(describe(
                        "reads the clock of java.time",
                        call -> call.getTargetOwner().getPackageName().equals("java.time")
                                && call.getTarget().getName().equals("now")))
                .allowEmptyShould(true)
                .check(LONGTHROW);
    }

    @ParameterizedTest
    @MethodSource("earlierAndLater")
    void earlierPackagesOfCoreDoNotUseLaterOnes(String earlier, String[] later) {
        noClasses()
                .that(resideInAnyPackage("longthrow.core." + earlier + ".."))
                .should()
                .dependOnClassesThat(resideInAnyPackage(later))
                .allowEmptyShould(true)
                .check(LONGTHROW);
    }

    @Test
    void everyClassOfCoreStandsInAPackageWithAPlaceInTheOrder() {
        String[] placed =
                CORE_ORDER.stream().map(name -> "longthrow.core." + name + "..").toArray(String[]::new);
        classes()
                .that(resideInAnyPackage(CORE))
                .should()
                .resideInAnyPackage(placed)
                .allowEmptyShould(true)
                .check(LONGTHROW);
    }

    /** NullAway looks only at what is marked, so an unmarked package would go unchecked without a word. */
    @Test
    void everyClassStandsInAPackageMarkedForNullness() {
        classes()
                .that(not(resideInAnyPackage(PAGES)))
                .should(ArchCondition.from(describe(
                        "stand in a package marked @NullMarked",
                        type -> type.getPackage().isAnnotatedWith(NullMarked.class))))
                .check(LONGTHROW);
    }

    @Test
    void onlyTheWorkshopKnowsTheWorkshop() {
        noClasses()
                .that(not(resideInAnyPackage(WORKSHOP)))
                .should()
                .dependOnClassesThat(resideInAnyPackage(WORKSHOP))
                .allowEmptyShould(true)
                .check(LONGTHROW);
    }

    @Test
    void onlyTheStoreSpeaksToADatabase() {
        noClasses()
                .that(not(resideInAnyPackage(STORE)))
                .should()
                .dependOnClassesThat(resideInAnyPackage(DATABASES))
                .check(LONGTHROW);
    }

    @Test
    void theStoreKnowsOnlyItselfTheLanguageItsLibrariesAndJspecify() {
        classes()
                .that(resideInAnyPackage(STORE))
                .should()
                .onlyDependOnClassesThat(resideInAnyPackage(DATABASES)
                        .or(resideInAnyPackage(STORE, "java..", "org.jspecify.annotations..", "")))
                .check(LONGTHROW);
    }

    @Test
    void theStoreReachesNoNetworkAndDoesNotSpeakToTheTerminal() {
        noClasses()
                .that(resideInAnyPackage(STORE))
                .should()
                .dependOnClassesThat(resideInAnyPackage("java.net..", "java.util.logging.."))
                .orShould()
                .accessField(System.class, "out")
                .orShould()
                .accessField(System.class, "err")
                .orShould()
                .accessField(System.class, "in")
                .orShould()
                .dependOnClassesThat(describe("are print streams", type -> type.isEquivalentTo(PrintStream.class)))
                .check(LONGTHROW);
    }

    /** Drawings are laid on pages and in print alike, so they know neither. */
    @Test
    void drawingsKnowOnlyThemselvesCoreTheLanguageAndJspecify() {
        classes()
                .that(resideInAnyPackage("longthrow.workshop.draw.."))
                .should()
                .onlyDependOnClassesThat(resideInAnyPackage(
                        "longthrow.workshop.draw..",
                        CORE,
                        "java.lang..",
                        "java.util..",
                        "java.math..",
                        "org.jspecify.annotations..",
                        ""))
                .check(LONGTHROW);
    }

    /** What all pages share knows none of them; a page knows no other; the main wiring knows all. */
    @ParameterizedTest
    @ValueSource(strings = {"builds", "measure", "fit", "parts", "book"})
    void aPageIsKnownToTheMainWiringAlone(String page) {
        noClasses()
                .that(not(resideInAnyPackage(WEB + "." + page + "..", PAGES, "longthrow.workshop")))
                .should()
                .dependOnClassesThat(resideInAnyPackage(WEB + "." + page + ".."))
                .check(LONGTHROW);
    }

    @Test
    void pagesReachTheDiskThroughTheStoreAndKnowNoDatabase() {
        noClasses()
                .that(resideInAnyPackage(WEB + ".."))
                .should()
                .dependOnClassesThat(
                        resideInAnyPackage("java.sql..", "javax.sql..", "org.jdbi..", "org.sqlite..", "picocli.."))
                .check(LONGTHROW);
    }

    private static Stream<Object[]> earlierAndLater() {
        return IntStream.range(0, CORE_ORDER.size() - 1).mapToObj(at -> new Object[] {
            CORE_ORDER.get(at),
            CORE_ORDER.subList(at + 1, CORE_ORDER.size()).stream()
                    .map(name -> "longthrow.core." + name + "..")
                    .toArray(String[]::new)
        });
    }

    private static boolean isFileIo(JavaClass type) {
        return type.getPackageName().equals("java.io") && !IN_MEMORY_IO.contains(type.getSimpleName());
    }

    /** What is typed can become no command of the system where none is given. */
    @Test
    void noOtherProgramIsStarted() {
        noClasses()
                .should()
                .dependOnClassesThat(describe("start programs", type -> type.isEquivalentTo(ProcessBuilder.class)))
                .orShould()
                .callMethodWhere(describe(
                        "start a program",
                        call -> call.getTargetOwner().isEquivalentTo(Runtime.class)
                                && call.getTarget().getName().equals("exec")))
                .check(LONGTHROW);
    }

    /** No script engine, no objects out of bytes, no XML: what is read stays data. */
    @Test
    void nothingReadIsRunOrBroughtToLife() {
        noClasses()
                .should()
                .dependOnClassesThat(resideInAnyPackage("javax.script..", "javax.xml..", "org.xml..", "org.w3c.."))
                .orShould()
                .dependOnClassesThat(describe("read objects", type -> type.isAssignableTo(ObjectInputStream.class)))
                .check(LONGTHROW);
    }

    @Test
    void theOnlyHashIsSha256() throws IOException {
        Path root = Path.of("").toAbsolutePath().getParent();
        try (Stream<Path> all = Files.walk(root)) {
            List<String> made = new ArrayList<>();
            for (Path source : all.filter(p -> p.toString().contains("/src/main/java/")
                            && p.toString().endsWith(".java"))
                    .toList()) {
                Pattern.compile("MessageDigest\\.getInstance\\(([^)]*)\\)")
                        .matcher(Files.readString(source))
                        .results()
                        .forEach(hash -> made.add(hash.group(1)));
            }
            assertThat(made).isNotEmpty().containsOnly("\"SHA-256\"");
        }
    }
}
