package sensorrounds.run;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.SortedSet;
import java.util.TreeSet;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import org.apache.parquet.example.data.Group;
import org.apache.parquet.hadoop.ParquetReader;
import org.apache.parquet.hadoop.example.GroupReadSupport;
import org.apache.parquet.hadoop.util.HadoopInputFile;
import sensorrounds.tables.LogRow;
import sensorrounds.tables.LogRows;

/**
 * Finds the vehicles of a number plate or VIN in a run's stored log rows, without a Spark session. What is asked for is
 * compared and never handed on; a run with pseudonyms knows none.
 */
final class StoredIdentities {
    private static final String MESSAGE = "message rows { optional binary " + LogRows.VEHICLE_ID
            + " (STRING); optional binary " + LogRows.VIN + " (STRING); optional binary " + LogRows.REGISTRATION
            + " (STRING); }";

    private StoredIdentities() {}

    /**
     * @param identity plate or VIN; spaces, hyphens and capitals do not count
     * @return IDs of the vehicles that stood under it at any visit
     */
    static SortedSet<String> vehicles(Path run, String identity, Configuration hadoop) {
        Path accepted = new Path(
                run, "tables/" + LogRows.TABLE.name() + "/" + LogRows.OUTCOME + "=" + LogRow.Outcome.ACCEPTED.word());
        String wanted = plain(identity);
        SortedSet<String> vehicles = new TreeSet<>();
        try {
            FileSystem files = accepted.getFileSystem(hadoop);
            if (!wanted.isEmpty() && files.exists(accepted)) {
                for (FileStatus file :
                        files.listStatus(accepted, p -> p.getName().endsWith(".parquet"))) {
                    collect(file, wanted, hadoop, vehicles);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the run's log rows cannot be read: " + accepted, e);
        }
        return vehicles;
    }

    private static void collect(FileStatus file, String wanted, Configuration hadoop, SortedSet<String> vehicles)
            throws IOException {
        Configuration projected = new Configuration(hadoop);
        projected.set("parquet.read.schema", MESSAGE);
        try (ParquetReader<Group> reader =
                new ParquetReader.Builder<Group>(HadoopInputFile.fromStatus(file, projected)) {
                    @Override
                    protected GroupReadSupport getReadSupport() {
                        return new GroupReadSupport();
                    }
                }.withConf(projected).build()) {
            for (Group g = reader.read(); g != null; g = reader.read()) {
                if (wanted.equals(plain(text(g, LogRows.VIN))) || wanted.equals(plain(text(g, LogRows.REGISTRATION)))) {
                    vehicles.add(text(g, LogRows.VEHICLE_ID));
                }
            }
        }
    }

    private static String text(Group g, String column) {
        return g.getFieldRepetitionCount(column) == 0 ? "" : g.getString(column, 0);
    }

    private static String plain(String text) {
        StringBuilder plain = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c != '-' && !Character.isWhitespace(c)) {
                plain.append(c);
            }
        }
        return plain.toString().toUpperCase(Locale.ROOT);
    }
}
