package sensorrounds.cli;

/** How the process ends. Schedulers that do not see it read {@code run-status.json}. */
enum ExitCode {
    DONE(0),
    /** The command line or the settings ask for something that cannot be. */
    USAGE(1),
    /** The data folder or a log was refused. */
    INPUT_REFUSED(2),
    /** Our mistake. */
    BUG(3),
    /** Done and published, but more rows were quarantined than the settings allow. */
    OVER_QUARANTINE_LIMIT(4);

    private final int number;

    ExitCode(int number) {
        this.number = number;
    }

    int number() {
        return number;
    }
}
