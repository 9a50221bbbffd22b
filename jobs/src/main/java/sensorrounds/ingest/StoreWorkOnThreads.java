package sensorrounds.ingest;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.apache.hadoop.conf.Configuration;
import org.apache.hadoop.fs.Path;
import sensorrounds.tables.LogRow;

/**
 * Updates of a day's size in this process alone: Spark takes longer to start than they take. Rows go through the same
 * readers and are counted in what was written, as on Spark.
 */
final class StoreWorkOnThreads implements StoreWork {
    /** A small part of a file would be read faster than a second thread starts. */
    private static final long SLICE_BYTES = 4L << 20;

    private final LogStore store;
    private final Configuration hadoop;
    private final int threads;

    StoreWorkOnThreads(LogStore store) {
        this(store, Runtime.getRuntime().availableProcessors());
    }

    StoreWorkOnThreads(LogStore store, int threads) {
        this.store = store;
        this.hadoop = store.hadoop();
        this.threads = threads;
    }

    @Override
    public List<String> checksums(List<LogFile> files) {
        return each(files.stream()
                .<Callable<String>>map(file -> () -> Checksums.of(file, hadoop))
                .toList());
    }

    @Override
    public IngestTally read(List<LogFile> files, String folder) {
        List<LogSlice> slices = new LogSlices(SLICE_BYTES)
                .of(
                        files,
                        stretches -> each(stretches.stream()
                                .<Callable<SliceSurvey>>map(stretch -> () -> SliceSurvey.of(stretch, hadoop))
                                .toList()),
                        hadoop);
        int workers = Math.min(threads, slices.size());
        each(IntStream.range(0, workers)
                .<Callable<Void>>mapToObj(worker -> () -> {
                    Pseudonyms pseudonyms = store.pseudonyms() == null
                            ? null
                            : store.pseudonyms().forOneThread();
                    try (SegmentPart part = new SegmentPart(new Path(folder), worker, hadoop)) {
                        for (int i = worker; i < slices.size(); i += workers) {
                            Blocks blocks = new Blocks(LogReader.open(slices.get(i), hadoop, pseudonyms));
                            while (blocks.hasNext()) {
                                part.write(blocks.next());
                            }
                        }
                    }
                    return null;
                })
                .toList());
        return tally(new Path(folder));
    }

    @Override
    public void copy(List<StoreState.Segment> segments, String folder) {
        try (SegmentPart part = new SegmentPart(new Path(folder), 0, hadoop)) {
            for (StoreState.Segment segment : segments) {
                Set<String> gone = Set.copyOf(segment.gone());
                for (LogRow.Outcome outcome : LogRow.Outcome.values()) {
                    BlockFiles.each(store.segment(segment.number()), outcome, hadoop, block -> {
                        if (!gone.contains(block.file())) {
                            part.write(block);
                        }
                    });
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private IngestTally tally(Path folder) {
        IngestTally tally = new IngestTally();
        try {
            for (LogRow.Outcome outcome : LogRow.Outcome.values()) {
                BlockFiles.each(folder, outcome, hadoop, block -> {
                    if (outcome == LogRow.Outcome.ACCEPTED) {
                        tally.add(block.file(), outcome, block.rows());
                    } else {
                        Block.rows(block.bytes()).forEach(tally::add);
                    }
                });
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return tally;
    }

    /** Answers in the order of the questions. The first failure among them is thrown as it is. */
    private <T> List<T> each(List<Callable<T>> questions) {
        ExecutorService pool = Executors.newFixedThreadPool(Math.max(1, Math.min(threads, questions.size())));
        try {
            List<T> answers = new ArrayList<>();
            for (Future<T> answer : pool.invokeAll(questions)) {
                answers.add(answer.get());
            }
            return answers;
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException known) {
                throw known;
            }
            throw new IllegalStateException("the ingest failed: " + e.getCause(), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("the ingest was stopped", e);
        } finally {
            pool.shutdownNow();
        }
    }
}
