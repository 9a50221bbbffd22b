package sensorrounds;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The one direction of calls in the jobs: cli → run → ingest, assemble, analyse, report → story, tables; steps never call each other. */
class JobsArchitectureTest {
    private static final Map<String, List<String>> MUST_NOT_KNOW = Map.of(
            "workbook",
                    List.of(
                            "visit",
                            "intake",
                            "tables",
                            "ingest",
                            "assemble",
                            "analyse",
                            "story",
                            "report",
                            "run",
                            "cli",
                            "simulate"),
            "tables", List.of("ingest", "assemble", "analyse", "story", "report", "run", "cli", "simulate"),
            "story", List.of("ingest", "assemble", "analyse", "tables", "report", "run", "cli", "simulate"),
            "ingest", List.of("story", "assemble", "analyse", "report", "run", "cli", "simulate"),
            "assemble", List.of("story", "analyse", "report", "run", "cli", "simulate"),
            "analyse", List.of("story", "ingest", "assemble", "report", "run", "cli", "simulate"),
            "report", List.of("ingest", "assemble", "analyse", "run", "cli", "simulate"),
            "simulate", List.of("story", "ingest", "assemble", "analyse", "report", "run", "cli", "tables"),
            "run", List.of("cli", "simulate"));

    private final JavaClasses jobs = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("sensorrounds");

    @TestFactory
    Stream<DynamicTest> noPackageLooksBack() {
        return MUST_NOT_KNOW.entrySet().stream()
                .map(e -> DynamicTest.dynamicTest(
                        e.getKey(),
                        () -> noClasses()
                                .that()
                                .resideInAPackage("sensorrounds." + e.getKey())
                                .should()
                                .dependOnClassesThat()
                                .resideInAnyPackage(e.getValue().stream()
                                        .map(p -> "sensorrounds." + p)
                                        .toArray(String[]::new))
                                .as("sensorrounds." + e.getKey() + " must not know " + e.getValue()
                                        + "; data flows one way (docs/decisions/0001-two-modules.md)")
                                .allowEmptyShould(true)
                                .check(jobs)));
    }

    @Test
    void theSimulatorKnowsNoEstimator() {
        noClasses()
                .that()
                .resideInAPackage("sensorrounds.simulate")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "sensorrounds.survival",
                        "sensorrounds.history",
                        "sensorrounds.condition",
                        "sensorrounds.outlook",
                        "sensorrounds.recurrence",
                        "sensorrounds.replacement",
                        "sensorrounds.stock")
                .as("a simulator that shares code with the estimators proves nothing about them")
                .allowEmptyShould(true)
                .check(jobs);
    }

    @Test
    void theReportKnowsNoSpark() {
        classes()
                .that()
                .resideInAnyPackage("sensorrounds.report", "sensorrounds.story")
                .should()
                .onlyDependOnClassesThat()
                .resideOutsideOfPackage("org.apache.spark..")
                .as("the report is written from plain records, so that it can be tested without Spark")
                .allowEmptyShould(true)
                .check(jobs);
    }
}
