package longthrow;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.PrintStream;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The arrows of the house as code: who may know whom. It lives here because this module sees all the others. */
class ArchitectureTest {
    /** Packages of core, first to last: a later one may use an earlier one, never the other way. */
    private static final List<String> CORE_ORDER =
            List.of("quantity", "formula", "term", "measurement", "answer", "build", "engine", "measure");

    private static final String CORE = "longthrow.core..";
    private static final String BUILDFILE = "longthrow.buildfile..";
    private static final String WORKSHOP = "longthrow.workshop..";

    /** Ways to files, network, clock-stamped logs and the terminal. */
    private static final String[] EDGES = {
        "java.nio.file..", "java.net..", "java.sql..", "javax.sql..", "java.util.logging..", "java.awt..", "java.rmi.."
    };

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
    void buildfileKnowsOnlyItselfCoreTheLanguageTheYamlReaderAndJspecify() {
        classes()
                .that(resideInAnyPackage(BUILDFILE))
                .should()
                .onlyDependOnClassesThat(resideInAnyPackage(
                        BUILDFILE, CORE, "java..", "org.snakeyaml.engine..", "org.jspecify.annotations..", ""))
                .allowEmptyShould(true)
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
                        describe("belong to java.io other than in-memory text", ArchitectureTest::isFileIo))
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
                .dependOnClassesThat(DescribedPredicate.<JavaClass>alwaysFalse()
                        .or(describe("are print streams", c -> c.isEquivalentTo(PrintStream.class))))
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

    @Test
    void onlyTheWorkshopKnowsTheWorkshop() {
        noClasses()
                .that(not(resideInAnyPackage(WORKSHOP)))
                .should()
                .dependOnClassesThat(resideInAnyPackage(WORKSHOP))
                .allowEmptyShould(true)
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

    /** Records and lambdas lean on {@code Serializable}; text in memory goes through readers, writers and appendables. */
    private static boolean isFileIo(JavaClass type) {
        return type.getPackageName().equals("java.io") && !ALLOWED_IO.contains(type.getSimpleName());
    }

    private static final List<String> ALLOWED_IO = List.of(
            "Serializable",
            "Reader",
            "StringReader",
            "Writer",
            "StringWriter",
            "IOException",
            "UncheckedIOException",
            "ByteArrayInputStream",
            "ByteArrayOutputStream",
            "InputStream",
            "ObjectInputStream",
            "InvalidObjectException");
}
