package sensorrounds.ingest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import org.apache.parquet.example.data.Group;
import org.apache.parquet.example.data.simple.NanoTime;
import org.apache.parquet.example.data.simple.SimpleGroupFactory;
import org.apache.parquet.hadoop.ParquetFileWriter;
import org.apache.parquet.hadoop.ParquetWriter;
import org.apache.parquet.hadoop.example.ExampleParquetWriter;
import org.apache.parquet.io.api.Binary;
import org.apache.parquet.schema.MessageType;
import org.apache.parquet.schema.MessageTypeParser;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sensorrounds.intake.FileCount;
import sensorrounds.intake.Note;
import sensorrounds.intake.Rejection;
import sensorrounds.tables.LogRow;
import sensorrounds.visit.LoggedWheel;

/** Parquet logs of both shapes, with the types that writers use. The files are written by the library's own example writer. */
class ParquetLogTest {
    private static final String FLAT =
            "message log { required binary visitId (STRING); optional binary visitedAt (STRING);"
                    + " optional binary vehicleId (STRING); optional binary position (STRING); optional binary read (STRING);"
                    + " optional binary sensorId (STRING); optional double pressure; ";

    @TempDir
    private Path dir;

    private Path logs;

    @BeforeEach
    void folder() throws IOException {
        logs = Files.createDirectories(dir.resolve("visit-logs"));
    }

    @SafeVarargs
    @SuppressWarnings("varargs")
    private Path write(String name, String schema, Consumer<Group>... records) {
        return write(name, schema, Arrays.asList(records));
    }

