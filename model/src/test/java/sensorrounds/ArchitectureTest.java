package sensorrounds;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** The one direction of data in the model: a package may know those named beside it, and the JDK, and nothing else. */
class ArchitectureTest {
    private static final Map<String, List<String>> MAY_KNOW = Map.ofEntries(
            Map.entry("visit", List.of()),
            Map.entry("numeric", List.of()),
            Map.entry("markov", List.of("numeric")),
            Map.entry("survival", List.of("numeric")),
            Map.entry("turnbull", List.of("survival", "numeric")),
            Map.entry("ranktest", List.of("turnbull", "survival", "numeric")),
            Map.entry("regression", List.of("survival", "numeric")),
            Map.entry("frailty", List.of("regression", "survival", "numeric")),
            Map.entry("causes", List.of("survival", "numeric")),
            Map.entry("cox", List.of("survival", "numeric")),
            Map.entry("accuracy", List.of("survival", "numeric")),
            Map.entry("fleet", List.of("visit")),
            Map.entry("intake", List.of("visit", "fleet")),
            Map.entry("proposal", List.of("visit", "intake")),
            Map.entry("plausibility", List.of("visit")),
            Map.entry("history", List.of("visit", "fleet", "survival")),
            Map.entry("outlook", List.of("visit", "fleet", "history", "survival", "numeric")),
            Map.entry("season", List.of("visit", "fleet", "history", "survival", "numeric")),
            Map.entry("landmark", List.of("visit", "history", "survival", "outlook")),
            Map.entry(
                    "condition",
                    List.of("visit", "fleet", "history", "outlook", "season", "survival", "markov", "numeric")),
            Map.entry(
                    "analyst",
                    List.of(
                            "visit",
                            "fleet",
                            "history",
                            "survival",
                            "outlook",
                            "landmark",
                            "season",
                            "regression",
                            "cox",
                            "frailty",
                            "accuracy",
                            "numeric")),
            Map.entry("recurrent", List.of("numeric")),
            Map.entry(
                    "recurrence", List.of("visit", "fleet", "history", "outlook", "condition", "recurrent", "numeric")),
            Map.entry("replacement", List.of("visit", "fleet", "history", "survival", "outlook", "numeric")),
            Map.entry("rounds", List.of("visit", "fleet", "history", "survival", "outlook", "replacement")),
            Map.entry("stock", List.of("visit", "fleet", "survival", "outlook", "numeric")),
            Map.entry(
                    "review",
                    List.of(
                            "visit",
                            "fleet",
                            "history",
                            "survival",
                            "turnbull",
                            "ranktest",
                            "causes",
                            "landmark",
                            "season",
                            "analyst",
                            "condition",
                            "outlook",
                            "recurrence",
                            "replacement",
                            "rounds",
                            "stock")),
            Map.entry(
                    "backtest",
                    List.of("visit", "fleet", "history", "survival", "accuracy", "outlook", "replacement", "stock")));

    private final JavaClasses model = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("sensorrounds");

    @TestFactory
    Stream<DynamicTest> eachPackageKnowsOnlyWhatComesBeforeIt() {
        return MAY_KNOW.entrySet().stream()
                .map(e -> DynamicTest.dynamicTest(e.getKey(), () -> {
                    String[] known = Stream.concat(
                                    Stream.of("java..", "sensorrounds." + e.getKey()),
                                    e.getValue().stream().map(p -> "sensorrounds." + p))
                            .toArray(String[]::new);
                    classes()
                            .that()
                            .resideInAPackage("sensorrounds." + e.getKey())
                            .should()
                            .onlyDependOnClassesThat()
                            .resideInAnyPackage(known)
                            .as("sensorrounds." + e.getKey() + " may know " + e.getValue()
                                    + " and the JDK; data flows one way" + " (docs/decisions/0001-two-modules.md)")
                            .allowEmptyShould(true)
                            .check(model);
                }));
    }

    @TestFactory
    Stream<DynamicTest> everyPackageHasItsRule() {
        return model.stream()
                .map(c -> c.getPackageName().replace("sensorrounds.", ""))
                .distinct()
                .sorted()
                .map(p -> DynamicTest.dynamicTest(
                        p,
                        () -> org.assertj.core.api.Assertions.assertThat(MAY_KNOW)
                                .as("say in ArchitectureTest what the package may know")
                                .containsKey(p)));
    }

    @TestFactory
    Stream<DynamicTest> noFilesNoClock() {
        return Stream.of("java.io.File", "java.nio.file.Files", "java.time.Clock", "java.lang.System.Logger")
                .map(name -> DynamicTest.dynamicTest(
                        name,
                        () -> com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses()
                                .should()
                                .dependOnClassesThat()
                                .haveFullyQualifiedName(name)
                                .as("the model reads no file and no clock")
                                .check(model)));
    }
}
