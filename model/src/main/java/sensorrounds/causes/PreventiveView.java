package sensorrounds.causes;

import java.util.Locale;
import java.util.Optional;
import sensorrounds.survival.KaplanMeier;
import sensorrounds.survival.KaplanMeierFit;

/**
 * Three lines from one sample where some lives end by preventive replacement. Crews replace what looks weak, so such an
 * end is not independent of the failure it forestalled, and the law of failure cannot be told from ages and causes alone
 * (Tsiatis 1975, PNAS 72:20-22); the lines bound what can be said:
 * <ul>
 *   <li>survival if replacement had nothing to do with the sensor's state: too good where crews choose well;
 *   <li>survival if every replaced sensor had failed that very day: too bad, the pessimistic bound;
 *   <li>what in fact happens: the share ended by each cause, replacement being one.
 * </ul>
 */
public final class PreventiveView {
    private final double warningShare;

    private PreventiveView(double warningShare) {
        this.warningShare = warningShare;
    }

    /** Warns where more than a fifth of all ends are preventive: our setting, at which the first line is off by points. */
    public static PreventiveView withDefaults() {
        return new PreventiveView(0.20);
    }

    /** Share of ends above which to warn, from 0 to 1. */
    public PreventiveView withWarningShare(double share) {
        if (!(share >= 0 && share <= 1)) {
            throw new IllegalArgumentException("a share lies between 0 and 1, not " + share);
        }
        return new PreventiveView(share);
    }

    /**
     * The three lines.
     *
     * @param independent survival with replacement taken as independent censoring
     * @param pessimistic survival with replacement counted as failure
     * @param incidence share ended by each cause, replacement among them
     * @param preventiveShare preventive ends among all ends by a cause; NaN without any
     * @param warning why the first line is not to be trusted; empty while the share is low
     */
    public record Result<C>(
            KaplanMeierFit independent,
            KaplanMeierFit pessimistic,
            Incidence<C> incidence,
            double preventiveShare,
            Optional<String> warning) {}

    /**
     * The view of a sample in which {@code preventive} is one of the causes.
     *
     * @throws IllegalArgumentException if it is not
     */
    public <C> Result<C> of(CauseSample<C> sample, C preventive) {
        if (!sample.causes().contains(preventive)) {
            throw new IllegalArgumentException(
                    preventive + " is not among the causes " + sample.causes() + "; declare it as one");
        }
        double share = sample.ends() > 0 ? sample.ends(preventive) / sample.ends() : Double.NaN;
        return new Result<>(
                KaplanMeier.withDefaults().fit(sample.failing(cause -> !cause.equals(preventive))),
                KaplanMeier.withDefaults().fit(sample.failing(cause -> true)),
                AalenJohansen.withDefaults().fit(sample),
                share,
                share > warningShare ? Optional.of(words(share)) : Optional.empty());
    }

    private String words(double share) {
        return String.format(
                Locale.ROOT,
                "%.0f %% of all ends are preventive replacements (warned above %.0f %%): sensors replaced because they"
                        + " looked weak leave the survival curve too good; read it together with the pessimistic bound",
                100 * share,
                100 * warningShare);
    }
}
