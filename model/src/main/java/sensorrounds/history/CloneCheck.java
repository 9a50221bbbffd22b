package sensorrounds.history;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.Source;

/**
 * A new sensor that was given the old one's ID, and nobody wrote it down: the wheel has a newer tyre than before, so its
 * bead was broken, and the sensor answers younger than it was. With a newer tyre a dead sensor that answers again, or a
 * battery figure that has grown, begins a new life. A grown figure without a newer tyre, and low reports or slow waking that
 * are gone in a newer tyre, are told and the life goes on. Common practice, no source; a cell's reserve does not grow (the cold lowers the report, not the reserve).
 */
final class CloneCheck {
    /** A report in air warmer by more than this says nothing against an earlier one, °C. */
    private static final double MUCH_WARMER = 10;
    /** Growth of a reported reserve that no error of reading explains. */
    private static final double PERCENT_POINTS = 40;

    private static final double MONTHS = 24;
    private static final int LOW_REPORTS = 2;
    private static final int SLOW_READS = 3;
    private static final int SLOW_TRIES = 4;
    private static final String LOOK = "look whether a new sensor was given the old ID";

    private final WheelBook book;
    private final FindingLog findings;
    private final HistorySettings settings;

    CloneCheck(WheelBook book, FindingLog findings, HistorySettings settings) {
        this.book = book;
        this.findings = findings;
        this.settings = settings;
    }

    /** @return the life that an answer belongs to: this one, or a new one under the same ID */
    LifeDraft answered(LifeDraft life, LoggedWheel row, LocalDate day) {
        if (row.wheel().read() != ReadOutcome.OK || life.lastAnswered() == null || life.sensorId() == null) {
            return life;
        }
        LocalDate tyre = row.wheel().tyreDate();
        boolean newTyre = tyre != null && life.tyre() != null && tyre.isAfter(life.tyre());
        if (newTyre && isDead(life)) {
            return begin(life, row, day, "was silent at " + life.silentDays() + " visits in a row and answers again");
        }
        Optional<String> grown = grown(life, row);
        if (newTyre && grown.isPresent()) {
            return begin(life, row, day, grown.get());
        }
        if (grown.isPresent()) {
            tell(
                    life,
                    row,
                    day,
                    grown.get(),
                    "it is kept as one life, since nothing shows that the wheel was opened; " + LOOK);
        } else if (newTyre) {
            weakSign(life, row)
                    .ifPresent(sign -> tell(
                            life,
                            row,
                            day,
                            sign + ", in a newer tyre",
                            "the sign is weak: it is kept as one life; " + LOOK));
        }
        return life;
    }

    private boolean isDead(LifeDraft life) {
        return life.silentDays() >= settings.silentVisitsForFailure();
    }

    private LifeDraft begin(LifeDraft old, LoggedWheel row, LocalDate day, String sign) {
        LocalDate tyre = row.wheel().tyreDate();
        boolean dead = isDead(old);
        tell(
                old,
                row,
                day,
                sign + "; its tyre was made in the week of " + tyre + ", the one before in the week of " + old.tyre(),
                "it is taken as a new sensor given the old ID: its life begins anew with an age that is not known, and"
                        + " the old one "
                        + (dead ? "stays counted as failed" : "ends as lost at its last answer, which is no failure"));
        Place place = old.place();
        book.unseat(old);
        old.end(
                day,
                dead
                        ? new LifeDraft.Ending(LifeEnd.FAILED, FailureCause.UNKNOWN, old.lastAnswered(), old.silentBy())
                        : new LifeDraft.Ending(LifeEnd.LOST, null, old.lastAnswered(), null));
        LocalDate notBefore = tyre.isAfter(old.lastAnswered()) ? tyre : old.lastAnswered();
        LifeDraft.Origin origin = Origins.unknown("nobody wrote down its fitting, by the signs on or before " + day)
                .notBefore(notBefore);
        return book.begin(new LifeDraft(place, old.sensorId(), row.wheel().part(), origin, day));
    }

    private void tell(LifeDraft life, LoggedWheel row, LocalDate day, String sign, String done) {
        List<Source> sources = new ArrayList<>(life.lastSources());
        sources.add(row.source());
        findings.sensor(
                Finding.Kind.CLONED_ID,
                life.sensorId(),
                new Place(life.place().wheelSet(), row.wheel().position()),
                day,
                life.name() + " " + sign,
                done,
                sources);
    }

    /** A reserve, as a figure, that grew; a report in the cold against one in warmth says nothing. */
    private static Optional<String> grown(LifeDraft life, LoggedWheel row) {
        BatteryReport is = row.wheel().battery();
        LifeReading before = life.lastReport();
        if (is == null || before == null || before.battery().kind() != is.kind() || warmer(before, row)) {
            return Optional.empty();
        }
        double growth = is.value() - before.battery().value();
        boolean grew = (is.kind() == BatteryReport.Kind.PERCENT && growth >= PERCENT_POINTS)
                || (is.kind() == BatteryReport.Kind.MONTHS && growth >= MONTHS);
        return grew ? Optional.of(reports(before, is)) : Optional.empty();
    }

    /** Low twice and now sound, or slow three times and now quick, each by one reader or in like air. */
    private Optional<String> weakSign(LifeDraft life, LoggedWheel row) {
        BatteryReport is = row.wheel().battery();
        List<LifeReading> reports =
                life.readings().stream().filter(r -> r.battery() != null).toList();
        if (is != null
                && !is.isLow(settings.battery())
                && newest(reports, LOW_REPORTS, r -> r.battery().isLow(settings.battery()) && !warmer(r, row))) {
            return Optional.of(reports(reports.get(reports.size() - 1), is));
        }
        List<LifeReading> heard = life.readings().stream()
                .filter(r -> r.answered()
                        && r.attempts() != null
                        && Objects.equals(r.readerId(), row.visit().readerId()))
                .toList();
        return Objects.equals(row.wheel().wakeAttempts(), 1)
                        && newest(heard, SLOW_READS, r -> r.attempts() >= SLOW_TRIES)
                ? Optional.of("took " + SLOW_TRIES + " tries or more at " + SLOW_READS
                        + " reads and now answers at the first")
                : Optional.empty();
    }

    private static boolean newest(List<LifeReading> readings, int n, Predicate<LifeReading> all) {
        return readings.size() >= n
                && readings.subList(readings.size() - n, readings.size()).stream()
                        .allMatch(all);
    }

    private static boolean warmer(LifeReading before, LoggedWheel row) {
        Double was = before.ambientCelsius();
        Double is = row.visit().ambientCelsius();
        return was == null || is == null || is > was + MUCH_WARMER;
    }

    private static String reports(LifeReading before, BatteryReport now) {
        return "reported its battery as " + before.battery().words() + " on " + before.day() + " and now as "
                + now.words();
    }
}
