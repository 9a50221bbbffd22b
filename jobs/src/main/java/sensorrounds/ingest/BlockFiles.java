package sensorrounds.ingest;

import java.io.IOException;
import java.util.Arrays;
import java.util.Map;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.FileStatus;
import org.apache.hadoop.fs.FileSystem;
import org.apache.hadoop.fs.Path;
import org.apache.parquet.HadoopReadOptions;
import org.apache.parquet.ParquetReadOptions;
import org.apache.parquet.column.page.PageReadStore;
import org.apache.parquet.hadoop.ParquetFileReader;
import org.apache.parquet.hadoop.ParquetWriter;
import org.apache.parquet.hadoop.api.WriteSupport;
import org.apache.parquet.hadoop.metadata.CompressionCodecName;
import org.apache.parquet.hadoop.util.HadoopInputFile;
import org.apache.parquet.hadoop.util.HadoopOutputFile;
import org.apache.parquet.io.ColumnIOFactory;
import org.apache.parquet.io.InputFile;
import org.apache.parquet.io.MessageColumnIO;
import org.apache.parquet.io.OutputFile;
import org.apache.parquet.io.RecordReader;
import org.apache.parquet.io.api.Binary;
import org.apache.parquet.io.api.Converter;
import org.apache.parquet.io.api.GroupConverter;
import org.apache.parquet.io.api.PrimitiveConverter;
import org.apache.parquet.io.api.RecordConsumer;
import org.apache.parquet.io.api.RecordMaterializer;
import org.apache.parquet.schema.LogicalTypeAnnotation;
import org.apache.parquet.schema.MessageType;
import org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName;
import org.apache.parquet.schema.Types;
import sensorrounds.tables.LogRow;

/** The Parquet files of {@link BlockTable}, written and read without Spark. */
final class BlockFiles {
    private static final MessageType SCHEMA = Types.buildMessage()
            .optional(PrimitiveTypeName.BINARY)
            .as(LogicalTypeAnnotation.stringType())
            .named(BlockTable.KEY)
            .optional(PrimitiveTypeName.BINARY)
            .as(LogicalTypeAnnotation.stringType())
            .named(BlockTable.FILE)
            .optional(PrimitiveTypeName.INT64)
            .named(BlockTable.LINE)
            .optional(PrimitiveTypeName.BINARY)
            .named(BlockTable.BYTES)
            .optional(PrimitiveTypeName.INT32)
            .named(BlockTable.ROWS)
            .named("blocks");

    private BlockFiles() {}

    /** What is done with a block that was read. */
    interface Use {
        void of(Block block) throws IOException;
    }

    static Path folder(Path segment, LogRow.Outcome outcome) {
        return new Path(segment, BlockTable.OUTCOME + "=" + outcome.word());
    }

    static ParquetWriter<Block> writer(Path file, Configuration hadoop) throws IOException {
        return new Writing(HadoopOutputFile.fromPath(file, hadoop))
                .withConf(hadoop)
                .withCompressionCodec(CompressionCodecName.SNAPPY)
                .build();
    }

    /** Reads the blocks of one outcome in a segment, file by file in the order of their names. */
    static void each(Path segment, LogRow.Outcome outcome, Configuration hadoop, Use use) throws IOException {
        Path folder = folder(segment, outcome);
        FileSystem files = folder.getFileSystem(hadoop);
        if (!files.exists(folder)) {
            return;
        }
        FileStatus[] parts = files.listStatus(folder, p -> p.getName().endsWith(".parquet"));
        Arrays.sort(parts);
        for (FileStatus part : parts) {
            each(HadoopInputFile.fromStatus(part, hadoop), outcome, hadoop, use);
        }
    }

