package sensorrounds.proposal;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import sensorrounds.intake.Field;

/**
 * What words of the trade mean, by field, in English, German, French, Italian, Spanish and Dutch (common practice, no
 * source). The first line that fits decides, so that "no answer" is not taken for "answer". Words whose meaning differs
 * from shop to shop are left to the user, with the question to ask.
 */
final class WordHints {
    /** Stands for: ask. */
    private static final String ASK = "ask";

    private static final String FLAG = """
            true = y|ye|yes|true|ja|j|oui|o|si|s|1|x
            false = n|no|false|nein|non|nee|0
            """;
    private static final Map<Field, List<Hint>> BY_FIELD = new EnumMap<>(Field.class);

    static {
        put(Field.REASON, """
                seasonal-change = .*(season|winter|summer|sommer|raderwechsel|saison|hiver|ete|invern|estate|verano).*
                tyre-work = .*(tyre|tire|reifen|pneu|gomm|neumatico|band).*
                warning = .*(warn|light|lamp|leuchte|voyant|spia|testigo).*
                inspection = .*(check|inspect|durchsicht|control|kontrolle|prufung|mot|revision|test).*
                service = .*(service|wartung|maintenance|entretien|manutenzione|mantenimiento|onderhoud).*
                other = .*(other|sonstig|autre|altro|otro|overig).*
                """);
        put(Field.WARNING, """
                system-fault = .*(flash|blink|clignot|lampegg|parpade|knipper).*
                message = .*(message|meldung|text|messaggio|mensaje).*
                low-pressure = .*(steady|dauer|constant|fixe|fissa|fijo|continu).*
                none = (none|off|out|no light|aus|keine|eteint|aucun|spenta|apagado|uit|geen)
                ask:steady or flashing? = (on|lit|an|yes|ye|y|ja|oui|allume|accesa|si|aan|1)
                """);
        put(Field.RELEARN, """
                diagnostic-port = .*(port|obd|diag|buchse|prise|presa).*
                drive = .*(driv|fahr|roul|guida|conduc|rijd|auto).*
                stationary = .*(station|stand|trigger|arret|ferm|parad).*
                none = (none|no|not done|nein|keine|non|aucun|geen|nee|0|n)
                ask:of which kind? = (ye|yes|y|done|ja|oui|si|1)
                """);
        put(Field.RELEARN_RESULT, """
                failed = .*(fail|not take|misslung|nicht|echou|fallit|fallid|mislukt).*
                attempted = .*(tried|attempt|versucht|essaye|tentat|intentad|geprobeerd).*
                done = (done|took|ok|erledigt|fait|fatto|hecho|gelukt|succe.*|complete.*)
                ask:did it take, or was it tried? = (ye|yes|y|ja|oui|si|1)
                """);
        put(Field.READ, """
                not-tried = .*(skip|not tried|nicht versucht|non essay|non provat|not reached|niet geprobeerd).*
                not-present = .*(none fitted|not fitted|no sensor|keiner|kein sensor|absent|assente|not present|pas de).*
                no-answer = .*(no answer|dead|silent|stumm|muet|no reply|no response|keine antwort|muto|no responde).*
                ok = (ok|read|good|answer|answered|gelesen|lu|letto|leido|gelezen|ye|yes|y|ja|oui|si|1)
                ask:no answer, not tried, or no sensor? = (no|n|nein|non|nee|0|fail|failed|none)
                """);
        put(Field.BATTERY, """
                low = (low|weak|bad|poor|schwach|leer|faible|scarica|debole|baja|zwak|replace)
                ok = (ok|good|fine|gut|bon|bonne|buona|buono|bien|goed|normal)
                """);
        put(Field.WORK, """
                plain-valve-fitted = .*(plain|ohne sensor|rubber valve|sans capteur|senza sensore).*
                kit-renewed = .*(kit|ventilsatz|core|seal).*
                sensor-replaced = .*(sensor|capteur|sensore).*(new|replac|erneu|neu|remplac|sostitu|cambi|vervang).*
                sensor-replaced = .*(new|replac|erneu|neu|remplac|nouv|sostitu|nuovo|nuevo).*(sensor|capteur|sensore).*
                tyre-work = .*(tyre|tire|reifen|pneu|gomm|band).*
                none = (none|nothing|no|keine|nicht|aucun|rien|nessuno|niente|nada|geen)
                ask:sensor, valve or kit? = .*(new|neu|replac|ersetzt|change|changed|remplac|sostitu|cambi).*
                """);
        put(Field.WORK_REASON, """
                not-learned = .*(not learn|nicht angelernt|unlearned).*
                no-answer = .*(no answer|dead sensor|antwortet nicht|silent|muet|no reply).*
                tyre-change-damage = .*(rim|tyre change|tire change|abziehen|demont|smontagg|montage).*
                battery-exhausted = .*(batter|cell|pile|zelle|bateria).*
                stem-broken = .*(stem|snapped|gebrochen|valve broke|casse|rott|roto).*
                corrosion = .*(corro|korro|rust|rost).*
                ingress = .*(water|wasser|sealant|ingress|eau|acqua|agua).*
                wrong-type = .*(wrong|falsch|mauvais|sbagliat).*
                lost = .*(lost|missing|verloren|perdu|pers).*
                preventive = .*(prevent|before it|vorsorg|preventi).*
                customer-wheels = .*(customer|kunde|client|cliente).*
                unknown = .*(unknown|not said|unbekannt|inconnu|sconosciut|desconocid).*
                """);
        put(Field.ODOMETER_UNIT, "mi = (mi|mile)\nkm = (km|kilometre|kilometer)\n");
        put(Field.TEMPERATURE_UNIT, "C = (c|celsiu|degc)\nF = (f|fahrenheit|degf)\n");
        put(Field.PRESSURE_UNIT, "kPa = kpa\nbar = bar\npsi = psi\n");
        put(
                Field.HOT,
                FLAG + "true = (hot|warm|heiss|chaud|caldo|caliente)\nfalse = (cold|kalt|froid|freddo|frio|koud)\n");
        for (Field flag :
                List.of(Field.PRESSURES_STORED, Field.CODES_CLEARED, Field.TEST_DRIVE_WARNING_RETURNED, Field.CLONED)) {
            put(flag, FLAG);
        }
    }

    private WordHints() {}

    /**
     * What a word means.
     *
     * @param word the canonical word, empty for not written down; null when the user has to say
     * @param question what to ask then
     */
    record Meaning(String word, String question) {}

    /** @return null for a word that is not known at all */
    static Meaning of(Field field, String text) {
        String plain = Texts.plain(text);
        if (plain.equals("n a") || plain.equals("na") || plain.equals("k a")) {
            return new Meaning("", null);
        }
        if (plain.isEmpty()) {
            return new Meaning(null, "does it mean none, or not written down (\"\")?");
        }
        for (Hint hint : BY_FIELD.getOrDefault(field, List.of())) {
            if (hint.pattern().matcher(plain).matches()) {
                return hint.meaning();
            }
        }
        return null;
    }

    private record Hint(Meaning meaning, Pattern pattern) {}

    private static void put(Field field, String lines) {
        List<Hint> hints = new ArrayList<>();
        lines.lines().forEach(line -> {
            int at = line.indexOf(" = ");
            String word = line.substring(0, at).strip();
            Meaning meaning = word.startsWith(ASK + ":")
                    ? new Meaning(null, word.substring(ASK.length() + 1))
                    : new Meaning(word, null);
            hints.add(new Hint(meaning, Pattern.compile(line.substring(at + 3).strip())));
        });
        BY_FIELD.put(field, List.copyOf(hints));
    }
}
