package sensorrounds.report;

import static sensorrounds.workbook.SheetColumn.chance;
import static sensorrounds.workbook.SheetColumn.day;
import static sensorrounds.workbook.SheetColumn.sentence;
import static sensorrounds.workbook.SheetColumn.tenths;
import static sensorrounds.workbook.SheetColumn.text;
import static sensorrounds.workbook.SheetColumn.whole;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import sensorrounds.condition.WatchEntry;
import sensorrounds.fleet.Part;
import sensorrounds.history.FollowUp;
import sensorrounds.outlook.SensorInService;
import sensorrounds.outlook.SensorOutlook;
import sensorrounds.outlook.UnmonitoredWheel;
import sensorrounds.recurrence.RecurringVehicle;
import sensorrounds.recurrence.Suspect;
import sensorrounds.replacement.Advice;
import sensorrounds.replacement.RankedReplacement;
import sensorrounds.report.ReportData.Listed;
import sensorrounds.rounds.RoundStop;
import sensorrounds.rounds.RoundWeek;
import sensorrounds.stock.StockOutlook;
import sensorrounds.workbook.SheetColumn;
import sensorrounds.workbook.SheetTable;
import sensorrounds.workbook.WorkbookWriter;

/**
 * The lists that people work from, as one workbook: what to do at which vehicle, the rounds, what to order, warnings that
 * come back and repairs to be proven. Words and order are those of the report.
 */
public final class ListsWorkbook {
    private final ReportData data;
    private final Listed<RoundStop> stops;
    private final String currency;

    private ListsWorkbook(ReportData data, Listed<RoundStop> stops) {
        this.data = data;
        this.stops = stops;
        this.currency = " (" + data.run().costs().currency() + ")";
    }

    /**
     * @param data with lists as long as a workbook may hold
     * @param stops of the rounds of all depots and weeks
     */
    public static void write(ReportData data, Listed<RoundStop> stops, OutputStream out) throws IOException {
        List<Described<?>> sheets = new ListsWorkbook(data, stops).sheets();
        WorkbookWriter.write(
                Stream.concat(Stream.of(contents(data, sheets)), sheets.stream().map(Described::table))
                        .<SheetTable<?>>map(t -> t)
                        .toList(),
                "sensor-rounds",
                data.run().asOf(),
                out);
    }

    /** A sheet with what it says, and how many lines the list has on the whole. */
    private record Described<T>(SheetTable<T> table, String says, long lines) {}

    private record Line(String sheet, Integer lines, Long of, String says) {}

    private static SheetTable<Line> contents(ReportData data, List<Described<?>> sheets) {
        Stream<Line> names = sheets.stream()
                .map(s -> new Line(s.table().name(), s.table().rows().size(), s.lines(), s.says()));
        Stream<Line> notes = Stream.of(
                        "As of " + data.run().asOf() + ", run " + data.run().runId()
                                + ". Where fewer lines stand here than the list has, its CSV holds them all.",
                        "A rank says inspect or offer; it is never a verdict on safety.")
                .map(note -> new Line(null, null, null, note));
        return new SheetTable<>(
                "Contents",
                0,
                List.of(
                        text("Sheet", Line::sheet),
                        whole("Lines", Line::lines),
                        whole("Lines in all", Line::of),
                        sentence("What it says", Line::says)),
                Stream.concat(names, notes).toList());
    }

    private List<Described<?>> sheets() {
        return List.of(replacements(), unmonitored(), rounds(), orders(), stock(), recurring(), followUps(), watch());
    }

