package sensorrounds.report;

import java.util.Locale;
import sensorrounds.condition.WatchEntry;
import sensorrounds.history.FailureCause;
import sensorrounds.history.Finding;
import sensorrounds.history.FollowUp;
import sensorrounds.history.OriginBasis;
import sensorrounds.history.Repair;
import sensorrounds.outlook.LastReport;
import sensorrounds.outlook.UnmonitoredWheel;
import sensorrounds.recurrence.RecurringVehicle;
import sensorrounds.replacement.Advice;
import sensorrounds.review.CohortBy;
import sensorrounds.review.EndCause;
import sensorrounds.survival.CohortFit;
import sensorrounds.survival.CurvePoint;
import sensorrounds.visit.WheelPosition;

/** The words people read for the constants of the model. */
final class Words {
    private Words() {}

    static String of(Advice advice) {
        return switch (advice) {
            case REPLACE_NOW -> "Replace now";
            case READ_FIRST -> "Read first";
            case CHECK_PLACE_FIRST -> "Check place first";
            case AT_NEXT_STOP -> "At next stop";
            case AT_SEASONAL_CHANGE -> "At the wheel change";
            case WHEN_OFF -> "When the spare is off";
            case WATCH -> "Watch";
            case KEEP -> "Keep";
        };
    }

    static String of(LastReport report) {
        return switch (report) {
            case SOUND -> "answered, nothing amiss";
            case SLOW_TO_WAKE -> "slow to wake";
            case LOW_BATTERY -> "low battery";
            case SILENT_ONCE -> "silent at the last visit";
        };
    }

    static String of(OriginBasis basis) {
        return switch (basis) {
            case RECORDED_FITTING -> "fitting recorded";
            case VEHICLE_FIRST_USE -> "taken as original";
            case TYRE_DATE -> "taken as original, in the first tyre";
            case EARLIER_VEHICLE -> "known from an earlier vehicle";
            case UNKNOWN -> "origin unknown";
        };
    }

    static String of(UnmonitoredWheel.Certainty certainty) {
        return switch (certainty) {
            case KNOWN -> "known";
            case PROBABLE -> "probable";
            case SYSTEM -> "system warning on";
        };
    }

    static String of(WatchEntry.Sign sign) {
        return switch (sign) {
            case LOW_BATTERY -> "Low battery";
            case SLOW_TO_WAKE -> "Slow to wake";
            case SILENT_ONCE -> "Silent once";
        };
    }

    static String of(RecurringVehicle.Pattern pattern) {
        return switch (pattern) {
            case RECURRING_INTERMITTENT -> "comes back though every sensor answers";
            case RECURRING_AT_ONE_PLACE -> "comes back at one place";
            case RECURRING_WITH_FAILURES -> "comes back as sensors fail one by one";
            case NOT_RECURRING -> "seen, not recurring";
        };
    }

    static String of(FollowUp.State state) {
        return switch (state) {
            case OPEN -> "still to be proven";
            case PROVEN -> "stayed off";
            case RETURNED -> "warning came back";
            case LEFT -> "vehicle has left";
        };
    }

    static String of(Repair repair) {
        return switch (repair) {
            case SET_REPLACED -> "whole set replaced";
            case SENSOR_REPLACED -> "sensor replaced";
            case OTHER_WHEEL_WORK -> "other work on a wheel";
            case RELEARN -> "relearn";
            case CODES_CLEARED -> "codes cleared";
            case PRESSURES_CORRECTED -> "pressures corrected";
            case NONE -> "nothing written down";
        };
    }

    static String of(FailureCause cause) {
        return switch (cause) {
            case BATTERY -> "Battery";
            case STEM_OR_CORROSION -> "Stem or corrosion";
            case TYRE_CHANGE_DAMAGE -> "Damage at a tyre change";
            case INGRESS -> "Water or sealant got in";
            case UNKNOWN -> "Not known";
        };
    }

    static String of(EndCause cause) {
        return switch (cause) {
            case BATTERY -> of(FailureCause.BATTERY);
            case STEM_OR_CORROSION -> of(FailureCause.STEM_OR_CORROSION);
            case TYRE_CHANGE_DAMAGE -> of(FailureCause.TYRE_CHANGE_DAMAGE);
            case INGRESS -> of(FailureCause.INGRESS);
            case UNKNOWN -> "Failed, cause not known";
            case PREVENTIVE -> "Replaced before it failed";
        };
    }

    /** As much of it as fits beside a line. */
    static String brief(EndCause cause) {
        return switch (cause) {
            case BATTERY -> "battery";
            case STEM_OR_CORROSION -> "stem, corrosion";
            case TYRE_CHANGE_DAMAGE -> "tyre change";
            case INGRESS -> "ingress";
            case UNKNOWN -> "cause not known";
            case PREVENTIVE -> "replaced before";
        };
    }

    static String many(CohortBy by) {
        return switch (by) {
            case VEHICLE_CLASS -> "vehicle classes";
            case PART -> "parts";
        };
    }

    static String of(Finding.Kind kind) {
        return switch (kind) {
            case UNRECORDED_CHANGE -> "Sensor changed without a record";
            case TWO_PLACES_AT_ONCE -> "One ID at two places of a visit";
            case ALIVE_AGAIN -> "Taken as failed, answers again";
            case CLONED_ID -> "New sensor with the old ID, or signs of one";
            case MOVED -> "Sensor moved to another wheel or vehicle";
            case PLACE_KEEPS_FAILING -> "Sensors keep falling silent at one place";
            case NO_WHEEL_SENSORS -> "System without wheel sensors";
            case UNREGISTERED_VEHICLE -> "Vehicle not in the fleet register";
            case IMPOSSIBLE_ORDER -> "Visit before first use or after leaving";
            case ODOMETER_BACK -> "Odometer went back";
            case READER_HEARD_NOTHING -> "Reader heard no wheel at all";
            case UNLIKELY_VALUE -> "Figure that can hardly be right";
            case MISTYPED_ID -> "ID one slip away from another";
            case TWO_VEHICLES_AT_ONCE -> "One ID on two vehicles over the same time";
            case VISIT_TWICE -> "One visit under two keys";
            case CONTRADICTORY_ENTRY -> "Entries of a visit that contradict each other";
            case IDENTITY_CHANGED -> "Number plate or VIN changed";
            case WHEEL_OF_ANOTHER_VEHICLE -> "Wheel of another vehicle, such as a trailer";
        };
    }

    static String of(CohortFit.Form form) {
        return switch (form) {
            case WEIBULL -> "Weibull";
            case EARLY_AND_WEAR -> "early hazard and wear-out";
        };
    }

    static String of(CurvePoint.Method method) {
        return switch (method) {
            case KAPLAN_MEIER -> "Kaplan–Meier";
            case FITTED_LAW -> "Fitted law";
            case WEIBULL -> "Weibull";
            case PESSIMISTIC -> "pessimistic bound";
            case TURNBULL -> "without a shape";
        };
    }

    /** A constant that reached the tables by its name, in words: OWN_FIT reads "own fit". Other text stays. */
    static String ofName(String name) {
        return name.matches("[A-Z]+(_[A-Z]+)*") ? name.replace('_', ' ').toLowerCase(Locale.ROOT) : name;
    }

    /** Place in words with a capital, and the wheel set when the vehicle has more than one. */
    static String place(WheelPosition position, String wheelSet) {
        if (position == null) {
            return "Place not known";
        }
        String words = position.words();
        String place = words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
        return wheelSet == null ? place : place + " (set " + wheelSet + ")";
    }
}
