package sensorrounds.tables;

import static sensorrounds.tables.Column.day;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.rounds.RoundStop;
import sensorrounds.rounds.RoundWeek;

/** Stored tables of the rounds: by depot and week, and the vehicles on them. */
public final class Rounds {
    public static final Table<RoundWeek> TABLE = new Table<>(
            "rounds",
            "Rounds of each depot by week within its capacity, and how far they are at most from the best there is.",
            List.of(
                    text("depot", "Depot; null for vehicles without one.", RoundWeek::depot),
                    whole("week", "Week, from 1.", RoundWeek::week),
                    day("from", "First day.", RoundWeek::from),
                    day("to", "Last day.", RoundWeek::to),
                    whole("vehicles", "Vehicles on the round.", RoundWeek::vehicles),
                    whole("booked", "Of them, those that stand anyway that week.", RoundWeek::booked),
                    whole("wheels", "Wheels to be worked on.", RoundWeek::wheels),
                    number(
                            "minutes",
                            "Minutes of work; over the capacity only when booked stops alone are.",
                            RoundWeek::minutes),
                    number("capacity", "Minutes that the depot has.", RoundWeek::capacity),
                    number("saving", "What the round is expected to save.", RoundWeek::saving),
                    number("saving_so_far", "The same with all weeks before.", RoundWeek::savingSoFar),
                    number(
                            "bound",
                            "What no choice of rounds of the depot over all weeks can exceed; the same in each row of a depot.",
                            RoundWeek::bound),
                    number(
                            "gap",
                            "1 - saving of all weeks / bound: the rounds of the depot are at most so far from the best.",
                            RoundWeek::gap),
                    whole(
                            "left",
                            "Vehicles with a wheel known to give no warning or asked for by the list, on no round so far.",
                            RoundWeek::left)));

    public static final Table<RoundStop> STOPS = new Table<>(
            "round_stops",
            "Vehicles on the rounds, in their order.",
            List.of(
                    text("depot", "Depot; null when not known.", RoundStop::depot),
                    whole("week", "Week, from 1.", RoundStop::week),
                    whole(
                            "order",
                            "Place on the round: booked ones, then no warning, then by saving.",
                            RoundStop::order),
                    text("vehicle_id", "Vehicle.", s -> s.call().vehicleId()),
                    word(
                            "kind",
                            "BOOKED (stands anyway), NO_WARNING (a wheel is known to give none) or DUE (asked for by the list).",
                            s -> s.call().kind()),
                    day(
                            "booked",
                            "Day of its booked stop; null when none.",
                            s -> s.call().booked()),
                    whole("wheels", "Wheels to be worked on.", s -> s.call().wheels()),
                    number("minutes", "Minutes it takes.", RoundStop::minutes),
                    number(
                            "saving",
                            "What the stop is expected to save in that week; 0 where it is not about money.",
                            RoundStop::saving)));

    private Rounds() {}
}
