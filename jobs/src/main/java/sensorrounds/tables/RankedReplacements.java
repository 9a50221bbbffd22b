package sensorrounds.tables;

import static sensorrounds.tables.Column.day;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.replacement.RankedReplacement;

/** Stored table: the ranked replacement list, with the outlook behind each line. */
public final class RankedReplacements {
    public static final Table<RankedReplacement> TABLE = new Table<>(
            "ranked_replacements",
            "Every sensor in service: what to do now first, vehicle by vehicle, the stop that saves most leading; then what can"
                    + " wait, sensors to watch and sensors to keep. A rank is no verdict on safety.",
            List.of(
                    whole("rank", "Rank from 1.", RankedReplacement::rank),
                    text("vehicle_id", "Vehicle.", r -> r.outlook().vehicleId()),
                    text(
                            "depot",
                            "Depot; null when not known.",
                            r -> r.outlook().depot()),
                    text(
                            "vehicle_class",
                            "Class; null when not known.",
                            r -> r.outlook().vehicleClass()),
                    text(
                            "position",
                            "Place.",
                            r -> r.outlook().position() == null
                                    ? null
                                    : r.outlook().position().code()),
                    text(
                            "wheel_set",
                            "Wheel set; null for a vehicle with one set.",
                            r -> r.outlook().wheelSet()),
                    text("sensor_id", "Sensor.", r -> r.outlook().sensorId()),
                    text(
                            "part",
                            "Part number; null when not known.",
                            r -> r.outlook().part()),
                    word("advice", "What the ranking suggests.", RankedReplacement::advice),
                    whole(
                            "age_days",
                            "Age, days; null when its origin is not known.",
                            r -> r.outlook().ageDays()),
                    word("basis", "On what the age rests.", r -> r.outlook().basis()),
                    word(
                            "last_report",
                            "State at its last reading.",
                            r -> r.outlook().lastReport()),
                    day("last_read_on", "Day of that reading.", r -> r.outlook().lastReadOn()),
                    number(
                            "failure_ratio",
                            "Hazard against that of all sensors of its age: the factor that brings the cohort's law to"
                                    + " p_fail.",
                            r -> r.outlook().failureRatio()),
                    word(
                            "outlook_method",
                            "What the probabilities rest on: HIDDEN_CONDITION (all readings and warnings so far) or"
                                    + " SURVIVAL_AND_LAST_REPORT.",
                            r -> r.outlook().method()),
                    text(
                            "outlook_why",
                            "Why it is not the hidden condition; empty when it is.",
                            r -> r.outlook().why()),
                    number(
                            "p_weak",
                            "Probability of being weak, still answering; null without the hidden condition.",
                            r -> r.outlook().pWeak()),
                    whole(
                            "set_failures",
                            "Sensors of known age that failed on its vehicle so far; 0 without the hidden condition.",
                            r -> r.outlook().setFailures()),
                    number(
                            "set_ratio",
                            "How many times as fast the sensors of its vehicle fail as others, from those failures and"
                                    + " the time without; 1 where failures of one vehicle are not found to be alike.",
                            r -> r.outlook().setRatio()),
                    number(
                            "p_failed_already",
                            "Probability of not working already, unnoticed since its last answer.",
                            r -> r.outlook().pNow()),
                    number(
                            "p_fail_30d",
                            "Probability of not working 30 days on.",
                            r -> r.outlook().p30()),
                    number("p_fail_90d", "The same, 90 days.", r -> r.outlook().p90()),
                    number(
                            "p_fail_180d",
                            "The same, 180 days.",
                            r -> r.outlook().p180()),
                    number(
                            "p_fail_365d",
                            "The same, 365 days.",
                            r -> r.outlook().p365()),
                    number(
                            "p_fail",
                            "Probability of not working at the end of the planning horizon.",
                            r -> r.outlook().pHorizon()),
                    number("p_fail_lower", "Lower 95 % limit.", r -> r.outlook().pHorizonLower()),
                    number("p_fail_upper", "Upper 95 % limit.", r -> r.outlook().pHorizonUpper()),
                    number(
                            "break_even_probability",
                            "p_fail from which replacing pays at a stop that happens anyway; null when none does.",
                            RankedReplacement::breakEvenProbability),
                    number(
                            "cost_now",
                            "Cost of doing as advised: the piece with its work, with its share of the set-up or of the reading"
                                    + " when the vehicle is visited for it.",
                            RankedReplacement::costNow),
                    number(
                            "cost_later",
                            "Expected cost of not doing so until the next stop, for what is to be done now; else of leaving it"
                                    + " from the next stop to the one after.",
                            RankedReplacement::costLater),
                    number("saving", "cost_later less cost_now.", RankedReplacement::saving),
                    number(
                            "stop_saving",
                            "What the vehicle's stop now saves, all its lines together; null for a line that asks for none.",
                            RankedReplacement::stopSaving),
                    day("next_stop", "Next booked stop of the vehicle; null when none.", RankedReplacement::nextStop),
                    text("reason", "Why it stands here.", RankedReplacement::reason),
                    text(
                            "cohort",
                            "Cohort whose law of life was used.",
                            r -> r.outlook().cohort()),
                    text(
                            "rung",
                            "Rung of the fallback ladder it stands on.",
                            r -> r.outlook().rung()),
                    text("life_id", "Key of its life.", r -> r.outlook().lifeId())));

    private RankedReplacements() {}
}
