package sensorrounds.proposal;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import sensorrounds.intake.Field;
import sensorrounds.intake.FieldTrial;
import sensorrounds.intake.IdForm;
import sensorrounds.intake.RejectionRule;

/**
 * How the file writes sensor IDs. One ID cannot tell: of eight hexadecimal digits one in forty-three has no letter,
 * (10/16)^8. So the IDs of the file are counted together.
 *
 * @param base hex, decimal or null when it is open
 * @param digits digits of every ID where some have lost leading zeros; null when they need no padding
 */
record IdVote(String base, Integer digits, List<Decision> decisions) {
    /** All of so many hexadecimal IDs lack letters once in 10^8 files. */
    private static final int IDS_THAT_PROVE = 5;

    static IdVote of(List<Column> columns) {
        TreeSet<String> ids = new TreeSet<>();
        columns.forEach(c -> ids.addAll(c.counts().keySet()));
        List<Decision> decisions = new ArrayList<>();
        FieldTrial hex = Trials.ids(IdForm.CANONICAL);
        long spoiled = ids.stream()
                .filter(id -> hex.problem(Field.SENSOR_ID, id)
                        .filter(r -> r.rule() == RejectionRule.ID_AS_NUMBER)
                        .isPresent())
                .count();
        List<String> letters = ids.stream().filter(IdVote::hasLetter).toList();
        List<String> figures = ids.stream().filter(id -> id.matches("\\d+")).toList();
        long tooLong = figures.stream().filter(id -> id.length() > 8).count();
        String counts = "different IDs with a letter A to F: " + letters.size() + ", of digits only: " + figures.size()
                + (tooLong > 0 ? ", of them longer than 8: " + tooLong : "");
        String base = "hex";
        if (letters.isEmpty() && !figures.isEmpty()) {
            base = tooLong > 0 || figures.size() >= IDS_THAT_PROVE ? "decimal" : null;
        }
        String example = letters.isEmpty() ? figures.stream().findFirst().orElse(null) : letters.get(0);
        if (base == null) {
            decisions.add(Decision.open(
                    "idBase", figures.size(), counts, example, "does the reader write hexadecimal or decimal IDs?"));
        } else if (base.equals("hex")) {
            decisions.add(Decision.sure("idBase", base, letters.size(), tooLong, counts, example));
        } else {
            Decision decimal = Decision.sure("idBase", base, figures.size(), 0, counts, example);
            decisions.add(
                    tooLong > 0
                            ? decimal
                            : decimal.asking("make sure on the reader: short decimal IDs look like hexadecimal ones"));
        }
        if (spoiled > 0) {
            decisions.add(new Decision(
                    "idBase as text",
                    "nothing to propose",
                    0,
                    spoiled,
                    "different IDs that a spreadsheet turned into numbers",
                    ids.stream()
                            .filter(id -> id.matches(".*[.,+].*"))
                            .findFirst()
                            .orElse(null),
                    "take these IDs from their source again: they go to quarantine"));
        }
        Integer digits = "hex".equals(base) ? digits(letters, figures, decisions) : null;
        return new IdVote(base, digits, decisions);
    }

    private static Integer digits(List<String> letters, List<String> figures, List<Decision> decisions) {
        long full = letters.stream().filter(id -> id.length() == 8).count();
        long shorter = figures.stream().filter(id -> id.length() < 8).count();
        if (shorter == 0 || full < IDS_THAT_PROVE || full < letters.size()) {
            return null;
        }
        decisions.add(Decision.sure(
                        "idDigits",
                        "8",
                        full,
                        0,
                        "different IDs with a letter, all of 8 digits; " + shorter + " of digits only are shorter",
                        figures.stream()
                                .filter(id -> id.length() < 8)
                                .findFirst()
                                .orElse(null))
                .asking("a spreadsheet has dropped leading zeros: make sure that every ID has 8 digits"));
        return 8;
    }

    private static boolean hasLetter(String id) {
        return id.matches("(0[xX])?[0-9A-Fa-f]{6,8}") && id.matches(".*[A-Fa-f].*");
    }
}
