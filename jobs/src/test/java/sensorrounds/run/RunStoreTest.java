package sensorrounds.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.hadoop.conf.Configuration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Runs that overlap, and runs that fail (docs/decisions/0005-publishing.md). */
class RunStoreTest {
    @TempDir
    private Path out;

    private String shown(RunStore store) {
        return store.latest().orElseThrow().getName();
    }

    @Test
    void anOlderRunThatTakesLongerDoesNotPutTheNewerOneBack() {
        RunStore store = new RunStore(out.toString(), new Configuration());
        org.apache.hadoop.fs.Path first = store.begin();
        org.apache.hadoop.fs.Path second = store.begin();
        store.publish(second);
        store.publish(first);
        assertThat(shown(store)).isEqualTo("000002");
        store.publish(store.begin());
        assertThat(shown(store)).isEqualTo("000003");
    }

    @Test
    void aRunThatFailsLeavesThePointerAndSaysWhy() throws IOException {
        RunStore store = new RunStore(out.toString(), new Configuration());
        store.publish(store.begin());
        org.apache.hadoop.fs.Path run = store.begin();
        assertThatThrownBy(() -> store.publishing(
                        run,
                        () -> {
                            throw new IllegalStateException("no room left");
                        },
                        done -> RunStore.State.DONE))
                .hasMessage("no room left");
        assertThat(shown(store)).isEqualTo("000001");
        assertThat(Files.readString(out.resolve("runs/000002/run-status.json")))
                .contains("FAILED")
                .contains("no room left");
    }
}
