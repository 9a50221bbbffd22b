package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import sensorrounds.tables.LogRow;
import sensorrounds.tables.SampleLogRows;

class BlocksTest {
    @Test
    void rowsComeOutOfTheirBlocksAsTheyWentIn() {
        List<LogRow> rows = SampleLogRows.all().stream()
                .filter(r -> r.outcome() != LogRow.Outcome.DUPLICATE)
                .toList();
        List<LogRow> back = new ArrayList<>();

        new Blocks(rows.iterator()).forEachRemaining(block -> back.addAll(Block.rows(block.bytes())));

        assertThat(back).isEqualTo(rows);
    }

    @Test
    void theWheelsOfAVisitTravelTogetherUnderTheirVehicleAndTheRestUnderItsFile() {
        List<LogRow> rows = Fixtures.read(Fixtures.EXAMPLES, Fixtures.EXAMPLES.resolve("visit-logs/visits.jsonl"));
        List<Block> blocks = new ArrayList<>();

        new Blocks(rows.iterator()).forEachRemaining(blocks::add);

        assertThat(blocks)
                .extracting(Block::key)
                .containsExactly("VAN-017", "TRL-004", "VAN-021", "visit-logs/visits.jsonl");
        assertThat(blocks).extracting(b -> Block.rows(b.bytes()).size()).containsExactly(4, 4, 1, 1);
    }
}
