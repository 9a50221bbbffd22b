package sensorrounds.ingest;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;

/** Slips of people, readers and spreadsheets (trade facts 115 to 135), and what must come of each. */
final class PlantedFaults {
    private PlantedFaults() {}

    /** Plants one fault at a row. */
    interface Planter {
        /** @return false when the row does not lend itself to it; nothing is changed then */
        boolean plant(FaultyCsv log, int row);
    }

    /**
     * A kind of fault.
     *
     * @param expected name of the rule, duplicate, doubt or finding that must name a row of it, or of the note that must count
     *     its rows
     */
    record Kind(String name, String expected, Planter planter) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static Kind cell(String name, String expected, String column, String text) {
        return new Kind(name, expected, (log, row) -> {
            if (!log.has(row, column)) {
                return false;
            }
            log.put(row, column, text);
            return true;
        });
    }

    private static Kind visit(String name, String expected, String column, String text) {
        return new Kind(name, expected, (log, row) -> {
            log.putVisit(row, column, text);
            return true;
        });
    }

    static final List<Kind> ALL = List.of(
            visit("a day that is not in the calendar", "BAD_DATE", "visitedAt", "2025-02-30"),
            visit("a date of another form", "BAD_DATE", "visitedAt", "14/03/2025"),
            visit("the day number of a spreadsheet", "BAD_DATE", "visitedAt", "45678"),
            visit("a year with a digit wrong", "OUT_OF_RANGE", "visitedAt", "2205-03-14T09:00"),
            visit("a visit before the vehicle's first use", "IMPOSSIBLE_ORDER", "visitedAt", "1995-03-14T09:00"),
            visit("no vehicle", "MISSING_VALUE", "vehicleId", ""),
            visit("no visit key", "MISSING_VALUE", "visitId", ""),
            new Kind("a vehicle that is in no register", "UNREGISTERED_VEHICLE", (log, row) -> {
                log.putVisit(row, "vehicleId", "NEW-" + row);
                return true;
            }),
            visit("a unit that is none", "UNKNOWN_WORD", "pressureUnit", "atm"),
            visit("an odometer that is no number", "BAD_NUMBER", "odometer", "about 40000"),
            visit("a warning seen after the visit", "DATE_AFTER_VISIT", "warningSince", "2097-01-01"),
            cell("a position word without a layout", "UNKNOWN_POSITION", "position", "NSF"),
            cell("an outcome in other words", "UNKNOWN_WORD", "read", "yes"),
            cell("no outcome", "MISSING_VALUE", "read", ""),
            cell("an ID with the letter O", "BAD_SENSOR_ID", "sensorId", "OA1B2C3D"),
            cell("an ID in exponent form", "ID_AS_NUMBER", "sensorId", "1.234E+59"),
            cell("a decimal ID", "BAD_SENSOR_ID", "sensorId", "3735928559"),
            cell("an ID that stands for none", "PLACEHOLDER_ID", "sensorId", "FFFFFFFF"),
            cell("a decimal comma", "BAD_NUMBER", "pressure", "229,5"),
            cell("a zero too many", "OUT_OF_RANGE", "pressure", "2290"),
            cell("bar without its unit", "PRESSURE_SMALL", "pressure", "2.3"),
            cell("255 for no temperature", "OUT_OF_RANGE", "temperature", "255"),
            cell("-40 for no temperature", "TEMPERATURE_UNLIKELY", "temperature", "-40"),
            cell("a battery figure without a unit", "BAD_BATTERY", "battery", "35"),
            cell("a week the year does not have", "BAD_TYRE_DATE", "tyreDate", "5423"),
            cell("a tyre date without its zero", "BAD_TYRE_DATE", "tyreDate", "319"),
            cell("a tyre from the future", "DATE_AFTER_VISIT", "tyreDate", "2391"),
            cell("replaced, but what", "UNKNOWN_WORD", "work", "replaced"),
            new Kind("too many tries", "OUT_OF_RANGE", (log, row) -> {
                boolean has = log.has(row, "wakeAttempts");
                if (has) {
                    log.put(row, "wakeAttempts", "100");
                }
                return has;
            }),
            new Kind("a field too many", "FIELD_COUNT", (log, row) -> {
                log.raw(row, log.line(row) + ",");
                return true;
            }),
            new Kind("bytes that are no text", "NOT_TEXT", (log, row) -> {
                log.put(row, "part", "S" + FaultyCsv.NO_TEXT);
                return true;
            }),
            new Kind("two wheels at one place", "TWO_WHEELS_ONE_PLACE", (log, row) -> {
                List<Integer> visit = log.visitOf(row);
                int other = visit.get(0) == row ? visit.get(visit.size() - 1) : visit.get(0);
                boolean both = other != row && log.has(row, "sensorId") && log.has(other, "sensorId");
                if (both) {
                    log.put(row, "position", log.get(other, "position"));
                    log.touch(other);
                }
                return both;
            }),
            new Kind("one ID on two wheels", "TWO_PLACES_AT_ONCE", (log, row) -> {
                List<Integer> visit = log.visitOf(row);
                int other = visit.get(0) == row ? visit.get(visit.size() - 1) : visit.get(0);
                boolean both = other != row && log.has(row, "sensorId") && log.has(other, "sensorId");
                if (both) {
                    log.put(row, "sensorId", log.get(other, "sensorId"));
                }
                return both;
            }),
            new Kind("the ID of another vehicle read on the same day", "SENSOR_AT_TWO_VEHICLES", (log, row) -> {
                for (int other = 1; log.has(row, "sensorId") && other < log.size(); other++) {
                    boolean sameDay = log.get(other, "visitedAt")
                            .substring(0, 10)
                            .equals(log.get(row, "visitedAt").substring(0, 10));
                    if (sameDay
                            && log.has(other, "sensorId")
                            && !log.get(other, "vehicleId").equals(log.get(row, "vehicleId"))) {
                        log.put(row, "sensorId", log.get(other, "sensorId"));
                        return true;
                    }
                }
                return false;
            }),
            id(
                    "one digit of an ID wrong",
                    id -> id.substring(0, 3) + (id.charAt(3) == '7' ? 'A' : '7') + id.substring(4)),
            id("B and 8 confused", id -> id.indexOf('B') < 0 ? null : id.replaceFirst("B", "8")),
            id("two digits of an ID exchanged", id -> {
                String mixed = "" + id.charAt(0) + id.charAt(2) + id.charAt(1) + id.substring(3);
                return mixed.equals(id) ? null : mixed;
            }),
            id("the first digit of an ID left out", id -> id.substring(1)),
            new Kind("absolute pressure", "PRESSURE_ABSOLUTE", (log, row) -> {
                boolean light = ordinaryPressure(log, row);
                if (light) {
                    log.put(row, "pressure", decimal(log.number(row, "pressure") + 101));
                }
                return light;
            }),
            new Kind("psi without its unit", "PRESSURE_UNIT", (log, row) -> {
                boolean light = ordinaryPressure(log, row);
                if (light) {
                    log.put(row, "pressure", decimal(log.number(row, "pressure") / 6.894757));
                }
                return light;
            }),
            new Kind("a placard in psi", "PLACARD_UNLIKELY", (log, row) -> {
                boolean low = log.has(row, "placardPressure1") && log.number(row, "placardPressure1") < 400;
                if (low) {
                    log.putVisit(row, "placardPressure1", decimal(log.number(row, "placardPressure1") / 6.894757));
                }
                return low;
            }),
            new Kind("degrees Fahrenheit without their unit", "TEMPERATURE_UNLIKELY", (log, row) -> {
                boolean warm =
                        log.has(row, "temperature") && log.number(row, "temperature") > 8 && othersRead(log, row);
                if (warm) {
                    log.put(row, "temperature", decimal(log.number(row, "temperature") * 1.8 + 32));
                }
                return warm;
            }),
            new Kind("air in degrees Fahrenheit", "TEMPERATURE_UNLIKELY", (log, row) -> {
                boolean warm = log.has(row, "ambientTemperature") && log.number(row, "ambientTemperature") > 15;
                if (warm) {
                    log.putVisit(row, "ambientTemperature", decimal(log.number(row, "ambientTemperature") * 1.8 + 32));
                }
                return warm;
            }),
            new Kind("a digit of the odometer too many", "ODOMETER_BACK", (log, row) -> {
                boolean later = hasLaterOdometer(log, row);
                if (later) {
                    log.putVisit(row, "odometer", log.get(row, "odometer") + "0");
                }
                return later;
            }),
            new Kind("an odometer in miles", "ODOMETER_BACK", (log, row) -> {
                boolean earlier = earlierOdometer(log, row) > log.numberOr(row, "odometer") / 1.55;
                if (earlier) {
                    log.putVisit(row, "odometer", decimal(Math.rint(log.number(row, "odometer") / 1.609344)));
                }
                return earlier;
            }),
            new Kind("an odometer on one row of a visit only", "VISIT_FIELDS_DIFFER", (log, row) -> {
                boolean first = log.has(row, "odometer")
                        && log.visitOf(row).size() > 1
                        && log.visitOf(row).get(0) == row;
                if (first) {
                    log.visitOf(row).forEach(log::touch);
                    log.put(row, "odometer", "7");
                }
                return first;
            }),
            new Kind("a row synced twice", "EXACT", (log, row) -> {
                log.repeat(row);
                return true;
            }),
            new Kind("a row edited and sent again", "SUPERSEDED", (log, row) -> {
                boolean has = log.has(row, "pressure");
                if (has) {
                    log.touch(row);
                    log.put(log.repeat(row), "pressure", decimal(log.number(row, "pressure") + 1));
                }
                return has;
            }),
            new Kind("a visit edited with a revision", "REVISED", (log, row) -> {
                for (int r : log.visitOf(row)) {
                    log.touch(r);
                    log.put(log.repeat(r), "revision", "1");
                }
                return true;
            }),
            new Kind("a visit entered twice under two keys", "VISIT_TWICE", (log, row) -> {
                for (int r : log.visitOf(row)) {
                    log.put(log.repeat(r), "visitId", log.get(r, "visitId") + "-again");
                }
                return true;
            }),
            new Kind("a visit key used twice", "VISIT_KEY_REUSED", (log, row) -> {
                List<Integer> visits = log.visitsOfVehicle(row);
                int other = visits.get(visits.size() - 1);
                boolean apart = LocalDate.parse(log.get(other, "visitedAt").substring(0, 10))
                                .toEpochDay()
                        > LocalDate.parse(log.get(row, "visitedAt").substring(0, 10))
                                        .toEpochDay()
                                + 7;
                if (apart) {
                    String key = log.get(row, "visitId");
                    log.visitOf(row).forEach(log::touch);
                    log.putVisit(other, "visitId", key);
                }
                return apart;
            }),
            new Kind("another number plate at one visit", "PLATE_CHANGED", (log, row) -> {
                List<Integer> visits = log.visitsOfVehicle(row).stream()
                        .filter(r -> log.has(r, "registration"))
                        .toList();
                boolean again = log.has(row, "registration") && visits.size() > 1;
                if (again) {
                    log.putVisit(row, "registration", "QQ99 9999Q");
                }
                return again;
            }),
            new Kind("no answer, yet a pressure", "READ_CONTRADICTED", (log, row) -> {
                boolean has = log.has(row, "pressure");
                if (has) {
                    log.put(row, "read", "no-answer");
                }
                return has;
            }),
            new Kind("a new sensor without the work", "WORK_CONTRADICTED", (log, row) -> {
                boolean replaced = log.get(row, "work").equals("sensor-replaced") && log.has(row, "newSensorId");
                if (replaced) {
                    log.put(row, "work", "none");
                }
                return replaced;
            }),
            new Kind("replaced without the new ID", "REPLACED_WITHOUT_NEW_ID", (log, row) -> {
                boolean replaced = log.get(row, "work").equals("sensor-replaced");
                if (replaced) {
                    log.put(row, "newSensorId", "");
                    log.put(row, "newPart", "");
                }
                return replaced;
            }));

