package sensorrounds.reference;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** docs/validation.md names tests that exist, and every reference case stands on a page. */
class ValidationIndexTest {
    private static final Path TOP = Path.of("..");
    private static final Pattern TEST = Pattern.compile("`([A-Z]\\w*Test)(?:\\.(\\w+))?`");

    private static List<Path> files(Path folder, String ending) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(file -> file.toString().endsWith(ending)).toList();
        }
    }

    @Test
    void everyTestNamedExists() throws IOException {
        Map<String, String> tests = new HashMap<>();
        for (String module : List.of("model", "jobs")) {
            for (Path file : files(TOP.resolve(module).resolve("src/test/java"), "Test.java")) {
                String name = file.getFileName().toString().replace(".java", "");
                tests.merge(name, Files.readString(file), String::concat);
            }
        }
        // Statistical tests are classes of the model by names of the same form.
        Set<String> estimators = files(TOP.resolve("model/src/main/java"), "Test.java").stream()
                .map(file -> file.getFileName().toString().replace(".java", ""))
                .collect(Collectors.toSet());
        List<String> missing = new ArrayList<>();
        Matcher named = TEST.matcher(Files.readString(TOP.resolve("docs/validation.md"))
                + Files.readString(TOP.resolve("docs/estimators.md"))
                + Files.readString(TOP.resolve("docs/validation-intake.md")));
        int count = 0;
        while (named.find()) {
            count++;
            String source = tests.get(named.group(1));
            if (source == null && !estimators.contains(named.group(1))
                    || source != null && named.group(2) != null && !source.contains(" " + named.group(2) + "(")) {
                missing.add(named.group());
            }
        }
        assertThat(missing).isEmpty();
        assertThat(count).isGreaterThan(100);
    }

    /** An estimator is a public class with a public method fit or test. */
    @Test
    void everyEstimatorStandsOnAMethodsPage() throws IOException {
        StringBuilder pages = new StringBuilder();
        for (Path page : files(TOP.resolve("docs"), ".md")) {
            if (page.getFileName().toString().startsWith("methods")) {
                pages.append(Files.readString(page));
            }
        }
        Pattern estimates = Pattern.compile("(?m)^    public (static )?\\S+ (fit|test)\\(");
        List<String> missing = new ArrayList<>();
        int count = 0;
        for (String area : List.of(
                "survival",
                "turnbull",
                "ranktest",
                "causes",
                "regression",
                "cox",
                "frailty",
                "season",
                "recurrent",
                "markov")) {
            for (Path file :
                    files(TOP.resolve("model/src/main/java/sensorrounds").resolve(area), ".java")) {
                String source = Files.readString(file);
                String name = file.getFileName().toString().replace(".java", "");
                if (source.contains("\npublic final class " + name)
                        && estimates.matcher(source).find()) {
                    count++;
                    if (!pages.toString().contains("`" + name + "`")) {
                        missing.add(area + "." + name);
                    }
                }
            }
        }
        assertThat(missing).isEmpty();
        assertThat(count).isGreaterThan(15);
    }

    @Test
    void everyReferenceCaseStandsOnAPage() throws IOException {
        StringBuilder pages = new StringBuilder();
        for (Path page : files(TOP.resolve("docs"), ".md")) {
            pages.append(Files.readString(page));
        }
        List<String> missing = new ArrayList<>();
        for (String area : List.of(
                "survival",
                "turnbull",
                "regression",
                "ranktest",
                "causes",
                "cox",
                "accuracy",
                "frailty",
                "replacement",
                "stock",
                "intake",
                "history")) {
            for (Path file : files(Path.of("src/test/resources/reference", area), ".json")) {
                JsonNode tree = new ObjectMapper().readTree(file.toFile());
                for (JsonNode reference : tree.has("checks") ? tree.get("checks") : tree.path("cases")) {
                    String id = reference.path("id").asText();
                    if (!pages.toString().contains(id)) {
                        missing.add(file.getFileName() + ": " + id);
                    }
                }
            }
        }
        assertThat(missing).isEmpty();
    }

    /** Areas 11 and 12 of the reference collection: what is not in the resources is named with the reason. */
    @Test
    void casesOfReplacementAndStockNotComparedAreNamed() throws IOException {
        String page = Files.readString(TOP.resolve("docs/validation-decide.md"));
        assertThat(page).contains("block-minimal-repair (", "age-discounted (", "nb-mites stands", "poisson-pi, ");
    }
}
