package sensorrounds.recurrent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class RatesTest {
    /** Two events at 1 and e of a unit watched to e: shape 2 / (log e + 0) = 2, scale 2 / e^2. */
    @Test
    void byHand() {
        EventHistory unit = EventHistory.observed(0, Math.E, 1, Math.E);
        PowerLawFit fit = PowerLaw.fit(List.of(unit), Truncation.TIME);
        assertThat(fit.shape()).isCloseTo(2, within(1e-13));
        assertThat(fit.scale()).isCloseTo(2 * Math.exp(-2), within(1e-13));
        assertThat(fit.meanNumber(Math.E)).isCloseTo(2, within(1e-13));
        assertThat(fit.unbiasedShape()).isCloseTo(1, within(1e-13));
        assertThat(fit.shapeLower(0.95)).isCloseTo(2 * Math.exp(-1.959963984540054 / Math.sqrt(2)), within(1e-9));
        assertThat(fit.shapeUpper(0.95) * fit.shapeLower(0.95)).isCloseTo(4, within(1e-9));
    }

    /** Observation ended by the last event: the same maximum, another bias, and its own time is no news for the tests. */
    @Test
    void endedByTheLastEvent() {
        EventHistory unit = EventHistory.observed(0, 40, 1, 2, 4, 8);
        PowerLawFit fit = PowerLaw.fit(List.of(unit), Truncation.FAILURE);
        double logs = Math.log(8) + Math.log(4) + Math.log(2);
        assertThat(fit.shape()).isCloseTo(4 / logs, within(1e-13));
        assertThat(fit.unbiasedShape()).isCloseTo(2 / logs, within(1e-13));
        TrendTest handbook = TrendTests.militaryHandbook(List.of(unit), Truncation.FAILURE);
        assertThat(handbook.statistic()).isCloseTo(2 * logs, within(1e-13));
        assertThat(handbook.degreesOfFreedom()).isEqualTo(6);
        // Three events 1, 2, 4 in (0, 8]: (7 - 12) / sqrt(3 * 64 / 12) = -5/4.
        assertThat(TrendTests.laplace(List.of(unit), Truncation.FAILURE).statistic())
                .isCloseTo(-1.25, within(1e-13));
        assertThatThrownBy(() -> PowerLaw.fit(List.of(EventHistory.observed(0, 5)), Truncation.FAILURE))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("this unit has none");
    }

    /** Reversals of four times by hand: 1, 3, 2, 4 between events has five longer-later pairs of six. */
    @Test
    void reversalsByHand() {
        ReverseArrangements r = ReverseArrangements.of(EventHistory.observed(0, 12, 1, 4, 6, 10));
        assertThat(r.reversals()).isEqualTo(5);
        assertThat(r.most()).isEqualTo(6);
        // Of 24 orders one has six and three have five.
        assertThat(r.pDecreasing()).isCloseTo(4 / 24.0, within(1e-15));
        assertThat(r.pIncreasing()).isCloseTo(23 / 24.0, within(1e-15));
    }

    /** A unit watched in pieces is the unit watched throughout, less what it did in between. */
    @Test
    void aSplitWindowChangesNothing() {
        EventHistory whole = EventHistory.observed(0, 10, 1, 3, 4, 9);
        List<EventHistory> pieces = List.of(EventHistory.observed(0, 3.5, 1, 3), EventHistory.observed(3.5, 10, 4, 9));
        PowerLawFit a = PowerLaw.fit(List.of(whole), Truncation.TIME);
        PowerLawFit b = PowerLaw.fit(pieces, Truncation.TIME);
        assertThat(b.shape()).isCloseTo(a.shape(), within(1e-12));
        assertThat(b.logLikelihood()).isCloseTo(a.logLikelihood(), within(1e-12));
        LogLinearRate.Fit c = LogLinearRate.fit(List.of(whole), Truncation.TIME);
        LogLinearRate.Fit d = LogLinearRate.fit(pieces, Truncation.TIME);
        assertThat(d.slope()).isCloseTo(c.slope(), within(1e-12));
        assertThat(d.slopeError()).isCloseTo(c.slopeError(), within(1e-12));
    }

    /** The maximum, looked at from around it. */
    @Test
    void delayedEntryIsAtItsMaximum() {
        List<EventHistory> units = List.of(
                EventHistory.observed(2, 9, 3, 5, 8),
                EventHistory.observed(1, 6, 2, 5.5),
                EventHistory.of(List.of(new ObservationWindow(0, 3), new ObservationWindow(5, 12)), 2.5, 7, 11));
        PowerLawFit fit = PowerLaw.fit(units, Truncation.TIME);
        assertThat(logLikelihood(units, fit.scale(), fit.shape())).isCloseTo(fit.logLikelihood(), within(1e-12));
        for (double s : new double[] {0.999, 1.001}) {
            assertThat(logLikelihood(units, fit.scale() * s, fit.shape())).isLessThan(fit.logLikelihood());
            assertThat(logLikelihood(units, fit.scale(), fit.shape() * s)).isLessThan(fit.logLikelihood());
        }
        assertThatThrownBy(fit::unbiasedShape)
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("one unit watched from 0");
    }

    private static double logLikelihood(List<EventHistory> units, double scale, double shape) {
        double sum = 0;
        for (EventHistory u : units) {
            for (double t : u.events()) {
                sum += Math.log(scale * shape) + (shape - 1) * Math.log(t);
            }
            for (ObservationWindow w : u.windows()) {
                sum -= scale * (Math.pow(w.to(), shape) - Math.pow(w.from(), shape));
            }
        }
        return sum;
    }

    @Test
    void recoversWhatWasPutIn() {
        Random random = new Random(8);
        List<EventHistory> units = new ArrayList<>();
        for (int i = 0; i < 2000; i++) {
            double from = 3 * random.nextDouble();
            List<Double> events = new ArrayList<>();
            // Mean number 0.8 t^1.6: unit-rate arrivals carried back.
            for (double m = -Math.log(1 - random.nextDouble());
                    m < 0.8 * Math.pow(6, 1.6);
                    m -= Math.log(1 - random.nextDouble())) {
                double t = Math.pow(m / 0.8, 1 / 1.6);
                if (t > from) {
                    events.add(t);
                }
            }
            units.add(EventHistory.observed(
                    from, 6, events.stream().mapToDouble(t -> t).toArray()));
        }
        PowerLawFit fit = PowerLaw.fit(units, Truncation.TIME);
        assertThat(Math.abs(fit.shape() - 1.6)).isLessThan(4 * fit.shapeError());
        assertThat(Math.abs(Math.log(fit.scale() / 0.8))).isLessThan(4 * fit.logScaleError());
        assertThat(fit.shapeError()).isLessThan(0.03);
        assertThat(TrendTests.robustLaplace(units).pIncreasing()).isLessThan(1e-10);
    }

    /** Units whose events come in bursts, without a trend: Laplace's test cries wolf, the robust one does not. */
    @Test
    void burstsAreNoTrend() {
        Random random = new Random(21);
        int plain = 0;
        int robust = 0;
        for (int run = 0; run < 400; run++) {
            List<EventHistory> units = new ArrayList<>();
            for (int i = 0; i < 80; i++) {
                double at = 100 * random.nextDouble();
                double[] burst = new double[random.nextInt(2) == 0 ? 0 : 5];
                for (int j = 0; j < burst.length; j++) {
                    burst[j] = Math.min(100, at + 0.001 * (j + 1));
                }
                units.add(EventHistory.observed(0, 100, burst));
            }
            plain += TrendTests.laplace(units, Truncation.TIME).pValue() < 0.05 ? 1 : 0;
            robust += TrendTests.robustLaplace(units).pValue() < 0.05 ? 1 : 0;
        }
        // 5 % of 400 is 20, with a standard error of 4.4.
        assertThat(robust).isBetween(6, 36);
        assertThat(plain).isGreaterThan(100);
    }

    @Test
    void groupedTendsToTheExactTimes() {
        EventHistory unit = EventHistory.observed(0, 100, 3, 17, 30, 44, 52, 71, 90);
        int cells = 20_000;
        double[] ends = new double[cells];
        long[] counts = new long[cells];
        for (int i = 0; i < cells; i++) {
            ends[i] = 100.0 * (i + 1) / cells;
        }
        for (double t : unit.events()) {
            counts[(int) Math.ceil(t / 100 * cells - 1e-9) - 1]++;
        }
        assertThat(GroupedPowerLaw.fit(ends, counts).shape())
                .isCloseTo(PowerLaw.fit(List.of(unit), Truncation.TIME).shape(), within(1e-3));
    }

    @Test
    void saysWhyThereIsNoFit() {
        PowerLawFit none = PowerLaw.fit(List.of(EventHistory.observed(0, 5, 2)), Truncation.TIME);
        assertThat(none.status()).isEqualTo(RateStatus.TOO_FEW_EVENTS);
        assertThat(none.cause()).contains("not 1");
        assertThatThrownBy(none::shape)
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("ask converged() first");
        PowerLawFit late = PowerLaw.fit(List.of(EventHistory.observed(0, 5, 5, 5)), Truncation.TIME);
        assertThat(late.status()).isEqualTo(RateStatus.NO_FINITE_MAXIMUM);
        // Watched from 1 on, with events as dense at the start as no power of age allows.
        PowerLawFit early = PowerLaw.fit(List.of(EventHistory.observed(1, 5, 1.1, 1.2, 1.3)), Truncation.TIME);
        assertThat(early.status()).isEqualTo(RateStatus.NO_FINITE_MAXIMUM);
        LogLinearRate.Fit end = LogLinearRate.fit(List.of(EventHistory.observed(0, 5, 5, 5)), Truncation.TIME);
        assertThat(end.converged()).isFalse();
        assertThat(end.slope()).isNaN();
        assertThat(GroupedPowerLaw.fit(new double[] {1, 2}, new long[] {0, 4}).status())
                .isEqualTo(RateStatus.NO_FINITE_MAXIMUM);
        assertThat(GroupedPowerLaw.fit(new double[] {1, 2}, new long[] {0, 1}).status())
                .isEqualTo(RateStatus.TOO_FEW_EVENTS);
        assertThatThrownBy(() -> GroupedPowerLaw.fit(new double[] {2, 2}, new long[] {1, 1}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("interval 2 ends at 2.0");
        assertThatThrownBy(() -> PowerLaw.fit(List.of(EventHistory.observed(-1, 5, 1, 2)), Truncation.TIME))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("ages since first use");
        assertThatThrownBy(() -> TrendTests.militaryHandbook(List.of(EventHistory.observed(1, 5, 2)), Truncation.TIME))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("Laplace's test allows late beginnings");
        assertThatThrownBy(() -> ConstantRate.of(List.of(), Truncation.TIME))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("time under observation");
        assertThat(TrendTests.laplace(List.of(EventHistory.observed(0, 9)), Truncation.TIME)
                        .pValue())
                .isNaN();
        assertThat(TrendTests.lewisRobinson(EventHistory.observed(0, 9, 1), Truncation.TIME)
                        .statistic())
                .isNaN();
    }

    /** A slope near 0 goes through the series, one far from it through the closed forms; both meet. */
    @Test
    void noSlopeIsTheConstantRate() {
        EventHistory even = EventHistory.observed(0, 10, 1, 3, 5, 7, 9);
        LogLinearRate.Fit fit = LogLinearRate.fit(List.of(even), Truncation.TIME);
        assertThat(fit.slope()).isCloseTo(0, within(1e-14));
        assertThat(fit.rate(4)).isCloseTo(0.5, within(1e-13));
        assertThat(fit.logLikelihood())
                .isCloseTo(ConstantRate.of(List.of(even), Truncation.TIME).logLikelihood(), within(1e-12));
        TiltedTime law = new TiltedTime(List.of(new TiltedTime.Stretch(0, 2)));
        assertThat(law.at(0.0999999999).mean()).isCloseTo(law.at(0.1000000001).mean(), within(1e-9));
        assertThat(law.at(0.0999999999).variance())
                .isCloseTo(law.at(0.1000000001).variance(), within(1e-9));
        assertThat(law.at(0.0999999999).logMass())
                .isCloseTo(law.at(0.1000000001).logMass(), within(1e-9));
    }
}
