package sensorrounds.tables;

import static sensorrounds.tables.Column.count;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;

import java.util.List;
import sensorrounds.recurrence.FalseFlags;

/** Stored table of recurring vehicles that are expected to be no worse than their peers. */
public final class FalseFlagShares {
    public static final Table<FalseFlags> TABLE = new Table<>(
            "false_flags",
            "How many of the vehicles whose system warning recurs are expected to warn no more often in the long run than their"
                    + " peers' mean: chance put them in the list.",
            List.of(
                    text("cohort", "Vehicle class, or 'all vehicles'.", FalseFlags::cohort),
                    count("listed", "Vehicles whose system warning recurs.", FalseFlags::listed),
                    number(
                            "expected",
                            "Of these, expected to be no worse than their peers; with an allowance for what is not known of"
                                    + " the peers, so that the true number is on average no larger.",
                            FalseFlags::expected),
                    number("share", "expected / listed; null of none.", FalseFlags::share),
                    count(
                            "upper_limit",
                            "Number that nine fleets in ten at least do not pass.",
                            FalseFlags::upperLimit),
                    number("upper_share", "upper_limit / listed; null of none.", FalseFlags::upperShare)));

    private FalseFlagShares() {}
}
