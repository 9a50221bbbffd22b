package sensorrounds.run;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import sensorrounds.analyse.FleetReviewJob;
import sensorrounds.fleet.Part;
import sensorrounds.fleet.Vehicle;
import sensorrounds.ingest.IngestSummary;
import sensorrounds.ingest.Pseudonyms;
import sensorrounds.intake.FileDoubt;
import sensorrounds.outlook.ReportRatios;
import sensorrounds.report.DecisionFacts;
import sensorrounds.report.ReportData;
import sensorrounds.report.ReportData.Listed;
import sensorrounds.report.ReportData.ReportRatio;
import sensorrounds.report.RunFacts;
import sensorrounds.report.RunFacts.FileRows;
import sensorrounds.report.RunFacts.Labelled;
import sensorrounds.report.RunFacts.QuarantineGroup;
import sensorrounds.report.RunFacts.RowCounts;
import sensorrounds.report.SurvivalFacts;
import sensorrounds.review.FleetCounts;
import sensorrounds.run.ResultTables.Heads;
import sensorrounds.run.TableWriter.Written;

/** Puts together what the report and the workbook show. */
final class ReportAssembly {
    /** Files listed one by one. */
    private static final int FILES = 200;

    private ReportAssembly() {}

    static ReportData of(
            String runId,
            LocalDate asOf,
            RunInputs inputs,
            Pseudonyms pseudonyms,
            IngestSummary ingest,
            FleetReviewJob.Result review,
            Heads heads) {
        Map<String, LocalDate> planned = new TreeMap<>();
        Map<String, String> depots = new TreeMap<>();
        for (Vehicle v : inputs.fleet().values()) {
            if (v.nextPlannedVisit() != null) {
                planned.put(v.vehicleId(), v.nextPlannedVisit());
            }
            if (v.depot() != null) {
                depots.put(v.vehicleId(), v.depot());
            }
        }
        return new ReportData(
                facts(runId, asOf, inputs, pseudonyms, ingest, review.counts()),
                review.estimates().fits(),
                review.estimates().curves(),
                listed(heads.ranked()),
                listed(heads.unmonitored()),
                listed(heads.recurring()),
                listed(heads.watch()),
                listed(heads.followUps()),
                review.stock(),
                List.<Part>copyOf(inputs.parts().values()),
                listed(heads.readers()),
                heads.findings(),
                review.counts().causes(),
                planned,
                depots,
                review.ratios().all().stream().map(ReportAssembly::ratio).toList(),
                review.totals(),
                review.counts()
                        .warnings()
                        .summary(
                                review.totals().recurringCells(),
                                review.estimates().peers()),
                new SurvivalFacts(
                        review.estimates().incidence(),
                        review.estimates().comparisons(),
                        inputs.settings().review().preventiveWarningShare(),
                        review.ahead(),
                        review.calendar(),
                        Optional.of(review.estimates().vehicles())),
                new DecisionFacts(review.weeks(), heads.firstWeek(), review.budget()),
                VehiclePages.names(heads.recurring().first().stream()
                        .limit(inputs.settings().reportRows())
                        .toList()));
    }

    private static RunFacts facts(
            String runId,
            LocalDate asOf,
            RunInputs inputs,
            Pseudonyms pseudonyms,
            IngestSummary ingest,
            FleetCounts counts) {
        List<FileRows> files = ingest.files().stream()
                .map(f -> new FileRows(
                        f.file(), new RowCounts(f.count().rows(), f.accepted(), f.quarantined(), f.duplicates())))
                .toList();
        List<FileDoubt> doubts = ingest.fileDoubts();
        return new RunFacts(
                runId,
                asOf,
                inputs.settings().review().outlook().horizonDays(),
                inputs.settings().review().costs(),
                counts.vehicles(),
                counts.sensorsInService(),
                counts.firstVisit(),
                counts.lastVisit(),
                new RowCounts(ingest.rowsIn(), ingest.accepted(), ingest.quarantined(), ingest.duplicateRows()),
                new Listed<>(files.subList(0, Math.min(FILES, files.size())), files.size()),
                ingest.quarantine().stream().map(ReportAssembly::quarantine).toList(),
                new Listed<>(doubts.subList(0, Math.min(FILES, doubts.size())), doubts.size()),
                Stream.concat(
                                Stream.of(new Labelled("personal data", PersonalData.words(pseudonyms))),
                                inputs.settings().flat().stream().map(e -> new Labelled(e.getKey(), e.getValue())))
                        .toList(),
                List.of(new Labelled("sensor-rounds", Versions.own()), new Labelled("Spark", Versions.spark())));
    }

    private static QuarantineGroup quarantine(IngestSummary.Reason reason) {
        IngestSummary.Example first = reason.examples().get(0);
        String field = reason.field() == null ? "" : " (" + reason.field() + ")";
        return new QuarantineGroup(
                reason.rule().words() + field, reason.rows(), first.source(), first.rawValue(), reason.remedy());
    }

    private static ReportRatio ratio(ReportRatios.Ratio r) {
        return new ReportRatio(r.report(), r.ratio(), r.observed(), r.expected());
    }

    static <T> Listed<T> listed(Written<T> written) {
        return new Listed<>(written.first(), written.rows());
    }
}