    private Path write(String name, String schema, List<Consumer<Group>> records) {
        MessageType type = MessageTypeParser.parseMessageType(schema);
        Path file = logs.resolve(name);
        try (ParquetWriter<Group> writer = ExampleParquetWriter.builder(new org.apache.hadoop.fs.Path(file.toUri()))
                .withType(type)
                .withConf(Fixtures.HADOOP)
                .withRowGroupRowCountLimit(1000)
                .withWriteMode(ParquetFileWriter.Mode.OVERWRITE)
                .build()) {
            for (Consumer<Group> fill : records) {
                Group record = new SimpleGroupFactory(type).newGroup();
                fill.accept(record);
                writer.write(record);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return file;
    }

    private static Group wheel(Group g, String visit, String place) {
        return g.append("visitId", visit)
                .append("visitedAt", "2025-11-18T08:20")
                .append("vehicleId", "K1")
                .append("position", place)
                .append("read", "ok");
    }

    private List<LogRow> read() {
        return Fixtures.read(dir, logs);
    }

    private LoggedWheel only(String column, Consumer<Group> fill) {
        write("a.parquet", FLAT + column + " }", g -> {
            wheel(g, "V1", "1L");
            fill.accept(g);
        });
        List<LogRow> rows = read();
        assertThat(Fixtures.rejected(rows)).isEmpty();
        return Fixtures.accepted(rows).get(0);
    }

    @Test
    void aFlatFileIsReadAsCsvWithTheNumbersOfItsRecords() {
        write(
                "a.parquet",
                FLAT + "}",
                g -> wheel(g, "V1", "1L").append("sensorId", "0A1B2C01").append("pressure", 7.3),
                g -> wheel(g, "V1", "1X").append("pressure", 240.0),
                g -> wheel(g, "V2", "1R").append("pressure", Double.NaN));
        List<LogRow> rows = read();

        assertThat(Fixtures.accepted(rows)).singleElement().satisfies(r -> {
            assertThat(r.source().toString()).isEqualTo("visit-logs/a.parquet:1");
            assertThat(r.wheel().pressureKpa()).isEqualTo(7.3);
        });
        assertThat(Fixtures.rejected(rows))
                .extracting(r -> r.source().line() + " " + r.rule() + " " + r.rawValue())
                .containsExactly("2 UNKNOWN_POSITION 1X", "3 BAD_NUMBER NaN");
        FileCount count = rows.get(rows.size() - 1).file();
        assertThat(count.rows()).isEqualTo(3);
        assertThat(count.format()).isEqualTo("parquet");
    }

    @Test
    void numbersOfEveryTypeAreReadToTheirLastDigit() {
        assertThat(only("optional float gaugePressure;", g -> g.append("gaugePressure", 7.3f))
                        .wheel()
                        .gaugePressureKpa())
                .isEqualTo(7.3);
        assertThat(only("optional int32 gaugePressure (DECIMAL(6,2));", g -> g.append("gaugePressure", 24055))
                        .wheel()
                        .gaugePressureKpa())
                .isEqualTo(240.55);
        assertThat(only(
                                "optional fixed_len_byte_array(3) gaugePressure (DECIMAL(6,1));",
                                g -> g.append("gaugePressure", Binary.fromConstantByteArray(new byte[] {0, 9, 97})))
                        .wheel()
                        .gaugePressureKpa())
                .isEqualTo(240.1);
        assertThat(only("optional double wakeAttempts;", g -> g.append("wakeAttempts", 3.0))
                        .wheel()
                        .wakeAttempts())
                .isEqualTo(3);
        assertThat(only("optional int32 odometer (INTEGER(32,false));", g -> g.append("odometer", -294_967_296))
                        .visit()
                        .odometerKm())
                .isEqualTo(4_000_000_000.0);
        assertThat(only("optional boolean hot;", g -> g.append("hot", true))
                        .wheel()
                        .hot())
                .isTrue();
        assertThat(only("optional int64 technicianId;", g -> g.append("technicianId", Long.MAX_VALUE))
                        .visit()
                        .technicianId())
                .isEqualTo(Long.toString(Long.MAX_VALUE));
    }

    private static LocalDateTime at(int hour, int minute) {
        return LocalDateTime.of(2025, 11, 18, hour, minute);
    }

    /** Days since 1970-01-01: 20410 is 2025-11-18 (20454 is 2026-01-01, less 44); its Julian number is 2460998. */
    @Test
    void timesOfEveryTypeAreWallClockTimesOrInstantsThatAreCounted() {
        String rest =
                " optional binary vehicleId (STRING); optional binary position (STRING); optional binary read (STRING); }";
        long millis = 20410L * 86_400_000 + (8 * 60 + 20) * 60_000L;
        for (String[] type : new String[][] {
            {"int64 visitedAt (TIMESTAMP(MILLIS,false))", "1", "local"},
            {"int64 visitedAt (TIMESTAMP(MICROS,false))", "1000", "local"},
            {"int64 visitedAt (TIMESTAMP(NANOS,false))", "1000000", "local"},
            {"int64 visitedAt (TIMESTAMP(MILLIS,true))", "1", "instant"},
            {"int96 visitedAt", "0", "instant"},
        }) {
            write(
                    "a.parquet",
                    "message log { required binary visitId (STRING); optional " + type[0] + ";" + rest,
                    g -> {
                        g.append("visitId", "V1")
                                .append("vehicleId", "K1")
                                .append("position", "1L")
                                .append("read", "ok");
                        long factor = Long.parseLong(type[1]);
                        if (factor == 0) {
                            g.append("visitedAt", new NanoTime(2_460_998, (8 * 60 + 20) * 60_000_000_000L));
                        } else {
                            g.append("visitedAt", millis * factor);
                        }
                    });
            List<LogRow> rows = read();
            assertThat(Fixtures.accepted(rows))
                    .singleElement()
                    .satisfies(
                            r -> assertThat(r.visit().visitedAt()).as(type[0]).isEqualTo(at(8, 20)));
            assertThat(rows.get(1).file().notes().containsKey(Note.OFFSET_LEFT_OUT))
                    .as(type[0])
                    .isEqualTo(type[2].equals("instant"));
        }
        assertThat(only("optional int32 warningSince (DATE);", g -> g.append("warningSince", 20410))
                        .visit()
                        .warningSince())
                .isEqualTo(at(8, 20).toLocalDate());
        assertThat(only("optional int64 warningSince (TIMESTAMP(MILLIS,false));", g -> g.append("warningSince", millis))
                        .visit()
                        .warningSince())
                .isEqualTo(at(8, 20).toLocalDate());
    }

    @Test
    void idsThatAreNumbersAreRefusedWhereZerosMayBeLost() {
        String schema = FLAT.replace("binary sensorId (STRING)", "int64 sensorId") + "}";
        write(
                "a.parquet",
                schema,
                g -> wheel(g, "V1", "1L").append("sensorId", 12345678L),
                g -> wheel(g, "V1", "1R").append("sensorId", 1234567L));
        List<LogRow> rows = read();
        assertThat(Fixtures.accepted(rows))
                .extracting(r -> r.wheel().sensorId())
                .containsExactly("12345678");
        assertThat(Fixtures.rejected(rows))
                .extracting(r -> r.rule() + " " + r.rawValue())
                .containsExactly("ID_AS_NUMBER 1234567");
    }

    private static final String WHEEL = "optional binary position (STRING); optional binary read (STRING);"
            + " optional binary sensorId (STRING); optional double pressure; optional binary colour (STRING);";
    private static final String VISIT =
            "message log { optional binary visitId (STRING); optional binary visitedAt (STRING);"
                    + " optional binary vehicleId (STRING);"
                    + " optional group placardPressure (MAP) { repeated group key_value { required binary key (STRING); optional"
                    + " double value; } }"
                    + " optional group testDrive { optional int32 minutes; } ";

    private static Group visit(Group g, String id) {
        g.append("visitId", id).append("visitedAt", "2025-11-18T08:20").append("vehicleId", "K1");
        Group axle = g.addGroup("placardPressure").addGroup("key_value");
        axle.append("key", "1").append("value", 240.0);
        g.addGroup("testDrive").append("minutes", 22);
        return g;
    }

    /** Lists of three levels and the older forms (Apache Parquet, LogicalTypes.md, backward-compatibility rules). */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "optional group wheels (LIST) { repeated group list { optional group element { %s } } }",
                "optional group wheels (LIST) { repeated group bag { optional group array_element { %s } } }",
                "optional group wheels (LIST) { repeated group array { %s } }",
                "repeated group wheels { %s }",
            })
    void aNestedFileIsReadAsJson(String wheels) {
        write("a.parquet", VISIT + String.format(wheels, WHEEL) + "}", g -> {
            visit(g, "V1");
            for (String place : List.of("1L", "1R", "2L")) {
                Group wheel = wheels.startsWith("repeated") ? g.addGroup("wheels") : null;
                if (wheel == null) {
                    Group list =
                            g.getFieldRepetitionCount("wheels") == 0 ? g.addGroup("wheels") : g.getGroup("wheels", 0);
                    Group repeated = list.addGroup(0);
                    wheel = wheels.contains("element") ? repeated.addGroup(0) : repeated;
                }
                wheel.append("position", place).append("read", "ok").append("pressure", 7.3);
                if (place.equals("2L")) {
                    wheel.append("colour", "red");
                }
            }
        });
        List<LogRow> rows = read();
        assertThat(Fixtures.accepted(rows))
                .extracting(r -> r.wheel().position().code() + " " + r.wheel().pressureKpa())
                .containsExactly("1L 7.3", "1R 7.3");
        assertThat(Fixtures.accepted(rows).get(0).visit().testDrive().minutes()).isEqualTo(22);
        assertThat(Fixtures.rejected(rows)).singleElement().satisfies(r -> {
            assertThat(r.rule() + " " + r.field() + " " + r.source())
                    .isEqualTo("UNKNOWN_KEY colour visit-logs/a.parquet:1");
            assertThat(r.rawText())
                    .isEqualTo("{\"position\":\"2L\",\"read\":\"ok\",\"pressure\":7.3,\"colour\":\"red\"}");
        });
    }

