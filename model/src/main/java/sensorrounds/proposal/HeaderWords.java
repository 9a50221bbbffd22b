package sensorrounds.proposal;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sensorrounds.intake.Field;

/**
 * What people write over their columns, by field: words of the trade in English, German, French, Italian, Spanish and Dutch
 * (common practice, no source). A phrase fits a header when the header has all its words, in any order. Words that start
 * with ~ stand for any unit of that kind.
 */
final class HeaderWords {
    private static final String PHRASES = """
            visitId: visit id, visit, visit key, job, job id, ticket, work order, order, auftrag, beleg, einsatz, \
            intervention, ordre, bon, intervento, ordine, visita, opdracht
            revision: revision, edit, version, anderung, stand der anderung
            visitedAt: visited at, date, time, date time, timestamp, job time, job date, visit date, visit time, datum, \
            zeit, uhrzeit, heure, data, ora, fecha, hora, tijd
            technicianId: technician, technician id, fitter, mechanic, engineer, monteur, techniker, mechaniker, \
            technicien, tecnico
            readerId: reader, reader id, tool, tool id, trigger tool, lesegerat, gerat, werkzeug, outil, lecteur, lettore, \
            lector, uitleesapparaat
            vehicleId: vehicle, vehicle id, fleet, fleet id, unit, unit id, car, truck, trailer, wagen, fahrzeug, vehicule, \
            veicolo, vehiculo, voertuig
            vin: vin, chassis, vehicle identification, fahrgestellnummer, fin, telaio, bastidor
            registration: registration, reg, plate, licence plate, license plate, number plate, kennzeichen, \
            immatriculation, targa, matricula, kenteken
            odometer: odometer, mileage, ~distance, ~distance stand, kilometre, kilometrage, clock, tachostand, \
            kilometerstand, chilometri
            odometerUnit: odometer unit, distance unit
            ambientTemperature: ambient, ambient temperature, air outside, outside temperature, outside, air temperature, \
            aussenluft, aussentemperatur, temperature exterieure, temperatura esterna, temperatura exterior
            temperatureUnit: temperature unit
            pressureUnit: pressure unit
            wheelSet: set, wheel set, radsatz, train de roue
            reason: reason, visit reason, called, called out, purpose, anlass, motif, motivo
            warning: warning, light, lamp, warning light, warning lamp, leuchte, warnleuchte, voyant, spia, testigo, lampje
            warningSince: warning since, light since, lamp since, leuchte seit, warnung seit, voyant depuis, spia dal
            drivingMinutesToWarning: ~minute warning, ~minute light, ~minute lamp, ~minute leuchte, ~minute voyant
            faultCodes: code, fault code, trouble code, dtc, fehlerspeicher, fehlercode, code defaut, codice errore
            relearn: relearn, relearn kind, learn, anlernen, reapprentissage, apprentissage
            relearnResult: relearn result, relearn went, relearn ok, anlernen ergebnis, resultat apprentissage
            pressuresStored: pressure stored, pressure reset, drucke gespeichert, druck gespeichert
            codesCleared: code cleared, code wiped, code erased, fehler geloscht, code efface
            testDriveMinutes: test drive ~minute, drive ~minute, road test ~minute, probefahrt ~minute, essai ~minute
            testDriveDistance: test drive ~distance, drive ~distance, road test ~distance, probefahrt ~distance, \
            essai ~distance
            testDriveWarningReturned: light back, warning back, lamp back, warning returned, leuchte wieder, \
            leuchte wieder da, voyant revenu
            notes: note, remark, comment, bemerkung, notiz, kommentar, remarque, commentaire, osservazioni, observacione, \
            opmerking
            position: position, wheel, wheel position, pos, rad, radposition, roue, ruota, rueda, wiel
            sensorId: sensor, sensor id, id, id found, id read, sensor found, kennung, kennung gelesen, sensorkennung, \
            id capteur, capteur, sensore, id sensore
            read: read, answer, answered, reply, result, antwort, gelesen, reponse, lecture, lettura, respuesta
            wakeAttempts: attempt, trie, wake attempt, wakeup, versuche, versuch, essai, tentative, tentativi, intento, \
            poging
            pressure: pressure, ~pressure, tyre pressure, tire pressure, sensor pressure, druck, reifendruck, pression, \
            pressione, presion, spanning
            gaugePressure: gauge, hand gauge, gauge pressure, handmesser, manometer, manometre, manometro
            hot: hot, warm, tyre warm, tyre hot, reifen warm, pneu chaud, caldo, caliente
            temperature: temperature, tyre temperature, tire temperature, sensor temperature, tyre air, reifenluft, \
            reifentemperatur, temperatur, temperatura, temperature pneu
            battery: battery, cell, batterie, batteria, bateria, pile, zelle
            part: part, part found, part read, part number, teil, teil gelesen, teilenummer, piece, pezzo
            work: work, done, work done, action, arbeit, arbeiten, travail, travaux, lavoro, trabajo, werk
            workReason: reason, because, cause, why, work reason, grund, ursache, raison, causa, motivo
            newSensorId: new id, new sensor id, id fitted, sensor fitted, new sensor, kennung neu, neue kennung, nouvel id
            newPart: new part, part fitted, teil neu, neue teil, nouvelle piece
            cloned: cloned, clone, same id, same id kept, copied id, kennung ubernommen, id copie
            tyreDate: tyre date, tire date, dot, week code, dot week, tyre week, reifenwoche, reifen dot, semaine pneu
            """;
    private static final String PLACARD = "placard, placard pressure, prescribed, target, soll, solldruck, prescrite";
    private static final Map<Field, List<Set<String>>> BY_FIELD = read();
    private static final Set<String> NOT_FOR_US = Set.copyOf(List.of(
            "invoice",
            "price",
            "cost",
            "amount",
            "total",
            "vat",
            "customer",
            "phone",
            "email",
            "address",
            "signature",
            "photo",
            "rechnung",
            "preis",
            "betrag",
            "kunde",
            "telefon",
            "adresse",
            "facture",
            "prix",
            "client",
            "fattura"));

