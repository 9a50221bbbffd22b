package sensorrounds.tables;

import static sensorrounds.tables.Column.day;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.place;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.outlook.SensorInService;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.replacement.RankedReplacement;

/** Stored table: the ranked replacement list, with the outlook behind each line. */
public final class RankedReplacements {
    public static final Table<RankedReplacement> TABLE = new Table<>(
            "ranked_replacements",
            "Every sensor in service: what to do now first, vehicle by vehicle, the stop that saves most leading; then what can"
                    + " wait, sensors to watch and sensors to keep. A rank is no verdict on safety.",
            List.of(
                    whole("rank", "Rank from 1.", RankedReplacement::rank),
                    text("vehicle_id", "Vehicle.", sensor(SensorInService::vehicleId)),
                    text("depot", "Depot; null when not known.", sensor(SensorInService::depot)),
                    text("vehicle_class", "Class; null when not known.", sensor(SensorInService::vehicleClass)),
                    place("position", "Place.", sensor(SensorInService::position)),
                    text("wheel_set", "Wheel set; null for a vehicle with one set.", sensor(SensorInService::wheelSet)),
                    text("sensor_id", "Sensor.", sensor(SensorInService::sensorId)),
                    text("part", "Part number; null when not known.", sensor(SensorInService::part)),
                    word("advice", "What the ranking suggests.", RankedReplacement::advice),
                    whole(
                            "age_days",
                            "Age, days; null when its origin is not known.",
                            sensor(SensorInService::ageDays)),
                    word("basis", "On what the age rests.", sensor(SensorInService::basis)),
                    word("last_report", "State at its last reading.", sensor(SensorInService::lastReport)),
                    day("last_read_on", "Day of that reading.", sensor(SensorInService::lastReadOn)),
                    number(
                            "failure_ratio",
                            "Hazard against that of all sensors of its age: the factor that brings the cohort's law to"
                                    + " p_fail.",
                            chances(SensorOutlook.Chances::failureRatio)),
                    word(
                            "outlook_method",
                            "What the probabilities rest on: HIDDEN_CONDITION (all readings and warnings so far) or"
                                    + " SURVIVAL_AND_LAST_REPORT.",
                            grounds(SensorOutlook.Grounds::method)),
                    text(
                            "outlook_why",
                            "Why it is not the hidden condition; empty when it is.",
                            grounds(SensorOutlook.Grounds::why)),
                    number(
                            "p_weak",
                            "Probability of being weak, still answering; null without the hidden condition.",
                            chances(SensorOutlook.Chances::pWeak)),
                    whole(
                            "set_failures",
                            "Sensors of known age that failed on its vehicle so far; 0 without the hidden condition.",
                            chances(SensorOutlook.Chances::setFailures)),
                    number(
                            "set_ratio",
                            "How many times as fast the sensors of its vehicle fail as others, from those failures and"
                                    + " the time without; 1 where failures of one vehicle are not found to be alike.",
                            chances(SensorOutlook.Chances::setRatio)),
                    number(
                            "p_failed_already",
                            "Probability of not working already, unnoticed since its last answer.",
                            chances(SensorOutlook.Chances::pNow)),
                    number("p_fail_30d", "Probability of not working 30 days on.", chances(SensorOutlook.Chances::p30)),
                    number("p_fail_90d", "The same, 90 days.", chances(SensorOutlook.Chances::p90)),
                    number("p_fail_180d", "The same, 180 days.", chances(SensorOutlook.Chances::p180)),
                    number("p_fail_365d", "The same, 365 days.", chances(SensorOutlook.Chances::p365)),
                    number(
                            "p_fail",
                            "Probability of not working at the end of the planning horizon.",
                            chances(SensorOutlook.Chances::pHorizon)),
                    number("p_fail_lower", "Lower 95 % limit.", chances(SensorOutlook.Chances::pHorizonLower)),
                    number("p_fail_upper", "Upper 95 % limit.", chances(SensorOutlook.Chances::pHorizonUpper)),
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
                    text("cohort", "Cohort whose law of life was used.", grounds(SensorOutlook.Grounds::cohort)),
                    text("rung", "Rung of the fallback ladder it stands on.", grounds(SensorOutlook.Grounds::rung)),
                    text("life_id", "Key of its life.", sensor(SensorInService::lifeId))));

    private RankedReplacements() {}

    private static Column.Getter<RankedReplacement> sensor(Column.Getter<SensorInService> value) {
        return line -> value.apply(line.outlook().sensor());
    }

    private static Column.Getter<RankedReplacement> chances(Column.Getter<SensorOutlook.Chances> value) {
        return line -> value.apply(line.outlook().chances());
    }

    private static Column.Getter<RankedReplacement> grounds(Column.Getter<SensorOutlook.Grounds> value) {
        return line -> value.apply(line.outlook().grounds());
    }
}
