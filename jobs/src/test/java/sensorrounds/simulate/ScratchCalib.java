package sensorrounds.simulate;

import java.nio.file.*;
import java.util.*;
import java.util.function.*;
import sensorrounds.history.OriginBasis;
import sensorrounds.outlook.*;

class ScratchCalib {
    public static void main(String[] a) throws Exception {
        int n = Integer.parseInt(a[0]);
        long seed = Long.parseLong(a[1]);
        long t0 = System.currentTimeMillis();
        ReviewedFleet f = ReviewedFleet.of(seed, n, Files.createTempDirectory("cal"));
        System.out.println("ms " + (System.currentTimeMillis() - t0));
        var c = f.review().condition();
        System.out.println(c.status() + " " + c.cause() + " it " + c.iterations() + " sensors " + c.sensors()
                + " failures " + c.failures());
        if (c.converged()) {
            var p = c.parameters();
            System.out.printf(
                    "weakening %.3f dying %.3f sudden %.3f wake %.3f low %.3f %.3f %.3f %.3f missed %.4f lamp %.3f %.3f share %.3f days %.1f%n",
                    p.weakeningPerYear(0),
                    p.dyingPerYear(0),
                    p.suddenPerYear(),
                    p.wakeOddsFactor(),
                    p.low(false, false),
                    p.low(false, true),
                    p.low(true, false),
                    p.low(true, true),
                    p.missedChance(),
                    p.warningOn(false),
                    p.warningOn(true),
                    p.reportedShare(),
                    p.daysUntilReported());
        }
        int[] days = {30, 90, 180, 365};
        List<ToDoubleFunction<SensorOutlook>> ps =
                List.of(SensorOutlook::p30, SensorOutlook::p90, SensorOutlook::p180, SensorOutlook::p365);
        Map<String, Predicate<ReviewedFleet.Forecast>> g = new LinkedHashMap<>();
        g.put("all", x -> true);
        g.put("first use", x -> x.outlook().basis() == OriginBasis.VEHICLE_FIRST_USE);
        g.put("recorded", x -> x.outlook().basis() == OriginBasis.RECORDED_FITTING);
        g.put("unknown", x -> x.outlook().basis() == OriginBasis.UNKNOWN);
        for (LastReport r : LastReport.values())
            g.put(r.name(), x -> x.outlook().lastReport() == r);
        for (String cl : List.of("car", "van", "truck", "trailer"))
            g.put(cl, x -> cl.equals(x.outlook().vehicleClass()));
        g.put("set", x -> x.outlook().wheelSet() != null);
        g.put("spare", x -> x.outlook().position().isSpare());
        for (int y = 0; y < 8; y += 2) {
            int yy = y;
            g.put(
                    y + "y",
                    x -> x.outlook().ageDays() != null
                            && x.outlook().ageDays() >= 365 * yy
                            && x.outlook().ageDays() < 365 * (yy + 2));
        }
        g.put("fallback", x -> x.outlook().method() != SensorOutlook.Method.HIDDEN_CONDITION);

        System.out.println("inner " + f.review().estimates().wake().innerOddsRatio() + " cold "
                + f.review().estimates().wake().coldOddsRatio());
        int shown = 0;
        for (var x : f.forecasts()) {
            double q = x.outlook().pWeak();
            if (q > .2 && q < .8 && !x.weak() && shown++ < 12) {
                for (var h : f.histories())
                    if (h.vehicleId().equals(x.outlook().vehicleId()))
                        for (var l : h.lives())
                            if (l.lifeId().equals(x.outlook().lifeId())) {
                                StringBuilder z = new StringBuilder(String.format(
                                        "%.2f %s %s age %s: ",
                                        q,
                                        x.outlook().vehicleClass(),
                                        l.position().code(),
                                        x.outlook().ageDays()));
                                for (var r : l.readings())
                                    z.append(String.format(
                                            "%s %s %s %s %.0f%s; ",
                                            r.day(),
                                            r.readerId(),
                                            r.attempts(),
                                            r.answered() ? "" : "SILENT",
                                            r.ambientCelsius(),
                                            r.battery() == null
                                                    ? ""
                                                    : " " + r.battery().words()));
                                for (var v : h.visits())
                                    if (v.warning() != null && v.warning() != sensorrounds.visit.Warning.NONE)
                                        z.append(v.day() + " " + v.warning() + " " + v.reason() + ", ");
                                System.out.println(z);
                            }
            }
        }
        double[] b = {0, .005, .01, .02, .05, .1, .2, .4, .6, .8, 1.01};
        for (int k = 0; k + 1 < b.length; k++) {
            double e = 0, ed = 0;
            int o = 0, m = 0, od = 0, f90 = 0, f365 = 0;
            double e90 = 0, e365 = 0;
            for (var x : f.forecasts()) {
                double q = x.outlook().pWeak();
                if (q >= b[k] && q < b[k + 1]) {
                    m++;
                    e += q;
                    ed += x.outlook().pNow();
                    if (x.failsInDays() <= 0) od++;
                    else if (x.weak()) o++;
                    if (x.failsInDays() <= 90) f90++;
                    if (x.failsInDays() <= 365) f365++;
                    e90 += x.outlook().p90();
                    e365 += x.outlook().p365();
                }
            }
            System.out.printf(
                    "pWeak %.3f-%.3f n %d weak exp %.1f obs %d dead exp %.1f obs %d  90d exp %.1f obs %d 365 exp %.1f obs %d%n",
                    b[k], b[k + 1], m, e, o, ed, od, e90, f90, e365, f365);
        }
        for (var e : g.entrySet()) {
            var m = f.forecasts().stream().filter(e.getValue()).toList();
            StringBuilder s = new StringBuilder(String.format("%-14s %6d", e.getKey(), m.size()));
            double d0 = 0, d1 = 0;
            long o0 = 0;
            for (var x : m) {
                d0 += x.simpler().pNow();
                d1 += x.outlook().pNow();
                o0 += x.failsInDays() <= 0 ? 1 : 0;
            }
            s.append(String.format(" | now obs %4d exp %.1f -> %.1f", o0, d0, d1));
            for (int h = 0; h < 4; h++) {
                double es = 0, en = 0, bs = 0, bn = 0, d = 0, dd = 0;
                long o = 0;
                for (var x : m) {
                    int y = x.failsInDays() <= days[h] ? 1 : 0;
                    double p = ps.get(h).applyAsDouble(x.simpler()),
                            q = ps.get(h).applyAsDouble(x.outlook());
                    es += p;
                    en += q;
                    o += y;
                    double u = (p - y) * (p - y), v = (q - y) * (q - y);
                    bs += u;
                    bn += v;
                    d += v - u;
                    dd += (v - u) * (v - u);
                }
                s.append(String.format(
                        " | %d: o %d e %.0f->%.0f (%.2f->%.2f) B %.5f %+.1f%% z %.1f",
                        days[h], o, es, en, o / es, o / en, bs / m.size(), 100 * (bn / bs - 1), d / Math.sqrt(dd)));
            }
            System.out.println(s);
        }
    }
}
