package sensorrounds.history;

import java.io.Serializable;
import java.time.LocalDate;

/**
 * What is known of a sensor from the vehicle it was on before.
 *
 * @param fromVehicle that vehicle
 * @param lifeId its life there
 * @param lastAnswered last answer there
 * @param fittedOn day of age zero; null when not known
 * @param notBefore earliest day of its fitting; null when nothing bounds it
 * @param part part number; null when not known
 * @param takenForDead true when it was counted as failed there, and so is another sensor now or was no failure
 */
public record Arrival(
        String fromVehicle,
        String lifeId,
        LocalDate lastAnswered,
        LocalDate fittedOn,
        LocalDate notBefore,
        String part,
        boolean takenForDead)
        implements Serializable {}
