package sensorrounds.ingest;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.apache.hadoop.conf.Configuration;

/**
 * Cuts big plain files into slices, so that one file can keep every core busy. A file is cut at line ends only, after a
 * survey that counts its lines; one whose records run over lines, or that is compressed, stays whole.
 */
final class LogSlices {
    private final long sliceBytes;

    /** @param sliceBytes about how many bytes to a slice; files of less than twice as much stay whole */
    LogSlices(long sliceBytes) {
        if (sliceBytes < 1) {
            throw new IllegalArgumentException("slices of " + sliceBytes + " bytes, expected 1 or more");
        }
        this.sliceBytes = sliceBytes;
    }

    /**
     * @param survey looks at stretches, in any order and place, and answers in the order given
     * @param hadoop to read where the row groups of big Parquet files begin
     * @return slices in the order of the files
     */
    List<LogSlice> of(
            List<LogFile> files, Function<List<SliceSurvey.Stretch>, List<SliceSurvey>> survey, Configuration hadoop) {
        List<SliceSurvey.Stretch> stretches = new ArrayList<>();
        for (LogFile file : files) {
            if (mayBeCut(file)) {
                for (long from = 0; from < file.bytes(); from += sliceBytes) {
                    stretches.add(new SliceSurvey.Stretch(file, from, Math.min(file.bytes(), from + sliceBytes)));
                }
            }
        }
        List<SliceSurvey> surveys = stretches.isEmpty() ? List.of() : survey.apply(stretches);
        List<LogSlice> slices = new ArrayList<>();
        int next = 0;
        for (LogFile file : files) {
            int from = next;
            while (next < stretches.size() && stretches.get(next).file() == file) {
                next++;
            }
            boolean parquet = file.format() == LogFile.Format.PARQUET && file.bytes() >= 2 * sliceBytes;
            slices.addAll(
                    parquet ? ParquetSlices.of(file, sliceBytes, hadoop) : cut(file, surveys.subList(from, next)));
        }
        return slices;
    }

    private static List<LogSlice> cut(LogFile file, List<SliceSurvey> stretches) {
        if (stretches.isEmpty() || stretches.stream().anyMatch(s -> !s.cuttable())) {
            return List.of(LogSlice.whole(file));
        }
        List<LogSlice> slices = new ArrayList<>();
        long start = 0;
        long linesBefore = 0;
        long lines = stretches.get(0).lineEnds();
        for (SliceSurvey stretch : stretches.subList(1, stretches.size())) {
            long end = stretch.firstLineEnd() + 1;
            // A stretch without a line end belongs to the line that began before it.
            if (end > 0 && end < file.bytes()) {
                slices.add(new LogSlice(file, start, end - start, linesBefore));
                start = end;
                linesBefore = lines + 1;
            }
            lines += stretch.lineEnds();
        }
        slices.add(new LogSlice(file, start, file.bytes() - start, linesBefore));
        return slices;
    }

    private boolean mayBeCut(LogFile file) {
        boolean lines = file.format() == LogFile.Format.JSON_LINES
                || file.format() == LogFile.Format.CSV && file.layout().delimiter() < 0x80;
        return lines
                && !file.gzipped()
                && file.bytes() >= 2 * sliceBytes
                && isAsciiBelow(file.layout().encoding());
    }

    /** In these encodings a byte below 0x80 is that character and never a part of another. */
    private static boolean isAsciiBelow(String encoding) {
        Charset charset = Charset.forName(encoding);
        String name = charset.name();
        return charset.equals(StandardCharsets.UTF_8)
                || charset.equals(StandardCharsets.US_ASCII)
                || name.startsWith("ISO-8859-")
                || name.startsWith("windows-125");
    }
}