    private HeaderWords() {}

    /**
     * How well a header names a field.
     *
     * @param words words of the phrase that fits
     * @param left words of the header that the phrase does not explain
     */
    record Match(int words, int left) {}

    /** @return the best fit, or null when the header does not name the field */
    static Match match(HeaderTokens header, Field field) {
        Match best = null;
        for (Set<String> phrase : BY_FIELD.getOrDefault(field, List.of())) {
            if (header.all().containsAll(phrase)) {
                int left = header.besides(phrase, field);
                Match match = new Match(phrase.size(), left);
                boolean better =
                        best == null || left < best.left() || left == best.left() && match.words() > best.words();
                best = better ? match : best;
            }
        }
        return best;
    }

    /** True when a column is of use to an office and not to this program. */
    static boolean notForUs(HeaderTokens header) {
        return header.all().stream().anyMatch(NOT_FOR_US::contains);
    }

    private static Map<Field, List<Set<String>>> read() {
        Map<Field, List<Set<String>>> map = new EnumMap<>(Field.class);
        PHRASES.lines().forEach(line -> {
            int colon = line.indexOf(':');
            Field field = Field.of(line.substring(0, colon)).orElseThrow();
            for (String phrase : line.substring(colon + 1).split(",")) {
                add(map, field, phrase);
            }
        });
        for (int axle = 1; axle <= 9; axle++) {
            for (String phrase : PLACARD.split(",")) {
                add(map, Field.placardPressure(axle), phrase + " " + axle);
                if (axle <= 2) {
                    add(map, Field.placardPressure(axle), phrase + " ~axle" + axle);
                }
            }
        }
        return map;
    }

    private static void add(Map<Field, List<Set<String>>> map, Field field, String phrase) {
        Set<String> words = new HashSet<>();
        for (String word : phrase.strip().split(" ")) {
            words.add(word.startsWith("~") ? word : Texts.plain(word));
        }
        map.computeIfAbsent(field, f -> new ArrayList<>()).add(words);
    }
}
