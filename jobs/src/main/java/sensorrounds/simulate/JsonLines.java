package sensorrounds.simulate;

import java.time.LocalDateTime;
import java.util.Map;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.TestDrive;
import sensorrounds.visit.VisitHeader;
import sensorrounds.visit.WheelReading;

/** Canonical JSON lines, written by hand: ten times as fast as building trees. */
final class JsonLines implements VisitFormat {
    private final Units units;
    private final String offset;

    /** @param offset offset from UTC put behind each time, or empty */
    JsonLines(Units units, String offset) {
        this.units = units;
        this.offset = offset;
    }

    @Override
    public String head() {
        return "";
    }

    @Override
    public int lines(SimulatedVisit visit) {
        return 1;
    }

    @Override
    public void append(StringBuilder out, SimulatedVisit visit, Slips slips) {
        VisitHeader h = visit.header();
        out.append("{\"visitId\":\"").append(h.visitId()).append('"');
        if (h.revision() > 0) {
            out.append(",\"revision\":").append(h.revision());
        }
        text(out, "visitedAt", time(h.visitedAt()), slips.ofVisit("visitedAt"));
        text(out, "technicianId", h.technicianId(), null);
        text(out, "readerId", h.readerId(), null);
        text(out, "vehicleId", h.vehicleId(), slips.ofVisit("vehicleId"));
        text(out, "vin", h.vin(), null);
        text(out, "registration", h.registration(), null);
        number(out, "odometer", h.odometerKm() == null ? null : units.distance(h.odometerKm()));
        if (!units.odometerUnit.equals("km")) {
            text(out, "odometerUnit", units.odometerUnit, null);
        }
        number(out, "ambientTemperature", temperature(h.ambientCelsius()));
        if (!units.temperatureUnit.equals("C")) {
            text(out, "temperatureUnit", units.temperatureUnit, null);
        }
        if (!units.pressureUnit.equals("kPa")) {
            text(out, "pressureUnit", units.pressureUnit, null);
        }
        placard(out, h.placardKpa());
        text(out, "wheelSet", h.wheelSet(), null);
        text(out, "reason", CanonicalWords.word(h.reason()), null);
        warning(out, h);
        text(out, "relearn", CanonicalWords.word(h.relearn()), null);
        text(out, "relearnResult", CanonicalWords.word(h.relearnResult()), null);
        bare(out, "pressuresStored", h.pressuresStored());
        bare(out, "codesCleared", h.codesCleared());
        testDrive(out, h.testDrive());
        text(out, "notes", h.notes(), null);
        out.append(",\"wheels\":[");
        for (int i = 0; i < visit.wheels().size(); i++) {
            if (i > 0) {
                out.append(',');
            }
            wheel(out, visit.wheels().get(i), i, slips);
        }
        out.append("]}\n");
    }

    private void warning(StringBuilder out, VisitHeader h) {
        text(out, "warning", CanonicalWords.word(h.warning()), null);
        text(
                out,
                "warningSince",
                h.warningSince() == null ? null : h.warningSince().toString(),
                null);
        number(
                out,
                "drivingMinutesToWarning",
                h.drivingMinutesToWarning() == null ? null : Decimals.text(h.drivingMinutesToWarning(), 0));
        if (h.faultCodes().isEmpty()) {
            return;
        }
        out.append(",\"faultCodes\":[");
        for (int i = 0; i < h.faultCodes().size(); i++) {
            FaultCode c = h.faultCodes().get(i);
            out.append(i > 0 ? ",{\"code\":\"" : "{\"code\":\"")
                    .append(c.code())
                    .append('"');
            text(out, "state", CanonicalWords.word(c.state()), null);
            text(out, "position", c.position() == null ? null : c.position().code(), null);
            out.append('}');
        }
        out.append(']');
    }

    private void wheel(StringBuilder out, WheelReading w, int i, Slips slips) {
        String place = slips.ofWheel(i, "position");
        out.append("{\"position\":\"")
                .append(place == null ? w.position().code() : place)
                .append('"');
        text(out, "sensorId", w.sensorId(), slips.ofWheel(i, "sensorId"));
        text(out, "read", CanonicalWords.word(w.read()), null);
        bare(out, "wakeAttempts", w.wakeAttempts());
        String pressure = slips.ofWheel(i, "pressure");
        number(out, "pressure", pressure != null ? pressure : pressure(w.pressureKpa()));
        number(out, "gaugePressure", pressure(w.gaugePressureKpa()));
        bare(out, "hot", w.hot());
        number(out, "temperature", temperature(w.temperatureCelsius()));
        text(out, "battery", CanonicalWords.battery(w.battery()), slips.ofWheel(i, "battery"));
        text(out, "part", w.part(), null);
        text(out, "work", CanonicalWords.word(w.work()), null);
        text(out, "workReason", CanonicalWords.word(w.workReason()), null);
        text(out, "newSensorId", w.newSensorId(), null);
        text(out, "newPart", w.newPart(), null);
        bare(out, "cloned", w.cloned());
        text(out, "tyreDate", CanonicalWords.tyreDate(w.tyreDate()), null);
        out.append('}');
    }

    private void placard(StringBuilder out, Map<Integer, Double> placard) {
        if (placard.isEmpty()) {
            return;
        }
        out.append(",\"placardPressure\":{");
        String comma = "";
        for (Map.Entry<Integer, Double> e : placard.entrySet()) {
            out.append(comma).append('"').append(e.getKey()).append("\":").append(units.pressure(e.getValue()));
            comma = ",";
        }
        out.append('}');
    }

    private void testDrive(StringBuilder out, TestDrive d) {
        if (d == null) {
            return;
        }
        out.append(",\"testDrive\":{\"minutes\":").append(Decimals.text(d.minutes(), 0));
        number(out, "distance", d.distanceKm() == null ? null : units.distance(d.distanceKm()));
        bare(out, "warningReturned", d.warningReturned());
        out.append('}');
    }

    private String pressure(Double kpa) {
        return kpa == null ? null : units.pressure(kpa);
    }

    private String temperature(Double celsius) {
        return celsius == null ? null : units.temperature(celsius);
    }

    /** {@code 2024-03-01T09:35}, with the offset behind it when there is one. */
    private String time(LocalDateTime t) {
        return offset.isEmpty() ? t.toString() : t + ":00" + offset;
    }

    private static void text(StringBuilder out, String name, String value, String slip) {
        String shown = slip != null ? slip : value;
        if (shown == null || shown.isEmpty()) {
            return;
        }
        out.append(",\"").append(name).append("\":\"");
        for (int i = 0; i < shown.length(); i++) {
            char c = shown.charAt(i);
            if (c == '"' || c == '\\') {
                out.append('\\');
            }
            out.append(c);
        }
        out.append('"');
    }

    private static void number(StringBuilder out, String name, String value) {
        bare(out, name, value);
    }

    private static void bare(StringBuilder out, String name, Object value) {
        if (value != null) {
            out.append(",\"").append(name).append("\":").append(value);
        }
    }
}