    private Described<RankedReplacement> replacements() {
        List<RankedReplacement> asked = data.ranked().rows().stream()
                .filter(r -> r.advice() != Advice.KEEP)
                .toList();
        long all = Arrays.stream(Advice.values())
                .filter(a -> a != Advice.KEEP)
                .mapToLong(data.totals()::lines)
                .sum();
        return new Described<>(
                new SheetTable<>(
                        "Replacement list",
                        2,
                        List.of(
                                whole("Rank", RankedReplacement::rank),
                                text("Vehicle", sensor(SensorInService::vehicleId)),
                                text("Depot", sensor(SensorInService::depot)),
                                text("Advice", r -> Words.of(r.advice())),
                                text("Place", sensor(s -> Words.place(s.position(), s.wheelSet()))),
                                text("Sensor", sensor(SensorInService::sensorId)),
                                text("Part", sensor(SensorInService::part)),
                                chance(
                                        "Chance of failing within " + data.run().horizonDays() + " days",
                                        chances(SensorOutlook.Chances::pHorizon)),
                                chance("Lower limit", chances(SensorOutlook.Chances::pHorizonLower)),
                                chance("Upper limit", chances(SensorOutlook.Chances::pHorizonUpper)),
                                tenths("Age (years)", sensor(ListsWorkbook::years)),
                                text("Last report", sensor(s -> Words.of(s.lastReport()))),
                                day("Last read on", sensor(SensorInService::lastReadOn)),
                                whole("Cost now" + currency, RankedReplacement::costNow),
                                whole("Saving" + currency, RankedReplacement::saving),
                                whole("Saving of the stop" + currency, RankedReplacement::stopSaving),
                                day("Next booked stop", RankedReplacement::nextStop),
                                sentence("Why", RankedReplacement::reason)),
                        asked),
                "Sensors to replace, to read first, to replace when the wheel is off anyway, and to watch; those to keep stand"
                        + " in ranked-replacements.csv only.",
                all);
    }

    private static Double years(SensorInService s) {
        return s.ageDays() == null ? null : (Double) Format.inYears(s.ageDays());
    }

    private static <V> Function<RankedReplacement, V> sensor(Function<SensorInService, V> value) {
        return r -> value.apply(r.outlook().sensor());
    }

    private static Function<RankedReplacement, Double> chances(Function<SensorOutlook.Chances, Double> value) {
        return r -> value.apply(r.outlook().chances());
    }

    private Described<UnmonitoredWheel> unmonitored() {
        return described(
                "No warning",
                1,
                List.of(
                        text("Vehicle", UnmonitoredWheel::vehicleId),
                        text("Depot", UnmonitoredWheel::depot),
                        text("Place", w -> w.position() == null ? null : Words.place(w.position(), w.wheelSet())),
                        text("Sensor", UnmonitoredWheel::sensorId),
                        text("How sure", w -> Words.of(w.certainty())),
                        day("Since", UnmonitoredWheel::since),
                        sentence("Why", UnmonitoredWheel::reason)),
                data.unmonitored(),
                "Wheels where a flat tyre would not be noticed now: gauge by hand.");
    }

    private Described<RoundStop> rounds() {
        return described(
                "Rounds",
                4,
                List.of(
                        text("Depot", RoundStop::depot),
                        whole("Week", RoundStop::week),
                        whole("Stop", RoundStop::order),
                        text("Vehicle", s -> s.call().vehicleId()),
                        day("From", s -> week(s).map(RoundWeek::from).orElse(null)),
                        day("To", s -> week(s).map(RoundWeek::to).orElse(null)),
                        text("Why", s -> switch (s.call().kind()) {
                            case BOOKED -> "stands anyway";
                            case NO_WARNING -> "a wheel gives no warning";
                            case DUE -> "asked for by the list";
                        }),
                        day("Booked for", s -> s.call().booked()),
                        whole("Wheels", s -> s.call().wheels()),
                        whole("Minutes", RoundStop::minutes),
                        whole("Saving" + currency, RoundStop::saving)),
                stops,
                "Which vehicle in which week, within what each depot can do.");
    }

    private Optional<RoundWeek> week(RoundStop stop) {
        return data.decisions().rounds().stream()
                .filter(w -> w.week() == stop.week() && Objects.equals(w.depot(), stop.depot()))
                .findFirst();
    }

    private Described<StockOrders.Order> orders() {
        return described(
                "Orders",
                1,
                List.of(
                        text("Part", StockOrders.Order::partId),
                        text(
                                "Description",
                                o -> o.part() == null ? null : o.part().description()),
                        text("Depot", StockOrders.Order::depot),
                        whole("Pieces", StockOrders.Order::pieces),
                        whole("Cost" + currency, StockOrders.Order::cost),
                        whole(
                                "Lead time (days)",
                                o -> o.part() == null
                                        ? null
                                        : (Integer) o.part().leadTimeDays())),
                Listed.whole(StockOrders.of(data.stock(), data.parts())),
                "What to order now, whole packs, after what is on hand.");
    }

