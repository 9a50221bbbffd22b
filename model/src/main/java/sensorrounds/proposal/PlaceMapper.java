package sensorrounds.proposal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import sensorrounds.visit.Side;
import sensorrounds.visit.WheelPosition;

/** The words for places of one file → codes. A word that two readings of the file claim for two places stays a gap. */
final class PlaceMapper {
    private final Side drivingSide;
    private final Map<String, String> places = new LinkedHashMap<>();
    private final List<Decision> decisions = new ArrayList<>();
    private String side;

    /** @param drivingSide side of the road as the user gave it; null when he did not */
    PlaceMapper(Side drivingSide) {
        this.drivingSide = drivingSide;
    }

    /** Word in the file → code, nearside or offside place, or a gap. */
    Map<String, String> places() {
        return places;
    }

    List<Decision> decisions() {
        return decisions;
    }

    /** Entry drivingSide; null when no word needs it. */
    String side() {
        return side;
    }

    /** @param visits column of the visit's key; null when there is none */
    void map(Column column, Column visits) {
        Map<String, Integer> foreign = new LinkedHashMap<>(column.counts());
        foreign.keySet().removeIf(w -> WheelPosition.parse(w).isPresent());
        List<String> words =
                foreign.keySet().stream().filter(w -> !PositionWords.isSpare(w)).toList();
        List<PositionWords> schemes = PositionWords.knowingAll(words);
        if (schemes.isEmpty()) {
            schemes = best(words, foreign);
        }
        for (Map.Entry<String, Integer> entry : foreign.entrySet()) {
            String word = entry.getKey();
            if (PositionWords.isSpare(word)) {
                sure(word, "spare", entry.getValue(), "rows with a word for the spare wheel");
            } else {
                place(word, entry.getValue(), schemes);
            }
        }
        drivingSide(foreign, schemes);
        if (visits != null) {
            twoWordsForOnePlace(column, visits);
        }
    }

    /** The scheme that knows most rows, when no other knows as many. */
    private static List<PositionWords> best(List<String> words, Map<String, Integer> rows) {
        List<PositionWords> best = new ArrayList<>();
        int most = 0;
        for (PositionWords scheme : PositionWords.schemes()) {
            int known = words.stream()
                    .filter(w -> !scheme.places(w).isEmpty())
                    .mapToInt(rows::get)
                    .sum();
            if (known > most) {
                best.clear();
            }
            if (known > 0 && known >= most) {
                most = known;
                best.add(scheme);
            }
        }
        return best;
    }

    private void place(String word, int rows, List<PositionWords> schemes) {
        Map<String, String> readings = new LinkedHashMap<>();
        for (PositionWords scheme : schemes) {
            for (String place : scheme.places(word)) {
                readings.merge(place, scheme.name(), (a, b) -> a + ", " + b);
            }
        }
        if (readings.size() == 1) {
            Map.Entry<String, String> only = readings.entrySet().iterator().next();
            sure(word, only.getKey(), rows, "rows with this word; " + only.getValue());
            return;
        }
        places.put(word, LayoutProposal.GAP);
        String question = readings.isEmpty()
                ? word.matches("[1-9]")
                        ? "figures for places: clockwise from front left (1L, 1R, 2R, 2L), row by row (1L, 1R, 2L, 2R), or"
                                + " another order?"
                        : "which place is it?"
                : readings.entrySet().stream()
                        .map(e -> e.getKey() + " (" + e.getValue() + ")")
                        .collect(Collectors.joining(" or ", "", "?"));
        decisions.add(Decision.open(
                "words.position." + word,
                rows,
                readings.isEmpty() ? "rows with a word that no scheme knows" : "rows with a word that has two readings",
                word,
                question));
    }

    private void sure(String word, String place, int rows, String basis) {
        places.put(word, place);
        decisions.add(Decision.sure("words.position." + word, place, rows, 0, basis, null));
    }

    private void drivingSide(Map<String, Integer> rows, List<PositionWords> schemes) {
        boolean needed = places.values().stream().anyMatch(p -> p.contains("side"));
        if (!needed) {
            return;
        }
        int count = rows.entrySet().stream()
                .filter(e -> places.get(e.getKey()).contains("side"))
                .mapToInt(Map.Entry::getValue)
                .sum();
        if (drivingSide == null) {
            side = LayoutProposal.GAP;
            decisions.add(Decision.open(
                    "drivingSide",
                    count,
                    "rows with nearside or offside (" + schemes.get(0).name() + ")",
                    null,
                    "left or right: on which side of the road do these vehicles drive? Give --driving-side"));
        } else {
            side = drivingSide == Side.LEFT ? "left" : "right";
            decisions.add(Decision.sure(
                    "drivingSide", side, count, 0, "given by the user; rows with nearside or offside", null));
        }
    }

    /** Two words of one visit at one place: one of the two must mean another. */
    private void twoWordsForOnePlace(Column column, Column visits) {
        Map<String, Map<String, Set<String>>> byVisit = new HashMap<>();
        for (int row = 0; row < column.rowCount(); row++) {
            String word = column.text(row);
            String place = places.getOrDefault(word, word);
            if (!word.isEmpty() && !place.equals(LayoutProposal.GAP)) {
                byVisit.computeIfAbsent(visits.text(row), v -> new HashMap<>())
                        .computeIfAbsent(place, p -> new TreeSet<>())
                        .add(word);
            }
        }
        Map<Set<String>, Integer> clashes = new LinkedHashMap<>();
        byVisit.values()
                .forEach(visit -> visit.values().stream()
                        .filter(words -> words.size() > 1)
                        .forEach(words -> clashes.merge(words, 1, Integer::sum)));
        clashes.forEach((words, count) -> {
            Set<String> foreign = new LinkedHashSet<>(words);
            foreign.retainAll(new HashSet<>(places.keySet()));
            foreign.forEach(w -> places.put(w, LayoutProposal.GAP));
            decisions.removeIf(d -> foreign.stream().anyMatch(w -> d.entry().equals("words.position." + w)));
            decisions.add(Decision.open(
                    "words.position." + String.join(", ", words),
                    count,
                    "visits in which these words stand for one place",
                    null,
                    "which place is each?"));
        });
    }
}
