package sensorrounds.simulate;

import java.util.List;

/**
 * What technicians scribble, each in his language. Free text with the commas, semicolons, quotes and signs that trip a
 * careless reader.
 */
final class Remarks {
    private record Remark(String english, String german) {}

    private static final List<Remark> NO_PART = List.of(
            new Remark("part not on van, booked", "Teil nicht an Bord; Termin gemacht"),
            new Remark("no sensor in stock - come back", "kein Sensor auf Lager"),
            new Remark("driver could not wait, next time", "Fahrer hatte keine Zeit, nächstes Mal"));
    private static final List<Remark> DAMAGE = List.of(
            new Remark("stem sheared off at the bead, replaced", "Ventil am Wulst abgerissen, ersetzt"),
            new Remark("sensor broken taking tyre off; own cost", "Sensor beim Abziehen gebrochen; geht auf uns"));
    private static final List<Remark> ORDINARY = List.of(
            new Remark("inner rim corroded, cleaned", "Felge innen rostig, gereinigt"),
            new Remark("keys at gate", "Schlüssel beim Pförtner"),
            new Remark("customer asks for call before next visit", "bitte vorher anrufen"),
            new Remark("nuts re-torqued after 40 km", "Muttern nach 40 km nachgezogen"),
            new Remark("valve cap missing, new one", "Ventilkappe fehlte, neu"),
            new Remark("light said \"check tyres\" on Monday only", "Anzeige \"Reifen prüfen\" nur am Montag"),
            new Remark("parked against wall; moved it to get at the wheels", "stand an der Wand; umgesetzt"),
            new Remark("tread 3 mm front, told the depot", "Profil vorn 3 mm, gemeldet"),
            new Remark("spare under load, not reached", "Reserverad unter Ladung, nicht erreicht"));
    private static final Remark NOT_THERE = new Remark("vehicle not on site", "Wagen nicht am Platz");

    private Remarks() {}

    static String noPart(Dice dice, VisitDraft v) {
        return say(dice.pick(NO_PART), v);
    }

    static String damage(Dice dice, VisitDraft v) {
        return say(dice.pick(DAMAGE), v);
    }

    static String ordinary(Dice dice, VisitDraft v) {
        return say(dice.pick(ORDINARY), v);
    }

    static String notThere(VisitDraft v) {
        return say(NOT_THERE, v);
    }

    private static String say(Remark r, VisitDraft v) {
        return v.crew.technician().export() == Crew.Export.DECIMAL_COMMA_CSV ? r.german() : r.english();
    }
}