    private Described<StockOutlook> stock() {
        Map<String, Part> parts = StockOrders.byId(data.parts());
        return described(
                "Stock outlook",
                3,
                List.of(
                        text("Part", StockOutlook::partId),
                        text("Depot", StockOutlook::depot),
                        text(
                                "Month",
                                s -> s.alreadyFailed()
                                        ? "failed, not found"
                                        : s.month().toString()),
                        text(
                                "Description",
                                s -> Optional.ofNullable(parts.get(s.partId()))
                                        .map(Part::description)
                                        .orElse(null)),
                        whole("Planned", StockOutlook::planned),
                        tenths("Expected", StockOutlook::expected),
                        whole("Lower 90 % limit", StockOutlook::lower),
                        whole("Upper 90 % limit", StockOutlook::upper),
                        whole("For the service level", StockOutlook::serviceLevelPieces),
                        whole("On hand", StockOutlook::onHand),
                        whole("Order now", StockOutlook::proposedOrder)),
                Listed.whole(data.stock()),
                "Demand by part, depot and month. The line without a month holds sensors that failed already and nobody has"
                        + " found out.");
    }

    private Described<RecurringVehicle> recurring() {
        return described(
                "Returning warnings",
                1,
                List.of(
                        text("Vehicle", RecurringVehicle::vehicleId),
                        text("Depot", RecurringVehicle::depot),
                        text("Pattern", v -> Words.of(v.pattern())),
                        whole("Episodes", RecurringVehicle::episodes),
                        whole("Returns after work", RecurringVehicle::returnsAfterRepair),
                        chance("Chance of being above its peers", RecurringVehicle::probabilityAbovePeers),
                        day("Last seen", RecurringVehicle::lastSeen),
                        text("First suspect", suspect(RecurringSection::suspectName)),
                        chance("Its chance", suspect(Suspect::probability)),
                        sentence("What would settle it", suspect(Suspect::nextStep)),
                        sentence("Story", RecurringVehicle::story)),
                data.recurring(),
                "Vehicles with a system warning, those whose warning returns first.");
    }

    private static <V> Function<RecurringVehicle, V> suspect(Function<Suspect, V> value) {
        return v -> v.suspects().isEmpty() ? null : value.apply(v.suspects().get(0));
    }

    private Described<FollowUp> followUps() {
        return described(
                "Follow-ups",
                1,
                List.of(
                        text("Vehicle", FollowUp::vehicleId),
                        text("Depot", f -> data.depots().get(f.vehicleId())),
                        text("State", f -> Words.of(f.state())),
                        day("Repaired on", FollowUp::repairedOn),
                        text("Visit", FollowUp::visitId),
                        text("Work", f -> Words.of(f.repair())),
                        whole("Minutes driven", FollowUp::drivenMinutes),
                        whole("Minutes needed", FollowUp::requiredMinutes),
                        whole(
                                "Days open",
                                f -> FollowUpSection.daysOpen(f, data.run().asOf())),
                        day("Next booked stop", f -> data.nextPlannedVisits().get(f.vehicleId())),
                        sentence("Where it stands", FollowUp::standing)),
                data.followUps(),
                "Repairs of a system warning, those still to be proven by a drive first.");
    }

    private Described<WatchEntry> watch() {
        return described(
                "Watch list",
                1,
                List.of(
                        text("Vehicle", WatchEntry::vehicleId),
                        text("Depot", WatchEntry::depot),
                        text("Place", w -> Words.place(w.position(), w.wheelSet())),
                        text("Sensor", WatchEntry::sensorId),
                        text("Part", WatchEntry::part),
                        text("Sign", w -> Words.of(w.sign()).toLowerCase(Locale.ROOT)),
                        chance("Chance", WatchEntry::probability),
                        day("Since", WatchEntry::since),
                        sentence("What was seen", WatchEntry::reason),
                        sentence("Settled by", WatchEntry::settledBy)),
                data.watch(),
                "Sensors that still answer and show a sign of weakness.");
    }

    private static <T> Described<T> described(
            String name, int fixed, List<SheetColumn<T>> columns, Listed<T> list, String says) {
        return new Described<>(new SheetTable<>(name, fixed, columns, list.rows()), says, list.total());
    }
}
