package sensorrounds.season;

import java.time.LocalDate;
import sensorrounds.survival.Lifetime;

/**
 * A life with its place in the calendar.
 *
 * @param fittedOn day of age 0
 * @param cold cold months where it was lived
 * @param stratum lives are compared within it alone: each has a level of hazard of its own
 */
public record SeasonLife(Lifetime life, LocalDate fittedOn, ColdMonths cold, String stratum) {}
