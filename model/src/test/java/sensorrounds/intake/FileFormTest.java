package sensorrounds.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.visit.LoggedWheel;

/** What the rows of a file say together about its form. */
class FileFormTest {
    /**
     * ECMA-376 part 1, 18.17.4.1, from memory: 3687.4207639 of the 1900 system and 2225.4207639 of the 1904 system are 3
     * February 1910, 10:05:54. That the two are 1462 days apart is worked out by hand: four years, a leap day, and the 29
     * February 1900 that never was.
     */
    @ParameterizedTest
    @CsvSource({
        "serial1900, 3687.4207639, 1910-02-03T10:05:54",
        "serial1904, 2225.4207639, 1910-02-03T10:05:54",
        "serial1900, 45678, 2025-01-21T00:00",
        "serial1904, 44216, 2025-01-21T00:00",
        "serial1900, '45678,375', 2025-01-21T09:00",
        "serial1900, 61, 1900-03-01T00:00",
    })
    void dayNumbersOfBothSystemsAreRead(String form, String text, LocalDateTime expected) {
        assertThat(DateForm.of(form).read(text)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({"60", "-1", "2025-01-21", "1e9", "''"})
    void whatIsNoDayNumberIsNoDate(String text) {
        assertThat(DateForm.of("serial1900").read(text)).isNull();
    }

    @Test
    void aRowReadFromADayNumberIsCounted() {
        Layout layout = Layouts.withDates("serial1904", null);
        FlatRecord row = FlatRecord.good().with(Field.VISITED_AT, "44216.375");

        assertThat(row.accepted(layout).visit().visitedAt()).isEqualTo(LocalDateTime.of(2025, 1, 21, 9, 0));
        assertThat(row.notes(layout)).isEqualTo(Map.of(Note.DATE_SERIAL, 1L));
    }

    @Test
    void aDayNumberInAnIsoFileIsRefusedWithTheWayOut() {
        assertThat(FlatRecord.good().with(Field.VISITED_AT, "45678").rejected().expected())
                .contains("serial1900 or serial1904");
    }

    private static FileCount read(Layout layout, Field field, String... texts) {
        VisitParser parser = new VisitParser(layout);
        for (String text : texts) {
            parser.row(FlatRecord.good().with(field, text));
        }
        return new FileCount(
                "a.csv",
                texts.length,
                0,
                0,
                "csv",
                null,
                parser.counts().asMap(),
                parser.counts().evidence());
    }

    @Test
    void aDateRefusedForItsOrderCastsDoubtOnTheOthers() {
        Layout dayFirst = Layouts.withDates("dd/MM/yyyy", null);

        FileCount file = read(dayFirst, Field.VISITED_AT, "03/04/2025", "07/22/2025", "05/05/2025");

        assertThat(FileDoubt.of(file)).singleElement().satisfies(d -> {
            assertThat(d.kind()).isEqualTo(FileDoubt.Kind.DATE_ORDER);
            assertThat(d.what())
                    .isEqualTo("1 dates can only be read with day and month exchanged, 0 only as the layout says, and 1"
                            + " either way");
            assertThat(d.remedy()).contains("exchange day and month");
        });
        assertThat(FlatRecord.good()
                        .with(Field.VISITED_AT, "07/22/2025")
                        .rejected(dayFirst)
                        .expected())
                .contains("with day and month exchanged it would be one");
    }

    @Test
    void aFileThatMixesBothOrdersMustBeMendedAtItsSource() {
        FileCount file = read(Layouts.withDates("dd/MM/yyyy", null), Field.VISITED_AT, "22/07/2025", "07/22/2025");

        assertThat(FileDoubt.of(file))
                .extracting(FileDoubt::remedy)
                .containsExactly("the file mixes two orders of day and month: split it, or mend it at its source");
    }

    @Test
    void datesThatNeverShowTheirOrderAreDoubtedOnceThereAreMany() {
        Layout dayFirst = Layouts.withDates("dd/MM/yyyy", null);
        String[] either = {
            "01/02/2025",
            "02/03/2025",
            "03/04/2025",
            "04/05/2025",
            "05/06/2025",
            "06/07/2025",
            "07/08/2025",
            "08/09/2025",
            "09/10/2025",
            "10/11/2025",
            "11/12/2025",
            "12/11/2025"
        };
        String[] oneProof = either.clone();
        oneProof[0] = "31/01/2025";

        assertThat(FileDoubt.of(read(dayFirst, Field.VISITED_AT, either)))
                .extracting(FileDoubt::kind)
                .containsExactly(FileDoubt.Kind.DATE_ORDER_UNPROVEN);
        assertThat(FileDoubt.of(read(dayFirst, Field.VISITED_AT, oneProof))).isEmpty();
        assertThat(FileDoubt.of(read(dayFirst, Field.VISITED_AT, "01/02/2025"))).isEmpty();
    }

    /** (10/16)^8 = 2.3 % of random IDs of eight digits have no letter. */
    @Test
    void aFileOfIdsWithoutLettersMayBeDecimal() {
        String[] digits = {"12345678", "23456789", "34567890", "45678901", "56789012"};
        String[] oneLetter = {"12345678", "23456789", "34567890", "45678901", "5678901A"};

        assertThat(FileDoubt.of(read(Layout.CANONICAL, Field.SENSOR_ID, digits)))
                .extracting(FileDoubt::kind)
                .containsExactly(FileDoubt.Kind.ID_BASE);
        assertThat(FileDoubt.of(read(Layout.CANONICAL, Field.SENSOR_ID, oneLetter)))
                .isEmpty();
    }

    @Test
    void figuresForNoTemperatureAreMissingAndCounted() {
        Layout layout = new Layout(
                "yard",
                List.of("*.csv"),
                ',',
                "UTF-8",
                '.',
                null,
                null,
                null,
                Map.of(),
                Set.of(),
                Map.of(),
                Map.of(),
                IdForm.CANONICAL,
                Set.of(-40.0, 255.0));
        FlatRecord row = FlatRecord.good().with(Field.TEMPERATURE, "255.0").with(Field.PRESSURE, "230");

        assertThat(row.accepted(layout).wheel().temperatureCelsius()).isNull();
        assertThat(row.accepted(layout).wheel().pressureKpa()).isEqualTo(230);
        assertThat(row.notes(layout)).isEqualTo(Map.of(Note.TEMPERATURE_NO_VALUE, 1L));
        assertThat(row.rejected().rule()).isEqualTo(RejectionRule.OUT_OF_RANGE);
    }

    @Test
    void aReplacementThatNamesNoNewSensorIsCounted() {
        FlatRecord row = FlatRecord.good().with(Field.WORK, "sensor-replaced");

        assertThat(row.notes(Layout.CANONICAL)).isEqualTo(Map.of(Note.REPLACED_WITHOUT_NEW_ID, 1L));
        assertThat(row.with(Field.NEW_SENSOR_ID, "0A1B2C3E").notes(Layout.CANONICAL))
                .isEmpty();
        // "replaced" alone may mean the valve core: it needs a layout that says what.
        assertThat(FlatRecord.good().with(Field.WORK, "replaced").rejected().rule())
                .isEqualTo(RejectionRule.UNKNOWN_WORD);
    }

    @Test
    void oneKeyForTwoVisitsPutsBothAside() {
        LoggedWheel march = FlatRecord.good().accepted();
        LoggedWheel weekLater = FlatRecord.good()
                .with(Field.VISITED_AT, "2025-03-11T10:00")
                .at("b", 2)
                .accepted();
        LoggedWheel may = FlatRecord.good()
                .with(Field.VISITED_AT, "2025-05-20")
                .at("c", 2)
                .accepted();

        assertThat(VisitResolver.resolve(List.of(march, weekLater)).rejections())
                .isEmpty();
        ResolvedVisits resolved = VisitResolver.resolve(List.of(march, may));
        assertThat(resolved.visits()).isEmpty();
        assertThat(resolved.rejections())
                .extracting(Rejection::rule)
                .containsExactly(RejectionRule.VISIT_KEY_REUSED, RejectionRule.VISIT_KEY_REUSED);
    }
}
