package sensorrounds.review;

import sensorrounds.survival.CohortLadder;

/** What puts sensors into one cohort of the survival curves. */
public enum CohortBy {
    VEHICLE_CLASS,
    PART;

    /** Cohort of sensors of which the dividing column is not known. */
    public static final String NOT_KNOWN = "not known";

    /**
     * @param vehicleClass null when not known
     * @param part null when not known
     */
    public String cohort(String vehicleClass, String part) {
        String name = this == PART ? part : vehicleClass;
        if (name == null) {
            return NOT_KNOWN;
        }
        // A class of the user's own that is called like the pool must not be taken for it.
        return name.equals(CohortLadder.POOL) ? name + " (class)" : name;
    }
}
