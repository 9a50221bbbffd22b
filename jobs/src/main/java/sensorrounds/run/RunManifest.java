package sensorrounds.run;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.TreeMap;
import sensorrounds.analyse.FleetReviewJob;
import sensorrounds.history.FollowUp;
import sensorrounds.ingest.IngestSummary;
import sensorrounds.ingest.Pseudonyms;
import sensorrounds.intake.FileDoubt;
import sensorrounds.outlook.UnmonitoredWheel.Certainty;
import sensorrounds.recurrence.FalseFlags;
import sensorrounds.replacement.Advice;
import sensorrounds.review.FleetTotals;
import sensorrounds.run.ResultTables.Heads;

/** {@code run.json}: what a run read, used and wrote, for programs. Equal input gives equal bytes. */
final class RunManifest {
    private static final JsonMapper JSON = new JsonMapper();

    private RunManifest() {}

    static String of(
            LocalDate asOf,
            RunInputs inputs,
            Pseudonyms pseudonyms,
            IngestSummary ingest,
            FleetReviewJob.Result review,
            Heads heads) {
        ObjectNode run = JSON.createObjectNode();
        run.put("contract", "1.0");
        run.put("asOf", asOf.toString());
        ObjectNode versions = run.putObject("versions");
        versions.put("sensorRounds", Versions.own());
        versions.put("spark", Versions.spark());

        ObjectNode personal = run.putObject("personalData");
        PersonalData.kept(pseudonyms).forEach((data, how) -> personal.put(data.key(), how.name()));

        ObjectNode rows = run.putObject("rows");
        rows.put("read", ingest.rowsIn());
        rows.put("accepted", ingest.accepted());
        rows.put("quarantined", ingest.quarantined());
        rows.put("duplicates", ingest.duplicateRows());
        ArrayNode files = run.putArray("files");
        for (IngestSummary.FileResult f : ingest.files()) {
            ObjectNode file = files.addObject();
            file.put("file", f.file());
            file.put("bytes", f.count().bytes());
            file.put(
                    "layout",
                    f.count().layout() == null ? "canonical" : f.count().layout());
            file.put("read", f.count().rows());
            file.put("accepted", f.accepted());
            file.put("quarantined", f.quarantined());
            file.put("duplicates", f.duplicates());
            if (f.leftOut() > 0) {
                file.put("leftOut", f.leftOut());
            }
        }
        ArrayNode reasons = run.putArray("quarantine");
        for (IngestSummary.Reason r : ingest.quarantine()) {
            ObjectNode reason = reasons.addObject();
            reason.put("rule", r.rule().name());
            reason.put("field", r.field());
            reason.put("rows", r.rows());
        }
        ArrayNode doubts = run.putArray("fileDoubts");
        for (FileDoubt d : ingest.fileDoubts()) {
            ObjectNode doubt = doubts.addObject();
            doubt.put("file", d.file());
            doubt.put("kind", d.kind().name());
            doubt.put("what", d.what());
        }
        ObjectNode fleet = run.putObject("fleet");
        fleet.put("vehicles", review.counts().vehicles());
        fleet.put("sensorsInService", review.counts().sensorsInService());
        FleetTotals totals = review.totals();
        fleet.put("replaceNow", totals.lines(Advice.REPLACE_NOW));
        fleet.put("savingNow", totals.saving(Advice.REPLACE_NOW));
        fleet.put("outlayNow", totals.outlay(Advice.REPLACE_NOW));
        fleet.put("readFirst", totals.lines(Advice.READ_FIRST));
        fleet.put("atNextStop", totals.lines(Advice.AT_NEXT_STOP));
        fleet.put("recurringVehicles", totals.recurringVehicles());
        FalseFlags chance =
                FalseFlags.ofAll(totals.recurringCells(), review.estimates().peers());
        fleet.put("recurringExpectedNoWorse", chance.expected());
        fleet.put("recurringNoWorseUpperLimit", chance.upperLimit());
        fleet.put("followUpsOpen", totals.followUps(FollowUp.State.OPEN));
        fleet.put("followUpsBackAfterProof", totals.backAfterProof());
        fleet.put("vehiclesWithUnmonitoredWheels", totals.vehiclesUnmonitored(Certainty.KNOWN));
        fleet.put("vehiclesWithSilentWheels", totals.vehiclesUnmonitored(Certainty.PROBABLE));
        fleet.put("vehiclesWithSystemWarning", totals.vehiclesUnmonitored(Certainty.SYSTEM));
        ObjectNode tables = run.putObject("tables");
        new TreeMap<>(heads.rows()).forEach(tables::put);
        run.set("settings", inputs.settings().tree());
        return run.toPrettyString() + "\n";
    }
}
