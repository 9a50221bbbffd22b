package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which folders can be a store, and for whom. */
class StoreOpeningTest {
    @TempDir
    private Path dir;

    @Test
    void aStoreHasOneUserAtATime() {
        String store = dir.resolve("store").toString();
        try (LogStore first = LogStore.open(store, Fixtures.HADOOP)) {
            assertThat(first.unusable()).isEmpty();
            assertThatExceptionOfType(RefusedInput.class)
                    .isThrownBy(() -> LogStore.open(store, Fixtures.HADOOP))
                    .withMessageContaining("the store is in use")
                    .withMessageContaining("way out");
        }
        LogStore.open(store, Fixtures.HADOOP).close();
    }

    @Test
    void aFolderWithOtherFilesIsNoStore() throws IOException {
        Path data = Files.createDirectories(dir.resolve("data"));
        Files.writeString(data.resolve("january.csv"), "visitId\n");
        assertThatExceptionOfType(RefusedInput.class)
                .isThrownBy(() -> LogStore.open(data.toString(), Fixtures.HADOOP))
                .withMessageContaining("not a store");
        assertThat(data.resolve("segments")).doesNotExist();
    }
}
