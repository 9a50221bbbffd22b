package sensorrounds.simulate;

import java.util.List;
import sensorrounds.fleet.AxleLayout;
import sensorrounds.fleet.MonitoringSystem;
import sensorrounds.fleet.Part;
import sensorrounds.simulate.Crew.BatteryForm;
import sensorrounds.simulate.Crew.Depot;
import sensorrounds.simulate.Crew.Export;
import sensorrounds.simulate.Crew.Reader;
import sensorrounds.simulate.Crew.Technician;

/**
 * The operator of the sample data: three depots, five technicians, cars, vans, small trucks and trailers. All of it is
 * made up. The laws of life are chosen, not measured: no public hazard curve of sensor life by age was found.
 */
final class InventedOperator {
    /** Reader that is slow everywhere. */
    static final String SLOW_READER = "RD-2207";

    private static final LifeLaw CAR = new LifeLaw(4.2, 4400);
    private static final LifeLaw CAR_LATER = new LifeLaw(3.2, 4000);
    private static final LifeLaw VAN = new LifeLaw(3.6, 3650);
    private static final LifeLaw VAN_LATER = new LifeLaw(3.0, 3300);
    private static final LifeLaw HEAVY = new LifeLaw(3.2, 3200);
    private static final LifeLaw HEAVY_LATER = new LifeLaw(2.8, 2900);

    private InventedOperator() {}

    /** The slow reader lies in T22's van, who makes about half of the visits with it. */
    static Crew crew() {
        return new Crew(
                List.of(
                        new Depot("Harbour", "left", 0.8),
                        new Depot("Hillside", "left", -1.6),
                        new Depot("Ring Road", "right", 0.2)),
                List.of(
                        new Technician("T11", List.of(0, 1, 2), Export.JSON_LINES),
                        new Technician("T12", List.of(0), Export.TRADE_CSV),
                        new Technician("T21", List.of(1, 0), Export.JSON_LINES),
                        new Technician("T22", List.of(1, 2), Export.CANONICAL_CSV),
                        new Technician("T31", List.of(2), Export.DECIMAL_COMMA_CSV)),
                List.of(
                        new Reader("RD-1101", "T11", 1, 0.91, 6, BatteryForm.FLAG),
                        new Reader("RD-1203", "T12", 1, 0.88, 6, BatteryForm.FLAG),
                        new Reader("RD-2104", "T21", 1, 0.92, 6, BatteryForm.PERCENT),
                        new Reader("RD-2206", "T22", 0.5, 0.90, 6, BatteryForm.VOLTS),
                        new Reader(SLOW_READER, "T22", 0.5, 0.41, 10, BatteryForm.FLAG),
                        new Reader("RD-3105", "T31", 1, 0.89, 6, BatteryForm.FLAG)));
    }

    static List<VehicleKind> kinds() {
        return List.of(
                car("C-1", 34, "SS", 15_000, List.of(230.0, 220.0), "S433-R", 0.25, 0x1A10),
                car("C-2", 22, "SS", 22_000, List.of(240.0, 260.0), "S433-R", 0.3, 0x1B30),
                car("C-3", 10, "SS+spare", 13_000, List.of(240.0, 240.0), "S315-R", 0, 0x1A50),
                van("van", "N-1", 30, "SS", 28_000, List.of(300.0, 340.0), 0x1C20),
                van("van", "N-2", 20, "SS", 34_000, List.of(330.0, 380.0), 0x1C40),
                van("van-dual", "N-3", 13, "SD", 26_000, List.of(350.0, 310.0), 0x1C60),
                indirectVan("N-4", 5),
                heavy("truck", "H-1", 8, "SD", 38_000, List.of(800.0, 750.0), 0x1D10),
                heavy("trailer", "R-1", 6, "SSS", 45_000, List.of(850.0, 850.0, 850.0), 0x1D40),
                heavy("trailer", "R-2", 2, "DDD", 40_000, List.of(800.0, 800.0, 800.0), 0x1D70));
    }

    static List<Part> parts() {
        return List.of(
                new Part("S433-R", "Sensor, rubber stem", Part.Kind.SENSOR, 46.00, 6, 4, 433.92, List.of("P433-U")),
                new Part("S433-M", "Sensor, metal stem", Part.Kind.SENSOR, 52.50, 6, 4, 433.92, List.of("P433-U")),
                new Part("S433-H", "Sensor, high pressure", Part.Kind.SENSOR, 88.00, 14, 2, 433.92, List.of()),
                new Part("S315-R", "Sensor, rubber stem", Part.Kind.SENSOR, 61.00, 21, 1, 315.0, List.of()),
                new Part(
                        "P433-U",
                        "Programmable sensor, exchangeable stem",
                        Part.Kind.SENSOR,
                        38.00,
                        2,
                        5,
                        433.92,
                        List.of()),
                new Part("KIT-R", "Service kit, rubber stem", Part.Kind.SERVICE_KIT, 3.20, 3, 25, null, List.of()),
                new Part("KIT-M", "Service kit, metal stem", Part.Kind.SERVICE_KIT, 4.60, 3, 25, null, List.of()));
    }

    private static VehicleKind car(
            String group,
            int weight,
            String axles,
            double km,
            List<Double> placard,
            String part,
            double sets,
            int code) {
        String later = part.equals("S315-R") ? part : "P433-U";
        return new VehicleKind(
                "car",
                group,
                weight,
                layout(axles),
                MonitoringSystem.DIRECT,
                placard,
                km,
                part,
                CAR,
                later,
                CAR_LATER,
                sets,
                code);
    }

    private static VehicleKind van(
            String vehicleClass, String group, int weight, String axles, double km, List<Double> placard, int code) {
        return new VehicleKind(
                vehicleClass,
                group,
                weight,
                layout(axles),
                MonitoringSystem.DIRECT,
                placard,
                km,
                "S433-M",
                VAN,
                "P433-U",
                VAN_LATER,
                0,
                code);
    }

    private static VehicleKind indirectVan(String group, int weight) {
        return new VehicleKind(
                "van",
                group,
                weight,
                layout("SS"),
                MonitoringSystem.INDIRECT,
                List.of(290.0, 300.0),
                21_000,
                null,
                VAN,
                "P433-U",
                VAN_LATER,
                0,
                0x1C90);
    }

    private static VehicleKind heavy(
            String vehicleClass, String group, int weight, String axles, double km, List<Double> placard, int code) {
        return new VehicleKind(
                vehicleClass,
                group,
                weight,
                layout(axles),
                MonitoringSystem.DIRECT,
                placard,
                km,
                "S433-H",
                HEAVY,
                "S433-H",
                HEAVY_LATER,
                0,
                code);
    }

    private static AxleLayout layout(String text) {
        return AxleLayout.parse(text).orElseThrow();
    }
}
