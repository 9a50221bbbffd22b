package sensorrounds.proposal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sensorrounds.visit.Side;

/** Small files, each with one thing to decide; the rest is canonical. */
class LayoutProposerTest {
    private static LayoutProposal propose(String header, String... rows) {
        return propose(null, header, rows);
    }

    private static LayoutProposal propose(Side side, String header, String... rows) {
        List<List<String>> cut = new ArrayList<>();
        for (String row : rows) {
            cut.add(Arrays.asList(row.split(";", -1)));
        }
        return LayoutProposer.propose(new Sample(List.of(header.split(";")), cut, true), side);
    }

    /** One column under trial beside the keys, one row per text. */
    private static LayoutProposal column(String header, String... texts) {
        String[] rows = new String[texts.length];
        for (int i = 0; i < texts.length; i++) {
            rows[i] = "V" + i + ";2025-03-04;CAR" + i + ";1L;ok;" + texts[i];
        }
        return propose("visitId;visitedAt;vehicleId;position;read;" + header, rows);
    }

    private static LayoutProposal dates(String... texts) {
        String[] rows = new String[texts.length];
        for (int i = 0; i < texts.length; i++) {
            rows[i] = "V" + i + ";" + texts[i] + ";CAR" + i + ";1L;ok";
        }
        return propose("visitId;Date;vehicleId;position;read", rows);
    }

    private static Decision decision(LayoutProposal proposal, String entry) {
        return proposal.decisions().stream()
                .filter(d -> d.entry().equals(entry))
                .findFirst()
                .orElseThrow(() -> new AssertionError(entry + " is not among " + proposal.decisions()));
    }

    @Test
    void aDayAboveTwelveProvesTheOrderAndIsCounted() {
        LayoutProposal proposal = dates("04/03/2025", "25/03/2025", "26/03/2025", "05/03/2025");

        Decision date = decision(proposal, "dateFormat");
        assertThat(proposal.entries()).containsEntry("dateFormat", "dd/MM/yyyy");
        assertThat(date.inFavour()).isEqualTo(2);
        assertThat(date.against()).isZero();
        assertThat(date.basis()).contains("2 fit both orders");
        assertThat(date.example()).isEqualTo("25/03/2025");
    }

    @Test
    void aMonthBeforeTheDayIsFoundTheSameWay() {
        assertThat(dates("3/25/2025", "3/4/2025").entries()).containsEntry("dateFormat", "M/d/yyyy");
    }

    @Test
    void datesThatFitBothOrdersStayOpenWithBothReadings() {
        LayoutProposal proposal = dates("04/03/2025", "05/03/2025", "01/04/2025");

        assertThat(proposal.entries()).containsEntry("dateFormat", LayoutProposal.GAP);
        Decision date = decision(proposal, "dateFormat");
        assertThat(date.isOpen()).isTrue();
        assertThat(date.question()).contains("dd/MM/yyyy or MM/dd/yyyy");
        // As days of March and April the file runs forward in time; the other way round it falls once.
        assertThat(date.basis())
                .contains("0 only read as dd/MM/yyyy, 0 only as MM/dd/yyyy, 3 as both")
                .contains("falls 0 times in the first order, 1 times in the second");
        assertThat(proposal.trial()).isNull();
    }

    @Test
    void aFileThatMixesBothOrdersStaysOpen() {
        LayoutProposal proposal = dates("25/03/2025", "03/26/2025", "26/03/2025");

        assertThat(decision(proposal, "dateFormat").basis())
                .contains("2 only read as dd/MM/yyyy, 1 only as MM/dd/yyyy");
        assertThat(proposal.open()).isNotEmpty();
    }

