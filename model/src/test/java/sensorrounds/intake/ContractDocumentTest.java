package sensorrounds.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import sensorrounds.visit.FaultCode;
import sensorrounds.visit.WheelPosition;

/**
 * The field tables of docs/visit-log.md against the parser, field by field: names, fields that must be there, words, units and
 * ranges. What the document does not say, an outsider cannot know.
 */
class ContractDocumentTest {
    private static final String DOCUMENT = read();
    private static final Map<Field, Row> ROWS = rows();

    /** One row of a field table. */
    private record Row(boolean required, String type, String meaning) {
        List<String> quoted() {
            return quotedIn(type);
        }
    }

    private static String read() {
        try {
            return Files.readString(Path.of("../docs/visit-log.md"));
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static List<String> quotedIn(String text) {
        return Pattern.compile("`([^`]+)`")
                .matcher(text)
                .results()
                .map(m -> m.group(1))
                .toList();
    }

    private static Map<Field, Row> rows() {
        String tables = DOCUMENT.substring(
                DOCUMENT.indexOf("## Fields of the visit"), DOCUMENT.indexOf("## What becomes of a row"));
        Map<Field, Row> rows = new LinkedHashMap<>();
        for (String line : tables.lines().filter(l -> l.startsWith("| `")).toList()) {
            String[] cells = line.substring(2).split(" \\| ", 3);
            List<String> names = quotedIn(cells[0]);
            Field first = Field.of(names.get(0)).orElseThrow();
            Field last = Field.of(names.get(names.size() - 1)).orElseThrow();
            for (int i = first.ordinal(); i <= last.ordinal(); i++) {
                rows.put(Field.values()[i], new Row(cells[0].contains("*"), cells[1], cells[2]));
            }
        }
        return rows;
    }

    private static FlatRecord with(Field field, String text) {
        return FlatRecord.good().with(field, text);
    }

    private static boolean accepts(Field field, String text) {
        return new VisitParser(Layout.CANONICAL).row(with(field, text)) instanceof ParsedRow.Accepted;
    }

    private static RejectionRule refusal(Field field, String text) {
        return with(field, text).rejected().rule();
    }

    @Test
    void everyFieldHasARowAndNoOtherHas() {
        assertThat(ROWS.keySet()).containsExactly(Field.values());
    }

    @TestFactory
    Stream<DynamicTest> theStarMarksWhatMustBeThere() {
        return Stream.of(Field.values())
                .map(field -> DynamicTest.dynamicTest(field.key(), () -> {
                    if (ROWS.get(field).required()) {
                        assertThat(refusal(field, " ")).isEqualTo(RejectionRule.MISSING_VALUE);
                    } else {
                        assertThat(accepts(field, " ")).isTrue();
                    }
                }));
    }

    /** Words as quoted in the column of types are those of the parser, no more and no fewer. */
    @TestFactory
    Stream<DynamicTest> theWordsAreThoseOfTheParser() {
        return Stream.of(Field.values())
                .filter(f -> ROWS.get(f).type().startsWith("`"))
                .map(field -> DynamicTest.dynamicTest(field.key(), () -> {
                    String expected = with(field, "no such word").rejected().expected();

                    assertThat(expected).startsWith("one of ");
                    assertThat(ROWS.get(field).quoted())
                            .extracting(w -> w.toLowerCase(Locale.ROOT))
                            .containsExactlyInAnyOrder(
                                    expected.substring("one of ".length()).split(", "));
                    assertThat(ROWS.get(field).quoted()).allMatch(word -> accepts(field, word));
                }));
    }

    @Test
    void everyFieldOfWordsIsWrittenAsOne() {
        for (Field field : Field.values()) {
            boolean ofWords =
                    !accepts(field, "no such word") && refusal(field, "no such word") == RejectionRule.UNKNOWN_WORD;
            assertThat(ROWS.get(field).type().startsWith("`")).as(field.key()).isEqualTo(ofWords);
        }
    }

    /** Both ends of a range are read and what lies beyond is not; without an upper end a large number is read. */
    @TestFactory
    Stream<DynamicTest> theRangesAreThoseOfTheParser() {
        return Stream.of(Field.values())
                .filter(f -> ROWS.get(f).type().contains("number"))
                .map(field -> DynamicTest.dynamicTest(field.key(), () -> {
                    String type = ROWS.get(field).type().replace('−', '-');
                    Matcher range =
                            Pattern.compile("(-?\\d+) (?:to (-?\\d+)|or more)").matcher(type);
                    assertThat(range.find()).as(type).isTrue();
                    long low = Long.parseLong(range.group(1));

                    assertThat(accepts(field, Long.toString(low))).isTrue();
                    assertThat(accepts(field, Long.toString(low - 1))).isFalse();
                    if (range.group(2) == null) {
                        assertThat(accepts(field, "1000000000")).isTrue();
                    } else {
                        long high = Long.parseLong(range.group(2));
                        assertThat(accepts(field, Long.toString(high))).isTrue();
                        assertThat(refusal(field, Long.toString(high + 1))).isEqualTo(RejectionRule.OUT_OF_RANGE);
                    }
                    assertThat(accepts(field, "1.5")).isEqualTo(!type.startsWith("whole") && low < 2);
                    assertThat(accepts(field, "some")).isFalse();
                }));
    }

    /** Plain text is taken as it is, whatever it says. */
    @Test
    void textIsTakenAsItIs() {
        List<Field> texts = new ArrayList<>();
        for (Field field : Field.values()) {
            if (ROWS.get(field).type().equals("text")) {
                texts.add(field);
                assertThat(accepts(field, "Some text, 5 of it; ÄÖ"))
                        .as(field.key())
                        .isTrue();
            }
        }
        assertThat(texts).contains(Field.NOTES, Field.VIN, Field.PART).hasSizeGreaterThan(8);
    }

    @Test
    void everyBatteryReportOfTheDocumentIsReadWithinItsRange() {
        Row row = ROWS.get(Field.BATTERY);
        Matcher figures =
                Pattern.compile("`([0-9.]+)( ?[^`]+)` \\((\\d+) to (\\d+)\\)").matcher(row.type());
        List<MatchResult> found = figures.results().toList();

        assertThat(row.quoted()).hasSize(5).allMatch(text -> accepts(Field.BATTERY, text));
        assertThat(found).hasSize(3).allSatisfy(m -> {
            assertThat(accepts(Field.BATTERY, m.group(3) + m.group(2))).isTrue();
            assertThat(accepts(Field.BATTERY, m.group(4) + m.group(2))).isTrue();
            assertThat(accepts(Field.BATTERY, (Integer.parseInt(m.group(4)) + 1) + m.group(2)))
                    .isFalse();
        });
        assertThat(refusal(Field.BATTERY, "35")).isEqualTo(RejectionRule.BAD_BATTERY);
    }

    @Test
    void positionsIdsDatesAndCodesAreThoseOfTheDocument() {
        List<String> places = quotedIn(ROWS.get(Field.POSITION).meaning()).stream()
                .filter(p -> p.length() > 1)
                .toList();
        assertThat(places).containsExactly("1L", "2RI", "2RO", "spare").allMatch(p -> accepts(Field.POSITION, p));
        assertThat(accepts(Field.POSITION, WheelPosition.MAX_AXLE + "L")).isTrue();
        assertThat(ROWS.get(Field.POSITION).meaning()).contains("1 to " + WheelPosition.MAX_AXLE);

        assertThat(ROWS.get(Field.SENSOR_ID).type()).contains("6 to 8 hexadecimal digits");
        assertThat(Stream.of("ABCDE1", "ABCDEF12", "0xabcdef")).allMatch(id -> accepts(Field.SENSOR_ID, id));
        assertThat(Stream.of("ABCD1", "ABCDEF123", "00000000", "FFFFFF")).noneMatch(id -> accepts(Field.SENSOR_ID, id));

        assertThat(ROWS.get(Field.VISITED_AT).quoted()).hasSize(2).allMatch(t -> accepts(Field.VISITED_AT, t));
        assertThat(Stream.of("1990-01-01", "2099-12-31", "2025-11-18T08:20:59", "2025-11-18T08:20+01:00"))
                .allMatch(t -> accepts(Field.VISITED_AT, t));
        assertThat(Stream.of("1989-12-31", "2100-01-01", "18.11.2025", "2025-11-18 08:20"))
                .noneMatch(t -> accepts(Field.VISITED_AT, t));

        List<String> codes = quotedIn(ROWS.get(Field.FAULT_CODES).meaning());
        List<String> states =
                Stream.of(FaultCode.State.values()).map(Words::word).toList();
        assertThat(codes.subList(0, 2)).allMatch(c -> accepts(Field.FAULT_CODES, c));
        assertThat(codes.subList(2, codes.size()))
                .containsExactlyElementsOf(states)
                .allMatch(s -> accepts(Field.FAULT_CODES, "C0750/" + s));

        String week = quotedIn(ROWS.get(Field.TYRE_DATE).meaning()).get(0);
        assertThat(with(Field.TYRE_DATE, week).accepted().wheel().tyreDate()).isEqualTo("2019-06-03");
        assertThat(quotedIn(ROWS.get(Field.CONTRACT_VERSION).type())).containsExactly(ContractVersion.text());
    }

    @Test
    void everyRuleOfDuplicatesAndQuarantineIsExplained() {
        assertThat(Stream.of(RejectionRule.values())).allMatch(r -> DOCUMENT.contains("| `" + r.name() + "` |"));
        // The three rules of duplicates stand there as a numbered list, in the order in which they are applied.
        assertThat(Duplicate.Rule.values()).hasSize(3);
        assertThat(DOCUMENT).contains("1. The highest `revision`", "2. The same content", "3. Other content");
    }

    @Test
    void whatIsSaidOfNumbersHolds() {
        assertThat(accepts(Field.PRESSURE, "2.4e2")).isTrue();
        assertThat(accepts(Field.TEMPERATURE, "-3.5")).isTrue();
        assertThat(refusal(Field.ODOMETER, "12,345")).isEqualTo(RejectionRule.BAD_NUMBER);
        assertThat(refusal(Field.ODOMETER, "12 345")).isEqualTo(RejectionRule.BAD_NUMBER);
    }
}
