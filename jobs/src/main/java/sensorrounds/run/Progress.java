package sensorrounds.run;

/** One line for each step of long work, with the seconds since the start. */
@FunctionalInterface
public interface Progress {
    Progress SILENT = line -> {};

    void say(String line);

    /** @param sink takes one finished line */
    static Progress timed(java.util.function.Consumer<String> sink) {
        long start = System.nanoTime();
        return line -> sink.accept(String.format("%7.1f s  %s", (System.nanoTime() - start) / 1e9, line));
    }
}