    @Test
    void aVisitWithoutWheelsIsOneRowAndAnEmptyFileNone() {
        String schema = VISIT + "optional group wheels (LIST) { repeated group list { optional group element { " + WHEEL
                + " } } } }";
        write("a.parquet", schema, g -> visit(g, "V1"));
        write("b.parquet", schema);
        List<LogRow> rows = read();
        assertThat(Fixtures.accepted(rows))
                .singleElement()
                .satisfies(r -> assertThat(r.wheel()).isNull());
        assertThat(rows).hasSize(3);
    }

    @Test
    void aFileReadInPartsGivesWhatItGivesAsAWhole() {
        List<Consumer<Group>> records = new ArrayList<>();
        for (int i = 0; i < 4500; i++) {
            int number = i;
            records.add(g -> wheel(g, "V" + number, "1L").append("pressure", 200.0 + number % 100));
        }
        Path file = write("a.parquet", FLAT + "}", records);
        LogFile log = Fixtures.find(dir, file).get(0);
        List<LogSlice> slices = ParquetSlices.of(log, log.bytes() / 3, Fixtures.HADOOP);
        assertThat(slices).hasSizeBetween(2, 4);

        List<LoggedWheel> parts = new ArrayList<>();
        long counted = 0;
        for (LogSlice slice : slices) {
            LogReader reader = LogReader.open(slice, Fixtures.HADOOP);
            List<LogRow> rows = new ArrayList<>();
            reader.forEachRemaining(rows::add);
            parts.addAll(Fixtures.accepted(rows));
            counted += rows.get(rows.size() - 1).file().rows();
        }
        assertThat(parts).isEqualTo(Fixtures.accepted(read()));
        assertThat(parts.get(4499).source().line()).isEqualTo(4500);
        assertThat(counted).isEqualTo(4500);
    }

