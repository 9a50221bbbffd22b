package sensorrounds.report;

import java.util.List;

/**
 * Section 11: cautions and glossary. The cautions are common practice of the trade; those with a figure name where it comes
 * from.
 */
final class CautionsSection implements Section {
    private record Caution(String rule, String why) {}

    private record Term(String term, String meaning) {}

    private static final List<Caution> CAUTIONS = List.of(
            new Caution(
                    "A rank is never a verdict on safety.",
                    "High on the list means “inspect or offer”; low on the list, or not on it, is no promise."),
            new Caution(
                    "A gauge remains necessary.",
                    "Check pressures cold by hand at least once a month and before a long journey, whatever the system shows."),
            new Caution(
                    "The placard and the vehicle’s handbook set the pressure,",
                    "for the tyre size and load at hand. Nothing in this report does."),
            new Caution(
                    "A wheel with a dead sensor or a plain valve does not warn.",
                    "Such wheels stand in a section of their own, outside the ranking."),
            new Caution(
                    "Do not simply re-inflate a tyre that ran flat or was clearly low.",
                    "Write the pressure down before letting air out, take the wheel off and have the tyre inspected: a "
                            + "weakened sidewall can burst (Health and Safety Authority, Ireland, alert on tyre bursts)."),
            new Caution(
                    "Stand clear of a large tyre while it is being filled.",
                    "The air in a truck tyre presses on its sidewall with a force of more than 34 t, and a burst may throw "
                            + "parts up to 45° to the side. Use a chuck that clips on, a long hose and a gauge valve that is "
                            + "never wedged open; van tyres at high pressure deserve the same respect (Health and Safety "
                            + "Executive, Great Britain, tyre removal and inflation)."),
            new Caution(
                    "Know which rules your rims fall under.",
                    "In the United States 29 CFR 1910.177 covers rim wheels of large vehicles; rims of several pieces need a "
                            + "restraining device."),
            new Caution(
                    "Tighten wheel nuts with a calibrated torque wrench, and check again",
                    "after standing half an hour or after 40 to 80 km on heavy vehicles, and write it down; for cars the "
                            + "maker’s figure holds."),
            new Caution(
                    "No place on this list justifies an unsafe stop.",
                    "At the roadside: high-visibility clothing, off the carriageway, firm ground, supports under the load."),
            new Caution(
                    "Let all air out before loosening the nut of a clamp-in valve.",
                    "Do not open, heat or bin the cell of a sensor: it is lithium waste."));

    private static final List<Term> GLOSSARY = List.of(
            new Term("As of", "The day the figures hold for. Nothing that happened later is used."),
            new Term(
                    "At risk",
                    "Sensors under observation and working at that age. With delayed entry it may rise with age."),
            new Term(
                    "Backtest",
                    "The engine asked on days gone by, and held against what happened since: how good its lists would have "
                            + "been on this very fleet. “sensor-rounds backtest” makes one."),
            new Term("Break-even", "The chance of failure from which replacing now costs less than waiting."),
            new Term("Cohort", "Sensors that are taken together for one curve, such as those of one vehicle class."),
            new Term(
                    "Delayed entry",
                    "A sensor first seen at age three tells nothing about ages before three, and is not counted there."),
            new Term("Horizon", "How far ahead a chance looks, in days."),
            new Term(
                    "Kaplan–Meier",
                    "A survival curve straight from counts, without an assumed shape: it falls in steps."),
            new Term(
                    "Known dead",
                    "Silent at as many visits in a row as the settings ask for, or written down as failed. One silent visit "
                            + "is not a death."),
            new Term(
                    "Last known good, first known failed",
                    "The days between which a failure happened. The day it was found is not the day it happened."),
            new Term("Limits", "The range that holds the true value in 95 of 100 such cases, if the model is right."),
            new Term(
                    "Pessimistic bound",
                    "The survival curve if every sensor replaced before it failed had failed that very day. The truth lies "
                            + "between it and the curve that takes those sensors for sound."),
            new Term("Prediction interval", "The range that holds the coming count with the stated chance."),
            new Term(
                    "Refused (quarantined)",
                    "A row that could not be understood. It is kept, with the reason and a remedy."),
            new Term("Relearn", "Teaching the vehicle which sensors are its own."),
            new Term("Service level", "The chance of having enough on the shelf for the month."),
            new Term(
                    "Stands on",
                    "Where a cohort has too few failures for a fit of its own, it borrows the shape, or all, from all "
                            + "cohorts together; this says how much."),
            new Term(
                    "System warning",
                    "The lamp flashes, then stays on: a fault of the system. Steady from the start: low pressure."),
            new Term(
                    "Without a shape",
                    "The survival curve that fits the intervals best with no assumed form (nonparametric maximum "
                            + "likelihood): a check on the Weibull curve, not a forecast."),
            new Term(
                    "Weibull",
                    "A survival curve of a set form with two figures: the shape (above 1: failing more often with age) and "
                            + "the scale (the age by which 63 % have failed)."));

    @Override
    public String id() {
        return "cautions";
    }

    @Override
    public String title() {
        return "Cautions and glossary";
    }

    @Override
    public String question() {
        return "What must be kept in mind at the vehicle, and what do the words mean?";
    }

    @Override
    public String howToRead(ReportData data) {
        return "These cautions hold for every line of this report. Local law and the maker’s instructions come first.";
    }

    @Override
    public void body(Html h, ReportData data) {
        h.open("ul", "class", "cautions");
        CAUTIONS.forEach(c ->
                h.open("li").element("strong", c.rule()).text(" " + c.why()).close());
        h.close("ul").line();
        h.element("h3", "Glossary");
        h.open("dl", "class", "glossary");
        GLOSSARY.forEach(t ->
                h.open("div").element("dt", t.term()).element("dd", t.meaning()).close());
        h.close("dl").line();
    }
}
