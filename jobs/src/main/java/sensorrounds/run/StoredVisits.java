package sensorrounds.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import org.apache.parquet.example.data.Group;
import org.apache.parquet.filter2.compat.FilterCompat;
import org.apache.parquet.filter2.predicate.FilterApi;
import org.apache.parquet.hadoop.ParquetReader;
import org.apache.parquet.hadoop.example.GroupReadSupport;
import org.apache.parquet.hadoop.util.HadoopInputFile;
import org.apache.parquet.io.api.Binary;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.types.DataType;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructField;
import sensorrounds.intake.VisitResolver;
import sensorrounds.tables.LogRow;
import sensorrounds.tables.LogRows;
import sensorrounds.visit.LoggedWheel;
import sensorrounds.visit.Visit;

/**
 * Visits of a few vehicles from a run's stored log rows, without a Spark session, so that a look at one vehicle takes a
 * second. The file's own index finds the vehicles. Fields that name people are not read at all.
 */
final class StoredVisits {
    private StoredVisits() {}

    /** Visits in time order by vehicle, up to and including {@code asOf}; a vehicle without one is missing. */
    static Map<String, List<Visit>> of(Path run, Set<String> vehicles, LocalDate asOf, Configuration hadoop) {
        Map<String, List<LoggedWheel>> rows = new LinkedHashMap<>();
        Path accepted = new Path(
                run, "tables/" + LogRows.TABLE.name() + "/" + LogRows.OUTCOME + "=" + LogRow.Outcome.ACCEPTED.word());
        try {
            FileSystem files = accepted.getFileSystem(hadoop);
            if (!vehicles.isEmpty() && files.exists(accepted)) {
                // Several files at once; their rows are put together in the order of the files.
                Arrays.stream(files.listStatus(accepted, p -> p.getName().endsWith(".parquet")))
                        .parallel()
                        .map(file -> read(file, vehicles, hadoop))
                        .forEachOrdered(found -> found.forEach(
                                r -> rows.computeIfAbsent(r.visit().vehicleId(), k -> new ArrayList<>())
                                        .add(r)));
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the run's log rows cannot be read: " + accepted, e);
        }
        Map<String, List<Visit>> visits = new LinkedHashMap<>();
        rows.forEach((vehicle, r) -> visits.put(
                vehicle,
                VisitResolver.resolve(r).visits().stream()
                        .filter(v -> !v.day().isAfter(asOf))
                        .toList()));
        return visits;
    }

    private static List<LoggedWheel> read(FileStatus file, Set<String> vehicles, Configuration hadoop) {
        StructField[] fields = LogRows.understoodSchema();
        String message = Arrays.stream(fields)
                .filter(f -> !LogRows.NAMES_PEOPLE.contains(f.name()))
                .map(f -> "optional " + parquetType(f.dataType()) + " " + f.name() + ";")
                .collect(Collectors.joining(" ", "message rows { ", " }"));
        Configuration projected = new Configuration(hadoop);
        projected.set("parquet.read.schema", message);
        Set<Binary> ids = vehicles.stream().map(Binary::fromString).collect(Collectors.toSet());
        List<LoggedWheel> rows = new ArrayList<>();
        try (ParquetReader<Group> reader =
                new ParquetReader.Builder<Group>(HadoopInputFile.fromStatus(file, projected)) {
                    @Override
                    protected GroupReadSupport getReadSupport() {
                        return new GroupReadSupport();
                    }
                }.withConf(projected)
                        .withFilter(FilterCompat.get(
                                FilterApi.userDefined(FilterApi.binaryColumn(LogRows.VEHICLE_ID), new OneOf(ids))))
                        .build()) {
            for (Group g = reader.read(); g != null; g = reader.read()) {
                rows.add(row(g, fields));
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the run's log rows cannot be read: " + file.getPath(), e);
        }
        return rows;
    }

    private static LoggedWheel row(Group g, StructField[] fields) {
        Object[] values = new Object[fields.length];
        for (int i = 0; i < fields.length; i++) {
            String name = fields[i].name();
            if (!LogRows.NAMES_PEOPLE.contains(name) && g.getFieldRepetitionCount(name) > 0) {
                values[i] = value(g, name, fields[i].dataType());
            }
        }
        return LogRows.understood(RowFactory.create(values));
    }

    private static Object value(Group g, String name, DataType type) {
        if (type.equals(DataTypes.StringType)) {
            return g.getString(name, 0);
        }
        if (type.equals(DataTypes.DoubleType)) {
            return g.getDouble(name, 0);
        }
        if (type.equals(DataTypes.IntegerType)) {
            return g.getInteger(name, 0);
        }
        if (type.equals(DataTypes.LongType)) {
            return g.getLong(name, 0);
        }
        if (type.equals(DataTypes.BooleanType)) {
            return g.getBoolean(name, 0);
        }
        if (type.equals(DataTypes.DateType)) {
            return LocalDate.ofEpochDay(g.getInteger(name, 0));
        }
        long micros = g.getLong(name, 0);
        return LocalDateTime.ofEpochSecond(
                Math.floorDiv(micros, 1_000_000L), (int) Math.floorMod(micros, 1_000_000L) * 1000, ZoneOffset.UTC);
    }

    private static String parquetType(DataType type) {
        if (type.equals(DataTypes.StringType)) {
            return "binary";
        }
        if (type.equals(DataTypes.DoubleType)) {
            return "double";
        }
        if (type.equals(DataTypes.IntegerType) || type.equals(DataTypes.DateType)) {
            return "int32";
        }
        if (type.equals(DataTypes.BooleanType)) {
            return "boolean";
        }
        if (type.equals(DataTypes.LongType) || type.equals(DataTypes.TimestampNTZType)) {
            return "int64";
        }
        throw new IllegalStateException("no way to read a column of type " + type);
    }
}
