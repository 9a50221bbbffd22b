package sensorrounds.simulate;

import java.util.List;
import sensorrounds.fleet.Part;
import sensorrounds.fleet.Vehicle;

/** The fleet register, the parts and the stock in canonical CSV. */
final class Registers {
    static final String FLEET_HEAD = "vehicleId,vehicleClass,modelGroup,firstUsed,depot,drivingSide,system,axles,"
            + "originalPart,annualKm,nextPlannedVisit,leftFleet\n";

    private Registers() {}

    static void appendVehicle(StringBuilder out, Vehicle v) {
        out.append(v.vehicleId()).append(',');
        out.append(v.vehicleClass()).append(',');
        out.append(v.modelGroup()).append(',');
        out.append(v.firstUsed()).append(',');
        out.append(v.depot()).append(',');
        out.append(v.drivingSide()).append(',');
        out.append(CanonicalWords.word(v.system())).append(',');
        out.append(v.axles().code()).append(',');
        out.append(orBlank(v.originalPart())).append(',');
        out.append(Decimals.text(v.annualKm(), 0)).append(',');
        out.append(orBlank(v.nextPlannedVisit())).append(',');
        out.append(orBlank(v.leftFleet())).append('\n');
    }

    static String parts(List<Part> parts) {
        StringBuilder s =
                new StringBuilder("partId,description,kind,price,leadTimeDays,packSize,frequencyMhz,substitutes\n");
        for (Part p : parts) {
            s.append(p.partId()).append(",\"").append(p.description()).append("\",");
            s.append(CanonicalWords.word(p.kind())).append(',');
            s.append(Decimals.text(p.price(), 2)).append(',');
            s.append(p.leadTimeDays()).append(',').append(p.packSize()).append(',');
            s.append(p.frequencyMhz() == null ? "" : Decimals.text(p.frequencyMhz(), 2));
            s.append(',').append(String.join(";", p.substitutes())).append('\n');
        }
        return s.toString();
    }

    static String stock(SimulationSettings settings, List<Part> parts) {
        StringBuilder s = new StringBuilder("partId,depot,pieces\n");
        Dice dice = Dice.of(settings.seed(), 'P');
        for (Part p : parts) {
            for (Crew.Depot d : settings.crew().depots()) {
                int most = p.kind() == Part.Kind.SERVICE_KIT ? 40 : p.partId().startsWith("P") ? 14 : 4;
                s.append(p.partId()).append(',').append(d.name()).append(',');
                s.append(dice.between(0, most)).append('\n');
            }
        }
        return s.toString();
    }

    private static String orBlank(Object o) {
        return o == null ? "" : o.toString();
    }
}