    private static void each(InputFile file, LogRow.Outcome outcome, Configuration hadoop, Use use) throws IOException {
        ParquetReadOptions options =
                HadoopReadOptions.builder(hadoop).usePageChecksumVerification().build();
        MessageColumnIO columns = new ColumnIOFactory().getColumnIO(SCHEMA);
        try (ParquetFileReader reader = ParquetFileReader.open(file, options)) {
            for (PageReadStore group = reader.readNextRowGroup(); group != null; group = reader.readNextRowGroup()) {
                RecordReader<Block> blocks = columns.getRecordReader(group, new BlockReading(outcome));
                for (long left = group.getRowCount(); left > 0; left--) {
                    use.of(blocks.read());
                }
            }
        }
    }

    private static final class Writing extends ParquetWriter.Builder<Block, Writing> {
        Writing(OutputFile file) {
            super(file);
        }

        @Override
        protected Writing self() {
            return this;
        }

        /** Of its two forms the deprecated one is the one that must be there. */
        @SuppressWarnings("deprecation")
        @Override
        protected WriteSupport<Block> getWriteSupport(Configuration conf) {
            return new BlockWriting();
        }
    }

    private static final class BlockWriting extends WriteSupport<Block> {
        private RecordConsumer out;

        /** Of its two forms the deprecated one is the one that must be there. */
        @SuppressWarnings("deprecation")
        @Override
        public WriteContext init(Configuration conf) {
            return new WriteContext(SCHEMA, Map.of());
        }

        @Override
        public void prepareForWrite(RecordConsumer consumer) {
            out = consumer;
        }

        @Override
        public void write(Block block) {
            out.startMessage();
            text(0, BlockTable.KEY, block.key());
            text(1, BlockTable.FILE, block.file());
            out.startField(BlockTable.LINE, 2);
            out.addLong(block.line());
            out.endField(BlockTable.LINE, 2);
            out.startField(BlockTable.BYTES, 3);
            out.addBinary(Binary.fromReusedByteArray(block.bytes()));
            out.endField(BlockTable.BYTES, 3);
            out.startField(BlockTable.ROWS, 4);
            out.addInteger(block.rows());
            out.endField(BlockTable.ROWS, 4);
            out.endMessage();
        }

        private void text(int at, String name, String text) {
            out.startField(name, at);
            out.addBinary(Binary.fromString(text));
            out.endField(name, at);
        }
    }

    private static final class BlockReading extends RecordMaterializer<Block> {
        private final Fields fields;

        BlockReading(LogRow.Outcome outcome) {
            fields = new Fields(outcome);
        }

        @Override
        public Block getCurrentRecord() {
            return fields.block();
        }

        @Override
        public GroupConverter getRootConverter() {
            return fields;
        }
    }

    /** The fields of one block, as they come. */
    private static final class Fields extends GroupConverter {
        private final LogRow.Outcome outcome;
        private final Converter[] converters;
        private String key;
        private String file;
        private long line;
        private byte[] bytes;
        private int rows;

        Fields(LogRow.Outcome outcome) {
            this.outcome = outcome;
            this.converters = new Converter[] {
                new PrimitiveConverter() {
                    @Override
                    public void addBinary(Binary value) {
                        key = value.toStringUsingUTF8();
                    }
                },
                new PrimitiveConverter() {
                    @Override
                    public void addBinary(Binary value) {
                        file = value.toStringUsingUTF8();
                    }
                },
                new PrimitiveConverter() {
                    @Override
                    public void addLong(long value) {
                        line = value;
                    }
                },
                new PrimitiveConverter() {
                    @Override
                    public void addBinary(Binary value) {
                        bytes = value.getBytes();
                    }
                },
                new PrimitiveConverter() {
                    @Override
                    public void addInt(int value) {
                        rows = value;
                    }
                }
            };
        }

        Block block() {
            return new Block(key, file, line, bytes, rows, outcome);
        }

        @Override
        public Converter getConverter(int field) {
            return converters[field];
        }

        @Override
        public void start() {
            // Every field is written in every block: nothing of the one before can stay.
        }

        @Override
        public void end() {
            // The block is made when it is asked for.
        }
    }
}
