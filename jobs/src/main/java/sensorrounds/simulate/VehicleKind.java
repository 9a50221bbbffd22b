package sensorrounds.simulate;

import java.util.List;
import sensorrounds.fleet.AxleLayout;
import sensorrounds.fleet.MonitoringSystem;

/**
 * A sort of vehicle of the invented fleet.
 *
 * @param weight share of the fleet, relative to the others
 * @param placardKpa prescribed cold pressure by axle from the front, kPa
 * @param originalPart part fitted when new
 * @param originalLaw battery life of that part on this sort of vehicle
 * @param replacementPart part fitted later
 * @param replacementLaw battery life of that part on this sort of vehicle
 * @param secondSetShare share with a second wheel set for the winter
 * @param faultCode maker-specific code of the system fault, in the form of SAE J2012, without a position; the codes of
 *     the places follow it
 */
public record VehicleKind(
        String vehicleClass,
        String modelGroup,
        double weight,
        AxleLayout axles,
        MonitoringSystem system,
        List<Double> placardKpa,
        double annualKm,
        String originalPart,
        LifeLaw originalLaw,
        String replacementPart,
        LifeLaw replacementLaw,
        double secondSetShare,
        int faultCode) {
    public VehicleKind {
        placardKpa = List.copyOf(placardKpa);
        if (placardKpa.size() != axles.axles().size()) {
            throw new IllegalArgumentException("model group " + modelGroup + " has "
                    + axles.axles().size() + " axles and " + placardKpa.size()
                    + " placard pressures: give one for each axle");
        }
    }

    boolean isTrailer() {
        return vehicleClass.equals("trailer");
    }

    LifeLaw lawOf(String part) {
        return part.equals(originalPart) ? originalLaw : replacementLaw;
    }

    String partlessCode() {
        return code(0);
    }

    /** Fault code number {@code place} of this model group; 0 names no place. */
    String code(int place) {
        return String.format("C%04X", faultCode + place);
    }
}