    /** 45678 is 21 January 2025 in the 1900 system and 22 January 2029 in the 1904 system (ECMA-376 part 1, 18.17.4.1). */
    @Test
    void dayNumbersOfASpreadsheetNeedTheUserToNameTheSystem() {
        assertThat(decision(dates("45678", "45679.5"), "dateFormat").question())
                .contains("serial1900 (2025-01-21)")
                .contains("serial1904 (2029-01-22)");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Pressure | 32.5 33 29.8 41 | psi",
                "Pressure | 230 225.5 410 800 | kPa",
                "Pressure | 2.3 2.4 3.1 8.5 | bar",
                "Pressure psi | 110 115 120 121 | psi",
                "Pressure kPa | 110 240 250 230 | ?",
                "Pressure | 110 120 145 150 | ?",
                "Pressure kg/cm2 | 2.3 2.4 2.2 2.3 | ?"
            })
    void pressureUnitsAreToldByHeaderAndRangeOrNotAtAll(String header, String texts, String unit) {
        assertThat(column(header, texts.split(" ")).constants()).containsEntry("pressureUnit", unit);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Outside C | 12 -3 25 | C",
                "Outside F | 50 61 72 | F",
                "Outside C | 71 75 80 68 | ?",
                "Outside temperature | 50 50 50 | ?",
                "Outside temperature | -3 2 4 18 | C"
            })
    void aTemperatureOfFiftyIsLegalInBothUnits(String header, String texts, String unit) {
        assertThat(column(header, texts.split(" ")).constants()).containsEntry("temperatureUnit", unit);
    }

    @Test
    void anOdometerWithoutUnitIsNeverGuessed() {
        assertThat(column("Odometer", "12000", "45000").constants()).containsEntry("odometerUnit", "?");
        assertThat(column("Miles", "12000", "45000").constants()).containsEntry("odometerUnit", "mi");
    }

    @Test
    void aDecimalCommaIsCountedAndThousandsShowNothing() {
        LayoutProposal comma = column("Pressure bar", "2,3", "2,45", "2");
        LayoutProposal thousands = column("km", "12,345", "101,222");

        assertThat(comma.entries()).containsEntry("decimalMark", ",");
        assertThat(decision(comma, "decimalMark").inFavour()).isEqualTo(2);
        assertThat(decision(thousands, "decimalMark").inFavour()).isZero();
    }

    @Test
    void bothMarksInOneFileStayOpen() {
        assertThat(column("Pressure bar", "2,3", "2.4").entries()).containsEntry("decimalMark", "?");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "NSF OSF NSR OSR | 1 nearside, 1 offside, 2 nearside, 2 offside",
                "N/S/F O/S/R | 1 nearside, 2 offside",
                "LF RF LR RR | 1L, 1R, 2L, 2R",
                "FL FR RL RR | 1L, 1R, 2L, 2R",
                "VL VR HL HRA HRI | 1L, 1R, 2L, 2RO, 2RI",
                "AVG AVD ARG ARD | 1L, 1R, 2L, 2R",
                "AS AD PS PD | 1L, 1R, 2L, 2R",
                "DI DD TI TD | 1L, 1R, 2L, 2R",
                "LV RV LA RA | 1L, 1R, 2L, 2R",
                "VF HF VB HB | 1L, 1R, 2L, 2R"
            })
    void wordsForPlacesAreReadByTheOneSchemeThatKnowsThemAll(String words, String places) {
        Map<String, String> mapped = column("Wheel", words.split(" ")).words().get("position");
        // The fixture has a canonical column too; the foreign one is what is looked at.
        assertThat(mapped).isNull();
        LayoutProposal proposal = wheels(words.split(" "));

        assertThat(String.join(", ", proposal.words().get("position").values())).isEqualTo(places);
    }

    private static LayoutProposal wheels(String... words) {
        return wheels(null, words);
    }

    private static LayoutProposal wheels(Side side, String... words) {
        String[] rows = new String[words.length];
        for (int i = 0; i < words.length; i++) {
            rows[i] = "V" + i + ";2025-03-04;CAR" + i + ";" + words[i] + ";ok";
        }
        return propose(side, "visitId;visitedAt;vehicleId;Wheel;read", rows);
    }

    /** Fact 116 of the trade: AD is anteriore destro, or avant or arrière droit; DD is delantero or derrière. */
    @ParameterizedTest
    @CsvSource({"AD", "DD"})
    void aWordThatTwoLanguagesClaimIsRefused(String word) {
        LayoutProposal proposal = wheels(word, word);

        assertThat(proposal.words().get("position")).containsEntry(word, "?");
        assertThat(decision(proposal, "words.position." + word).question())
                .contains("1R")
                .contains("2R");
    }

    @Test
    void wordsThatStandForOnePlaceInOneVisitAreRefused() {
        LayoutProposal proposal = propose(
                "visitId;visitedAt;vehicleId;Wheel;read",
                "V1;2025-03-04;CAR1;LR;ok",
                "V1;2025-03-04;CAR1;RL;ok",
                "V1;2025-03-04;CAR1;LF;ok");

        assertThat(proposal.words().get("position"))
                .containsEntry("LR", "?")
                .containsEntry("RL", "?")
                .containsEntry("LF", "1L");
        assertThat(decision(proposal, "words.position.LR, RL").inFavour()).isEqualTo(1);
    }

    @Test
    void figuresForPlacesAreRefused() {
        assertThat(decision(wheels("1", "2", "3", "4"), "words.position.3").question())
                .contains("clockwise");
    }

    @Test
    void nearsideNeedsTheSideOfTheRoad() {
        assertThat(wheels("NSF", "OSF").entries()).containsEntry("drivingSide", "?");
        assertThat(wheels(Side.LEFT, "NSF", "OSF").entries()).containsEntry("drivingSide", "left");
        assertThat(wheels("VL", "HR").entries()).doesNotContainKey("drivingSide");
    }

    @Test
    void theBaseOfSensorIdsIsCountedOverTheFile() {
        assertThat(column("Sensor ID", "0A1B2C3D", "12345678", "99AA00FF").entries())
                .containsEntry("idBase", "hex");
        assertThat(column("Sensor ID", "3405691582", "2271560481", "12345678").entries())
                .containsEntry("idBase", "decimal");
        assertThat(column("Sensor ID", "12345678", "23456789").entries()).containsEntry("idBase", "?");
    }

    @Test
    void shorterIdsAmongFullOnesHaveLostTheirZeros() {
        LayoutProposal proposal =
                column("Sensor ID", "0A1B2C3D", "1A1B2C3D", "2A1B2C3D", "3A1B2C3D", "4A1B2C3D", "123456");

        assertThat(proposal.idDigits()).isEqualTo(8);
        assertThat(decision(proposal, "idDigits").question()).contains("zeros");
    }

    @Test
    void bareBatteryFiguresAreAskedFor() {
        assertThat(decision(column("Battery", "35", "80", "ok"), "words.battery")
                        .inFavour())
                .isEqualTo(2);
    }

    @Test
    void wordsThatMeanDifferentThingsFromShopToShopAreAskedFor() {
        assertThat(column("Work done", "replaced", "none").words().get("work")).containsEntry("replaced", "?");
        assertThat(column("Lamp", "on", "off").words().get("warning"))
                .containsEntry("on", "?")
                .containsEntry("off", "none");
        assertThat(column("Relearn", "yes", "OBD").words().get("relearn"))
                .containsEntry("yes", "?")
                .containsEntry("OBD", "diagnostic-port");
    }

    @Test
    void figuresForNoTemperatureStandAlone() {
        LayoutProposal proposal = column("Tyre temperature C", "12", "255", "18", "255", "-40", "3");

        assertThat(proposal.noTemperature()).containsExactly(-40.0, 255.0);
    }

    @Test
    void twoColumnsThatCouldBeOneFieldAreBothAskedFor() {
        LayoutProposal proposal = propose(
                "visitId;visitedAt;vehicleId;position;read;Pos;Wheel",
                "V1;2025-03-04;CAR1;1L;ok;VL;VL",
                "V2;2025-03-04;CAR2;1L;ok;VR;HL");

        // The canonical header wins; the others are left to the user.
        assertThat(proposal.columns()).containsEntry("Pos", "?").containsEntry("Wheel", "?");
    }

    @Test
    void aColumnThatNobodyKnowsIsAGapAndItsTextsAreNotShown() {
        LayoutProposal proposal = column("Xyz", "Mary 555-1234", "Joe 555-9876");

        assertThat(proposal.columns()).containsEntry("Xyz", "?");
        assertThat(decision(proposal, "columns.Xyz").example()).isEqualTo("Aaaa 999-9999");
    }

    @Test
    void blankColumnsAndThoseOfTheOfficeAreIgnored() {
        LayoutProposal proposal = propose(
                "visitId;visitedAt;vehicleId;position;read;Customer;Spare column",
                "V1;2025-03-04;CAR1;1L;ok;M. Miller;",
                "V2;2025-03-04;CAR2;1L;ok;J. Jones;");

        assertThat(proposal.ignore()).containsExactly("Customer", "Spare column");
        assertThat(proposal.doubtful()).extracting(Decision::value).contains("Spare column");
    }

    @Test
    void aFieldThatEveryRowNeedsIsAGapWhenNoColumnHoldsIt() {
        LayoutProposal proposal =
                propose("visitId;visitedAt;vehicleId;position", "V1;2025-03-04;CAR1;1L", "V2;2025-03-04;CAR2;1R");

        assertThat(proposal.constants()).containsEntry("read", "?");
    }

    @Test
    void aFileInTheCanonicalFormNeedsNothing() {
        LayoutProposal proposal = propose(
                "visitId;visitedAt;vehicleId;position;read;battery",
                "V1;2025-03-04T10:00;CAR1;1L;ok;35%",
                "V1;2025-03-04T10:00;CAR1;1R;no-answer;");

        assertThat(proposal.open()).isEmpty();
        assertThat(proposal.columns()).isEmpty();
        assertThat(proposal.words()).isEmpty();
        assertThat(proposal.trial()).startsWith("of 2 rows of the sample 2 would be read");
    }

    @Test
    void aSampleWithoutRowsIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LayoutProposer.propose(new Sample(List.of("a"), List.of(), true), null))
                .withMessageContaining("0 rows");
    }
}
