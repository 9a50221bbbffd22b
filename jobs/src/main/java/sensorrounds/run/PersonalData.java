package sensorrounds.run;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import sensorrounds.ingest.Pseudonyms;
import sensorrounds.ingest.Pseudonyms.Technicians;
import sensorrounds.intake.Field;

/** How a run keeps what tells of people, for its manifest and its report; the key of the pseudonyms is no part of it. */
final class PersonalData {
    private PersonalData() {}

    /** What becomes of a field in the stored log rows. */
    enum Kept {
        AS_WRITTEN,
        PSEUDONYM,
        LEFT_OUT
    }

    /** @param pseudonyms null when personal data is kept */
    static Map<Field, Kept> kept(Pseudonyms pseudonyms) {
        Map<Field, Kept> kept = new EnumMap<>(Field.class);
        for (Field field : Field.values()) {
            if (field.isPersonal()) {
                kept.put(field, Kept.AS_WRITTEN);
            }
        }
        if (pseudonyms != null) {
            kept.put(Field.VIN, Kept.PSEUDONYM);
            kept.put(Field.REGISTRATION, Kept.PSEUDONYM);
            kept.put(Field.NOTES, Kept.LEFT_OUT);
            if (pseudonyms.technicians() == Technicians.REPLACED) {
                kept.put(Field.TECHNICIAN_ID, Kept.PSEUDONYM);
            }
        }
        return Collections.unmodifiableMap(kept);
    }

    /** The same in words. */
    static String words(Pseudonyms pseudonyms) {
        return pseudonyms == null
                ? "number plates, VINs, technicians and remarks as written, in the stored log rows only"
                : "number plates and VINs as keyed hashes, technicians "
                        + (pseudonyms.technicians() == Technicians.REPLACED ? "too" : "as written")
                        + ", remarks left out";
    }
}
