package sensorrounds.story;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What the page comes to, in a few sentences. */
final class InShort {
    private static final double DAYS_PER_YEAR = 365.25;

    private final VehicleFacts facts;

    InShort(VehicleFacts facts) {
        this.facts = facts;
    }

    Page.Part part() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Prose(systemWarnings()));
        add(blocks, pressureWarnings());
        add(blocks, WarningLines.lastRepair(facts));
        add(blocks, failures());
        add(blocks, NextToFail.sentence(facts));
        add(blocks, readers());
        return new Page.Part("short", "In short", blocks);
    }

    private static void add(List<Block> blocks, String sentence) {
        if (!sentence.isEmpty()) {
            blocks.add(new Block.Prose(sentence));
        }
    }

    /** The story of the run, up to what to do, which has its own list; and how often against its peers. */
    private String systemWarnings() {
        Optional<StoredRow> recurring =
                facts.rows("recurring-vehicles").stream().findFirst();
        if (recurring.isEmpty()) {
            return "No system warning on record.";
        }
        StoredRow r = recurring.get();
        String story = r.orEmpty("story");
        int next = story.indexOf(" Next: ");
        String told = next < 0 ? story : story.substring(0, next);
        boolean driven = r.has("exposure_km");
        return told + " Over all " + Say.figure(r.number("exposure_years"), 1) + " years"
                + (driven ? " and " + Say.grouped(r.number("exposure_km")) + " km" : "") + ": "
                + Say.figure(r.number("rate_per_year"), 1) + " warnings a year"
                + (driven ? ", " + Say.figure(r.number("rate_per_10000_km"), 1) + " in 10\u00a0000 km" : "")
                + ". Drawn towards its peers, so that a short history cannot shout, that is "
                + Say.figure(r.number("shrunk_rate_per_year"), 1)
                + " a year; the chance that it warns more often than they do on average is "
                + Say.sure(r.number("probability_above_peers")) + ".";
    }

    private String pressureWarnings() {
        List<StoredRow> low = facts.rows("warning-episodes").stream()
                .filter(e -> e.is("warning", "LOW_PRESSURE"))
                .toList();
        if (low.isEmpty()) {
            return "";
        }
        long cold = low.stream().filter(e -> e.flag("explained_by_cold")).count();
        String all = Say.count(low.size(), "low-pressure warning") + " on record";
        if (cold == 0) {
            return all + "; the system did what it is there for, which blames no sensor.";
        }
        return all + ", "
                + (cold < low.size() ? cold + " of them" : cold == 1 ? "it is" : "all")
                + " explained by the cold: referred to " + Say.plain(facts.run().referenceCelsius())
                + " °C the tyres were not under the warning share of their placard. That blames no sensor.";
    }

    /** Failed sensors but those at a place that is suspected itself, and those of the same age still on the vehicle. */
    private String failures() {
        List<StoredRow> lives = facts.rows("sensor-lives");
        Set<String> suspectPlaces = lives.stream()
                .filter(l -> l.is("life_end", "PLACE_SUSPECTED"))
                .map(StoredRow::place)
                .collect(Collectors.toSet());
        List<StoredRow> failed = lives.stream()
                .filter(l -> l.is("life_end", "FAILED") && !suspectPlaces.contains(l.place()))
                .toList();
        if (failed.isEmpty()) {
            return "";
        }
        String which = failed.stream()
                .map(l -> l.place() + " by " + Say.day(l.day("first_known_failed"))
                        + (l.has("cause") && !l.is("cause", "UNKNOWN") ? " (" + l.words("cause") + ")" : ""))
                .collect(Collectors.joining(", "));
        Set<String> ages = failed.stream()
                .map(l -> l.text("fitted_on"))
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
        List<StoredRow> mates = lives.stream()
                .filter(l -> l.is("life_end", "IN_SERVICE") && l.has("fitted_on"))
                .filter(l -> ages.contains(l.text("fitted_on")))
                .toList();
        return Say.count(failed.size(), "sensor") + " found failed: " + which + "." + mates(mates);
    }

    private String mates(List<StoredRow> mates) {
        if (mates.isEmpty()) {
            return "";
        }
        LocalDate since = mates.get(0).day("fitted_on");
        String age = Say.figure(ChronoUnit.DAYS.between(since, facts.run().asOf()) / DAYS_PER_YEAR, 1);
        return " Of the same age, and so next in line: "
                + Say.and(mates.stream().map(InShort::mate).toList()) + ", " + age + " years old.";
    }

    private static String mate(StoredRow l) {
        return l.place() + (l.has("first_weak") ? " (battery low since " + l.text("first_weak") + ")" : "");
    }

    /** Readers that are slow in themselves, since their tries say little of a sensor. */
    private String readers() {
        List<String> used = facts.visits().stream()
                .map(v -> v.header().readerId())
                .filter(Objects::nonNull)
                .toList();
        List<String> slow = facts.run().readers().stream()
                .filter(r -> r.flag("slow") && r.has("reader_id") && used.contains(r.text("reader_id")))
                .map(r -> r.text("reader_id"))
                .toList();
        if (slow.isEmpty()) {
            return "";
        }
        long with = used.stream().filter(slow::contains).count();
        boolean one = slow.size() == 1;
        return Say.first((one ? "reader " : "readers ") + Say.and(slow)) + (one ? " wakes" : " wake")
                + " every sensor slowly (" + chance(slow) + " at each try) and read this vehicle at " + with + " of "
                + Say.count(used.size(), "visit")
                + ": several tries under it say little of a sensor, and are weighed so.";
    }

    private String chance(List<String> slow) {
        return facts.run().readers().stream()
                .filter(r -> r.has("reader_id") && slow.contains(r.text("reader_id")))
                .map(r -> Say.chance(r.number("chance")))
                .collect(Collectors.joining(", "));
    }
}
