package sensorrounds.frailty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import sensorrounds.numeric.Objective;
import sensorrounds.reference.ReferenceCase;
import sensorrounds.reference.References;
import sensorrounds.regression.Coefficient;
import sensorrounds.regression.LifeFamily;

/** Against a printed fit and against a likelihood written in R; sources and the script beside the reference file. */
class FrailtyReferenceTest {
    private static final ReferenceCase KIDNEY = ReferenceCase.load("frailty/frailty.json", "frailty-kidney");
    private static final ReferenceCase SETS = ReferenceCase.load("frailty/frailty.json", "frailty-sets");

    static LifeSets kidney() {
        double[] id = KIDNEY.data("id");
        double[] time = KIDNEY.data("time");
        double[] status = KIDNEY.data("status");
        double[] sex = KIDNEY.data("sex");
        double[] age = KIDNEY.data("age");
        Map<Double, List<SetMember>> patients = new TreeMap<>();
        for (int i = 0; i < id.length; i++) {
            patients.computeIfAbsent(id[i], x -> new ArrayList<>())
                    .add(new SetMember(
                            0,
                            time[i],
                            status[i] == 1 ? time[i] : Double.POSITIVE_INFINITY,
                            List.of(sex[i] - 1, age[i])));
        }
        return LifeSets.of(List.of("sex", "age"), patients.values());
    }

    /** Munda, Rotolo and Legrand (2012), J. Stat. Software 51(11): exponential lives, sex and age; at the printed digits. */
    @Test
    void thePrintedExponentialFit() {
        FrailtyFit fit =
                FrailtyFitter.withDefaults().with(LifeFamily.EXPONENTIAL).fit(kidney());

        assertThat(fit.status()).isEqualTo(FrailtyStatus.CONVERGED);
        JsonNode printed = KIDNEY.node().get("printed");
        List<Coefficient> c = fit.coefficients();
        assertThat(fit.logLikelihood()).isCloseTo(printed.get("logLikelihood").asDouble(), within(5e-4));
        assertThat(fit.variance().value()).isCloseTo(printed.get("variance").asDouble(), within(5e-4));
        assertThat(fit.varianceError()).isCloseTo(printed.get("varianceError").asDouble(), within(5e-4));
        assertThat(fit.kendallTau()).isCloseTo(printed.get("tau").asDouble(), within(5e-4));
        double rate = Math.exp(-c.get(0).value());
        assertThat(rate).isCloseTo(printed.get("rate").asDouble(), within(5e-4));
        assertThat(rate * c.get(0).error()).isCloseTo(printed.get("rateError").asDouble(), within(5e-4));
        // Effects on hazard are those on log scale with the sign turned, the shape being 1.
        assertThat(-c.get(1).value()).isCloseTo(printed.get("sex").asDouble(), within(5e-4));
        assertThat(c.get(1).error()).isCloseTo(printed.get("sexError").asDouble(), within(5e-4));
        assertThat(-c.get(2).value()).isCloseTo(printed.get("age").asDouble(), within(5e-4));
        assertThat(c.get(2).error()).isCloseTo(printed.get("ageError").asDouble(), within(5e-4));
    }

    @Test
    void exponentialAndWeibullFitsEqualAnIndependentLikelihood() {
        for (LifeFamily family : List.of(LifeFamily.EXPONENTIAL, LifeFamily.WEIBULL)) {
            JsonNode expected = KIDNEY.node().get(family == LifeFamily.WEIBULL ? "weibull" : "exponential");
            FrailtyFit fit = FrailtyFitter.withDefaults().with(family).fit(kidney());

            References.check(
                    KIDNEY,
                    "log L",
                    fit.logLikelihood(),
                    expected.get("logLikelihood").asDouble(),
                    1e-10,
                    0);
            double[] par = ReferenceCase.numbers(expected.get("par"));
            double[] se = ReferenceCase.numbers(expected.get("se"));
            double[][] covariance = fit.covariance();
            for (int i = 0; i < par.length; i++) {
                boolean variance = i == par.length - 1;
                double ours = variance
                        ? Math.log(fit.variance().value())
                        : fit.coefficients().get(i).value();
                // R's simplex and BFGS stop within 1e-5 of the maximum; its Hessian is by differences.
                References.check(KIDNEY, family + " parameter " + i, ours, par[i], 1e-5, 1e-6);
                References.check(KIDNEY, family + " error " + i, Math.sqrt(covariance[i][i]), se[i], 1e-4, 0);
            }
        }
    }

    /** The table of models in the same source: 2 p - 2 log L and p log n - 2 log L, printed to whole numbers. */
    @Test
    void thePrintedCriteriaOfTheWeibullFit() {
        FrailtyFit fit = FrailtyFitter.withDefaults().fit(kidney());
        int parameters = fit.coefficients().size() + 1;

        assertThat(Math.round(2 * parameters - 2 * fit.logLikelihood()))
                .isEqualTo(KIDNEY.node().at("/printed/aicWeibull").asLong());
        assertThat(Math.round(parameters * Math.log(76) - 2 * fit.logLikelihood()))
                .isEqualTo(KIDNEY.node().at("/printed/bicWeibull").asLong());
    }

    static LifeSets invented() {
        double[] id = SETS.data("id");
        Map<Double, List<SetMember>> vehicles = new TreeMap<>();
        for (int i = 0; i < id.length; i++) {
            JsonNode upper = SETS.node().at("/data/inline/upper").get(i);
            vehicles.computeIfAbsent(id[i], x -> new ArrayList<>())
                    .add(SetMember.of(
                            SETS.data("entry")[i],
                            SETS.data("lower")[i],
                            upper.isNull() ? Double.POSITIVE_INFINITY : upper.asDouble()));
        }
        return LifeSets.of(vehicles.values());
    }

    /** Intervals, an exact age, delayed entry, survivors: against adaptive quadrature of the definition. */
    @Test
    void likelihoodAtGivenParametersEqualsQuadrature() {
        FrailtyLikelihood likelihood = new FrailtyLikelihood(LifeFamily.WEIBULL, invented());
        JsonNode points = SETS.node().get("points");
        double[] expected = ReferenceCase.numbers(SETS.node().get("logLikelihoods"));
        for (int i = 0; i < points.size(); i++) {
            double[] point = ReferenceCase.numbers(points.get(i));
            point[0] -= likelihood.centre();

            Objective.Evaluation at = likelihood.at(point);

            References.check(SETS, "log L at point " + i, at.value(), expected[i]);
        }
    }

    @Test
    void maximumUnderIntervalsAndEntry() {
        FrailtyFit fit = FrailtyFitter.withDefaults().fit(invented());

        JsonNode expected = SETS.node().get("maximum");
        double[] par = ReferenceCase.numbers(expected.get("par"));
        double[] se = ReferenceCase.numbers(expected.get("se"));
        References.check(
                SETS,
                "log L",
                fit.logLikelihood(),
                expected.get("logLikelihood").asDouble());
        // A simplex on a flat top: parameters agree less closely than the value.
        References.check(SETS, "log scale", fit.coefficients().get(0).value(), par[0], 1e-5, 0);
        References.check(SETS, "log shape", fit.coefficients().get(1).value(), par[1], 1e-5, 0);
        References.check(SETS, "log variance", Math.log(fit.variance().value()), par[2], 0, 1e-4);
        for (int i = 0; i < 3; i++) {
            References.check(SETS, "error " + i, Math.sqrt(fit.covariance()[i][i]), se[i], 1e-4, 0);
        }
    }
}