    private interface Slip {
        String of(String id);
    }

    /** At a visit between two others at which the place had the same sensor. */
    private static Kind id(String name, Slip slip) {
        return new Kind(name, "SENSOR_ID_NEAR", (log, row) -> {
            List<Integer> same = log.samePlace(row);
            int at = same.indexOf(row);
            String id = log.get(row, "sensorId");
            boolean between = at > 0
                    && at < same.size() - 1
                    && id.length() == 8
                    && log.get(same.get(at - 1), "sensorId").equals(id)
                    && log.get(same.get(at + 1), "sensorId").equals(id);
            String wrong = between ? slip.of(id) : null;
            if (wrong != null) {
                log.put(row, "sensorId", wrong);
            }
            return wrong != null;
        });
    }

    private static boolean ordinaryPressure(FaultyCsv log, int row) {
        String position = log.get(row, "position");
        String placard = position.startsWith("1") ? "placardPressure1" : "placardPressure2";
        return (position.startsWith("1") || position.startsWith("2"))
                && log.has(row, "pressure")
                && log.has(row, placard)
                && log.number(row, placard) <= 350
                && Math.abs(log.number(row, "pressure") - log.number(row, placard)) < 8;
    }

    private static boolean othersRead(FaultyCsv log, int row) {
        return log.visitOf(row).stream()
                        .filter(r -> r != row && log.has(r, "temperature"))
                        .count()
                >= 3;
    }

    private static boolean hasLaterOdometer(FaultyCsv log, int row) {
        return log.has(row, "odometer")
                && log.number(row, "odometer") > 1000
                && log.visitsOfVehicle(row).stream()
                        .anyMatch(r -> log.has(r, "odometer")
                                && log.get(r, "visitedAt").compareTo(log.get(row, "visitedAt")) > 0);
    }

    private static double earlierOdometer(FaultyCsv log, int row) {
        return log.visitsOfVehicle(row).stream()
                .filter(r -> log.has(r, "odometer") && log.get(r, "visitedAt").compareTo(log.get(row, "visitedAt")) < 0)
                .mapToDouble(r -> log.number(r, "odometer"))
                .max()
                .orElse(0);
    }

    private static String decimal(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
