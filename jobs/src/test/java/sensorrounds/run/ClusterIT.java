package sensorrounds.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.containers.BindMode;
import org.testcontainers.containers.GenericContainer;
import org.testcontainers.containers.Network;
import org.testcontainers.containers.startupcheck.OneShotStartupCheckStrategy;
import org.testcontainers.containers.wait.strategy.Wait;

/**
 * The packaged jar on a standalone Spark cluster of containers: a master, two workers and the program, each with a JVM
 * and a network name of its own. What holds in local mode by luck, objects shared within one JVM, classes that were
 * never sent, results that depend on where a partition was computed, does not hold here.
 *
 * <p>Needs a Docker engine and an image with Java 17 or newer ({@code -Dsensor-rounds.java-image=…}); skipped without
 * an engine. The image need hold nothing else: Spark comes from {@code target/spark}.
 */
final class ClusterIT {
    private static final String IMAGE = System.getProperty("sensor-rounds.java-image", "eclipse-temurin:17-jre");
    private static final Path HOME = Path.of("..").toAbsolutePath().normalize();
    private static final String APP = "/sensor-rounds";
    private static final String JAR = APP + "/jobs/target/sensor-rounds.jar";
    private static final String SPARK = "/spark";
    private static final String SPARK_JARS = SPARK + "/jars/*";
    private static final Duration PATIENCE = Duration.ofMinutes(5);

    @TempDir
    Path out;

    @BeforeAll
    static void needsDocker() {
        assumeThat(DockerClientFactory.instance().isDockerAvailable())
                .as("a Docker engine answers")
                .isTrue();
    }

    @Test
    void aClusterOfTwoWorkersWritesTheTablesThatOneJvmWrites() throws IOException {
        try (Network network = Network.newNetwork();
                GenericContainer<?> master = java(
                                network,
                                "master",
                                List.of("org.apache.spark.deploy.master.Master", "--host", "master", "--port", "7077"))
                        .waitingFor(Wait.forLogMessage(".*elected leader.*", 1));
                GenericContainer<?> first = worker(network, "first");
                GenericContainer<?> second = worker(network, "second");
                GenericContainer<?> program = program(network)) {
            master.start();
            first.start();
            second.start();
            program.start();

            assertThat(program.getLogs()).contains("accepted");
            assertThat(executorsStarted(first)).as(first.getLogs()).isTrue();
            assertThat(executorsStarted(second)).as(second.getLogs()).isTrue();
            Path here = SampleRun.get().folder().resolve("csv");
            Path there = out.resolve("runs/000001/csv");
            assertThat(names(there)).isEqualTo(names(here)).isNotEmpty();
            for (String name : names(here)) {
                assertThat(there.resolve(name)).as(name).hasSameTextualContentAs(here.resolve(name));
            }
        }
    }

    private static boolean executorsStarted(GenericContainer<?> worker) {
        return worker.getLogs().contains("Launching executor")
                || worker.getLogs().contains("Asked to launch executor");
    }

    private GenericContainer<?> worker(Network network, String name) {
        List<String> worker = List.of(
                "org.apache.spark.deploy.worker.Worker",
                "--host",
                name,
                "--cores",
                "1",
                "--memory",
                "1g",
                "--work-dir",
                "/work",
                "spark://master:7077");
        return java(network, name, worker).waitingFor(Wait.forLogMessage(".*Successfully registered with master.*", 1));
    }

    /** The driver: the same jar, and the command line as a user types it. */
    private GenericContainer<?> program(Network network) {
        List<String> run = List.of(
                "-Dspark.master=spark://master:7077",
                "-Dspark.jars=" + JAR,
                "-Dspark.driver.host=program",
                "-Dspark.executor.memory=768m",
                // One executor on each worker, and none of the work before both are there.
                "-Dspark.cores.max=2",
                "-Dspark.scheduler.minRegisteredResourcesRatio=1.0",
                "-Dspark.executor.defaultJavaOptions=-Duser.timezone=UTC",
                "sensorrounds.cli.Main",
                "run",
                "--data",
                APP + "/sample-data",
                "--out",
                "/out");
        return java(network, "program", run)
                .withStartupCheckStrategy(new OneShotStartupCheckStrategy().withTimeout(PATIENCE));
    }

    private GenericContainer<?> java(Network network, String name, List<String> arguments) {
        List<String> command = Stream.concat(
                        Stream.of(
                                "java",
                                "@" + APP + "/jobs/bin/jvm-options",
                                "-Xmx1g",
                                "-XX:TieredStopAtLevel=1",
                                "-cp",
                                name.equals("program") ? JAR + ":" + SPARK_JARS : SPARK_JARS),
                        arguments.stream())
                .toList();
        return new GenericContainer<>(IMAGE)
                .withNetwork(network)
                .withNetworkAliases(name)
                .withCreateContainerCmdModifier(c -> c.withHostName(name))
                .withFileSystemBind(HOME.toString(), APP, BindMode.READ_ONLY)
                // Laid out as an installation, in which workers look for the classes of executors.
                .withFileSystemBind(HOME.resolve("jobs/target/spark").toString(), SPARK + "/jars", BindMode.READ_ONLY)
                .withEnv("SPARK_HOME", SPARK)
                .withEnv("SPARK_SCALA_VERSION", System.getProperty("scala.binary.version"))
                .withFileSystemBind(out.toString(), "/out", BindMode.READ_WRITE)
                .withStartupTimeout(PATIENCE)
                .withCommand(command.toArray(String[]::new));
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(f -> f.getFileName().toString())
                    // Checksums that Hadoop's local file system leaves beside its files.
                    .filter(name -> !name.startsWith("."))
                    .sorted()
                    .toList();
        }
    }
}
