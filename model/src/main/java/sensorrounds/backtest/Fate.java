package sensorrounds.backtest;

/**
 * What is known today of a sensor since a cut, in days from it.
 *
 * @param workedOn last day it is known to have worked, or where a warning told of its failure is taken to have ({@link
 *     LifeFate}); 0 or less when it never answered after the cut
 * @param failedBy first day it is known failed, after {@code workedOn}; positive infinity when it is not. 0 or less when it
 *     had failed by the cut and that came out later
 * @param ending why nothing is known past these days
 */
public record Fate(long workedOn, double failedBy, Ending ending) {
    /** How the knowledge of a sensor ends. */
    public enum Ending {
        /** It failed. */
        FAILED,
        /** Last seen working, still on its vehicle. */
        IN_SERVICE,
        /** Replaced while it answered: crews replace what looks weak, so such a sensor might have failed soon. */
        REPLACED_WORKING,
        /** Gone with its vehicle or wheels, or taken out for what was no fault of its own. */
        OTHER,
        /** Not found among today's lives: the logs since put its past together otherwise. */
        NOT_FOUND
    }

    public Fate {
        if (!(failedBy > workedOn)) {
            throw new IllegalArgumentException(
                    "a sensor cannot have failed by day " + failedBy + " and worked on day " + workedOn);
        }
    }

    /** Of a sensor nothing was heard of. */
    static Fate notFound() {
        return new Fate(0, Double.POSITIVE_INFINITY, Ending.NOT_FOUND);
    }

    public boolean failed() {
        return failedBy < Double.POSITIVE_INFINITY;
    }

    /** Share of its interval of failure that lies by this day: 1 for a failure known by then, 0 for a sensor that lived on. */
    double failedShareBy(double day) {
        return Math.max(0, Math.min(1, (day - workedOn) / (failedBy - workedOn)));
    }
}
