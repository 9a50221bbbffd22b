package sensorrounds.season;

import java.io.Serializable;
import java.time.Month;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import sensorrounds.season.ClimateMonth.Basis;
import sensorrounds.season.MonthTemperatures.Sampled;

/**
 * Which months are cold at each depot, by the median of the air temperatures logged there in that month of any year. A
 * month with too few takes the fleet's median, and where that has too few too the winter of the declared hemisphere: a ladder
 * that stands beside each month. Immutable.
 */
public final class Climates implements Serializable {
    private static final long serialVersionUID = 1;

    private final List<ClimateMonth> months;
    private final Map<String, ColdMonths> depots;
    private final ColdMonths fleet;

    private Climates(List<ClimateMonth> months, Map<String, ColdMonths> depots, ColdMonths fleet) {
        this.months = List.copyOf(months);
        this.depots = depots;
        this.fleet = fleet;
    }

    public static Climates of(MonthTemperatures temperatures, SeasonSettings settings) {
        List<ClimateMonth> months = new ArrayList<>();
        Map<String, ColdMonths> depots = new TreeMap<>();
        Map<ColdMonths, ColdMonths> same = new HashMap<>();
        List<ClimateMonth> fleet = new ArrayList<>();
        Map<Month, Sampled> all = new EnumMap<>(Month.class);
        for (Month month : Month.values()) {
            all.put(month, temperatures.of(month));
            fleet.add(month(null, month, all.get(month), all.get(month), settings));
        }
        months.addAll(fleet);
        for (String depot : temperatures.depots()) {
            List<ClimateMonth> here = new ArrayList<>();
            all.forEach((month, sampled) ->
                    here.add(month(depot, month, temperatures.of(depot, month), sampled, settings)));
            depots.put(depot, same.computeIfAbsent(cold(here), c -> c));
            months.addAll(here);
        }
        return new Climates(months, depots, cold(fleet));
    }

    private static ClimateMonth month(String depot, Month month, Sampled own, Sampled fleet, SeasonSettings settings) {
        double median = own.median().orElse(Double.NaN);
        if (own.count() >= settings.leastVisits()) {
            boolean cold = median < settings.coldMonthCelsius();
            return new ClimateMonth(depot, month, own.count(), median, cold, depot == null ? Basis.FLEET : Basis.DEPOT);
        }
        if (fleet.count() >= settings.leastVisits()) {
            boolean cold = fleet.median().orElseThrow() < settings.coldMonthCelsius();
            return new ClimateMonth(depot, month, own.count(), median, cold, Basis.FLEET);
        }
        boolean cold = settings.hemisphere().winter().months().contains(month);
        return new ClimateMonth(depot, month, own.count(), median, cold, Basis.DECLARED);
    }

    private static ColdMonths cold(List<ClimateMonth> months) {
        EnumSet<Month> cold = EnumSet.noneOf(Month.class);
        months.stream().filter(ClimateMonth::cold).forEach(m -> cold.add(m.month()));
        return ColdMonths.of(cold);
    }

    /** Cold months at a depot; the fleet's where it is null or no temperature was ever logged there. */
    public ColdMonths of(String depot) {
        return depot == null ? fleet : depots.getOrDefault(depot, fleet);
    }

    /** The fleet month by month, then each depot by name. */
    public List<ClimateMonth> months() {
        return months;
    }
}
