package sensorrounds.report;

import java.time.LocalDate;
import java.util.List;
import sensorrounds.intake.FileDoubt;
import sensorrounds.replacement.Costs;
import sensorrounds.report.ReportData.Listed;
import sensorrounds.visit.Source;

/**
 * What a run read, refused and was set to.
 *
 * @param asOf day the figures hold for
 * @param horizonDays planning horizon of the ranking
 * @param costs costs in use
 * @param vehicles vehicles met in logs or register
 * @param sensorsInService sensors on vehicles and not known failed
 * @param firstVisit day of the first visit read; null without any
 * @param lastVisit day of the last
 * @param rows rows of all files together
 * @param files rows by file
 * @param quarantine refused rows by rule
 * @param fileDoubts what is to be doubted about whole files
 * @param settings settings used, as label and value, in the order to print
 * @param versions versions of program and platform
 */
public record RunFacts(
        String runId,
        LocalDate asOf,
        int horizonDays,
        Costs costs,
        long vehicles,
        long sensorsInService,
        LocalDate firstVisit,
        LocalDate lastVisit,
        RowCounts rows,
        Listed<FileRows> files,
        List<QuarantineGroup> quarantine,
        Listed<FileDoubt> fileDoubts,
        List<Labelled> settings,
        List<Labelled> versions) {

    public RunFacts {
        quarantine = List.copyOf(quarantine);
        settings = List.copyOf(settings);
        versions = List.copyOf(versions);
    }

    /** Where the rows went. Every row read is one of the other three, or the run has lost it. */
    public record RowCounts(long read, long accepted, long quarantined, long duplicates) {
        /** Rows that are in none of the three; other than 0 is a fault of the program. */
        public long unaccounted() {
            return read - accepted - quarantined - duplicates;
        }
    }

    /** Rows of one file. */
    public record FileRows(String file, RowCounts rows) {}

    /**
     * Rows refused by one rule.
     *
     * @param example where the first of them stands
     * @param value the offending value there; null when the row as a whole is at fault
     * @param remedy what to do about it
     */
    public record QuarantineGroup(String rule, long count, Source example, String value, String remedy) {}

    /** A value with the label people know it by. */
    public record Labelled(String label, String value) {}
}
