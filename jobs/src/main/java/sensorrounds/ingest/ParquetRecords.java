package sensorrounds.ingest;

import java.io.Closeable;
import java.io.IOException;
import java.util.function.Supplier;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.Path;
import org.apache.parquet.HadoopReadOptions;
import org.apache.parquet.column.page.PageReadStore;
import org.apache.parquet.example.data.Group;
import org.apache.parquet.example.data.simple.convert.GroupRecordConverter;
import org.apache.parquet.hadoop.ParquetFileReader;
import org.apache.parquet.hadoop.metadata.ParquetMetadata;
import org.apache.parquet.hadoop.util.HadoopInputFile;
import org.apache.parquet.io.ColumnIOFactory;
import org.apache.parquet.io.MessageColumnIO;
import org.apache.parquet.io.RecordReader;
import org.apache.parquet.schema.MessageType;

/** The records of a Parquet file, or of some of its row groups, one at a time and in their order. */
final class ParquetRecords implements Closeable {
    private final LogFile file;
    private final ParquetFileReader reader;
    private final MessageType schema;
    private final MessageColumnIO columns;
    private RecordReader<Group> records;
    private long left;

    private ParquetRecords(LogFile file, ParquetFileReader reader) {
        this.file = file;
        this.reader = reader;
        this.schema = reader.getFileMetaData().getSchema();
        this.columns = new ColumnIOFactory().getColumnIO(schema);
    }

    /** @throws RefusedInput for what is no Parquet file, is cut short, or has grown since it was listed */
    static ParquetRecords open(LogSlice slice, Configuration hadoop) throws IOException {
        LogFile file = slice.file();
        HadoopInputFile input = HadoopInputFile.fromPath(new Path(file.uri()), hadoop);
        if (input.getLength() != file.bytes()) {
            throw ExactStream.changed(file, input.getLength() + " bytes");
        }
        HadoopReadOptions.Builder options = HadoopReadOptions.builder(hadoop);
        options.usePageChecksumVerification(true);
        if (!slice.isWhole()) {
            options.withRange(slice.offset(), slice.offset() + slice.length());
        }
        try {
            return new ParquetRecords(file, ParquetFileReader.open(input, options.build()));
        } catch (IOException | RuntimeException e) {
            // The library throws unchecked for bytes that are no Parquet.
            throw damaged(file, 0, e);
        }
    }

    MessageType schema() {
        return schema;
    }

    /** Row groups of the whole file. */
    ParquetMetadata footer() {
        return reader.getFooter();
    }

    /** @param row number of the record read last, for messages @return the next record, or null after the last */
    Group next(long row) throws IOException {
        while (left == 0) {
            PageReadStore pages = guarded(row, () -> {
                try {
                    return reader.readNextRowGroup();
                } catch (IOException e) {
                    throw damaged(file, row, e);
                }
            });
            if (pages == null) {
                return null;
            }
            left = pages.getRowCount();
            records = guarded(row, () -> columns.getRecordReader(pages, new GroupRecordConverter(schema)));
        }
        left--;
        return guarded(row, records::read);
    }

    private <T> T guarded(long row, Supplier<T> library) {
        try {
            return library.get();
        } catch (RefusedInput e) {
            throw e;
        } catch (RuntimeException e) {
            throw damaged(file, row, e);
        }
    }

    private static RefusedInput damaged(LogFile file, long row, Exception cause) {
        String reason = cause.getMessage() == null ? cause.getClass().getSimpleName() : cause.getMessage();
        return new RefusedInput(
                "a Parquet file that cannot be read",
                file.name() + (row > 0 ? ", after row " + row : ""),
                reason.replace(file.uri(), file.name()),
                "a whole Parquet file without encryption",
                "copy or write the file again; a file that is still being written has an underscore before its name");
    }

    @Override
    public void close() throws IOException {
        reader.close();
    }
}
