package sensorrounds.run;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.hadoop.fs.Path;
import org.apache.spark.sql.SparkSession;
import sensorrounds.backtest.Backtest;
import sensorrounds.backtest.Horizon;
import sensorrounds.backtest.ListKind;
import sensorrounds.backtest.ListRule;
import sensorrounds.backtest.ScoreRow;
import sensorrounds.ingest.IngestSummary;
import sensorrounds.ingest.Pseudonyms;
import sensorrounds.tables.BacktestTables;
import sensorrounds.tables.Table;

/** Writes what a backtest leaves behind for programs and spreadsheets. */
final class BacktestOutputs {
    private static final JsonMapper JSON = new JsonMapper();

    private BacktestOutputs() {}

    /** @return length of each table by name */
    static Map<String, Long> tables(SparkSession spark, RunStore store, Path folder, Backtest backtest) {
        TableWriter writer = new TableWriter(spark, store, folder, TableWriter.SMALL);
        Map<String, Long> rows = new TreeMap<>();
        write(writer, BacktestTables.LISTS, backtest.lists(), rows);
        write(writer, BacktestTables.CALIBRATION, backtest.calibration(), rows);
        write(writer, BacktestTables.SCORES, backtest.scores(), rows);
        write(writer, BacktestTables.STOCK, backtest.stock(), rows);
        write(writer, BacktestTables.FORECASTS, backtest.judged(), rows);
        return rows;
    }

    private static <T> void write(TableWriter writer, Table<T> table, List<T> all, Map<String, Long> rows) {
        rows.put(table.name(), writer.write(table, all, 0).rows());
    }

    /** {@code backtest.json}, with null for pseudonyms where personal data is kept: what it read, used and found. Equal input gives equal bytes. */
    static String manifest(
            Backtest backtest,
            RunInputs inputs,
            Pseudonyms pseudonyms,
            IngestSummary ingest,
            Map<String, Long> tables) {
        ObjectNode json = JSON.createObjectNode();
        json.put("contract", "1.0");
        json.put("asOf", backtest.lastVisit().toString());
        ObjectNode versions = json.putObject("versions");
        versions.put("sensorRounds", Versions.own());
        versions.put("spark", Versions.spark());
        ObjectNode rows = json.putObject("rows");
        rows.put("read", ingest.rowsIn());
        rows.put("accepted", ingest.accepted());
        rows.put("quarantined", ingest.quarantined());
        rows.put("duplicates", ingest.duplicateRows());
        ObjectNode personal = json.putObject("personalData");
        PersonalData.kept(pseudonyms).forEach((data, how) -> personal.put(data.key(), how.name()));
        ArrayNode cuts = json.putArray("cuts");
        backtest.cuts().forEach(cut -> cuts.add(cut.toString()));
        json.put("longestHorizonDays", backtest.settings().longest().days());
        json.put("stepDays", backtest.settings().stepDays());
        json.put("historyDays", backtest.settings().historyDays());
        json.put("graceDays", backtest.settings().graceDays());
        json.put("sampledVehicles", backtest.sampled());
        json.put("forecasts", backtest.judged().size());
        json.put("withoutChance", backtest.withoutChance());
        json.put("tooFewFailures", backtest.tooFew());
        Horizon horizon = backtest.settings().longest();
        ScoreRow score = backtest.score(horizon);
        ObjectNode found = json.putObject("longestHorizon");
        number(found, "failures", score.failures());
        number(found, "observedForExpected", score.ratio().value());
        number(found, "brier", score.brier());
        number(found, "brierByAge", score.brierByAge());
        number(found, "concordance", score.concordance());
        ObjectNode precision = found.putObject("precision");
        for (ListRule rule : ListKind.REPLACE.rules()) {
            number(
                    precision,
                    rule.name(),
                    backtest.list(ListKind.REPLACE, rule, horizon).precision().value());
        }
        ObjectNode saved = found.putObject("saved");
        for (ListRule rule : ListKind.REPLACE.rules()) {
            number(
                    saved,
                    rule.name(),
                    backtest.list(ListKind.REPLACE, rule, horizon).saved());
        }
        ObjectNode lengths = json.putObject("tables");
        tables.forEach(lengths::put);
        json.set("settings", inputs.settings().tree());
        return json.toPrettyString() + "\n";
    }

    private static void number(ObjectNode node, String key, double value) {
        if (Double.isFinite(value)) {
            node.put(key, value);
        } else {
            node.putNull(key);
        }
    }
}