    private RefusedInput refused() {
        RefusedInput refused = catchThrowableOfType(RefusedInput.class, this::read);
        assertThat(refused).isNotNull();
        return refused;
    }

    @Test
    void whatIsNoLogIsRefused() throws IOException {
        write("a.parquet", "message other { optional int32 x; }", g -> g.append("x", 1));
        assertThat(refused().what()).isEqualTo("not a visit log");

        write("a.parquet", FLAT + "optional int32 presure; }", g -> wheel(g, "V1", "1L"));
        assertThat(refused().value()).isEqualTo("presure");

        Files.writeString(logs.resolve("a.parquet"), "visitId,visitedAt,vehicleId\nV1,2025-11-18,K1\n");
        assertThat(refused().what()).isEqualTo("a Parquet file that cannot be read");
        assertThat(refused().where()).isEqualTo("visit-logs/a.parquet");
    }

    @Test
    void aFileThatIsCutShortOrDamagedIsRefused() throws IOException {
        Path file = write("a.parquet", FLAT + "}", g -> wheel(g, "V1", "1L").append("pressure", 240.0));
        // Written beside it unless a run in this JVM has put in the file system that leaves check sums out.
        Files.deleteIfExists(logs.resolve(".a.parquet.crc"));
        byte[] whole = Files.readAllBytes(file);
        Files.write(file, Arrays.copyOf(whole, whole.length - 10));
        assertThat(refused().what()).isEqualTo("a Parquet file that cannot be read");

        byte[] damaged = whole.clone();
        for (int i = 20; i < 60; i++) {
            damaged[i] ^= 0x55;
        }
        Files.write(file, damaged);
        assertThat(refused().what()).isEqualTo("a Parquet file that cannot be read");
    }

    @Test
    void aFieldThatStandsInTheNameOfAFolderIsNotOverlooked() throws IOException {
        Files.createDirectories(logs.resolve("reason=service"));
        write("reason=service/a.parquet", FLAT + "}", g -> wheel(g, "V1", "1L"));
        assertThat(refused().value()).isEqualTo("reason=service");
        assertThat(refused().wayOut()).contains("partitionBy");
    }

    @Test
    void aFlatFileIsASampleToProposeALayoutFrom() {
        Path file = write("a.parquet", FLAT + "}", g -> wheel(g, "V1", "1L").append("pressure", 7.3));
        SampleReader.Cut cut = new SampleReader(Fixtures.HADOOP).read(List.of(file.toString()));
        assertThat(cut.format()).isEqualTo(LogFile.Format.PARQUET);
        assertThat(cut.sample().headers()).startsWith("visitId", "visitedAt");
        assertThat(cut.sample().rows()).containsExactly(List.of("V1", "2025-11-18T08:20", "K1", "1L", "ok", "", "7.3"));
        assertThat(cut.sample().whole()).isTrue();
    }

    @Test
    void aListInAFlatFileIsRefusedAndNotLost() {
        write(
                "a.parquet",
                FLAT + "repeated binary part (STRING); }",
                g -> wheel(g, "V1", "1L").append("part", "S433").append("part", "S434"));
        assertThat(Fixtures.rejected(read())).extracting(Rejection::field).containsExactly("part");
    }
}
