package sensorrounds.tables;

import static sensorrounds.tables.Column.count;
import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.whole;
import static sensorrounds.tables.Column.word;

import java.util.List;
import sensorrounds.recurrence.ComebackRate;

/** Stored table of warnings back after repair. */
public final class ComebackRates {
    public static final Table<ComebackRate> TABLE = new Table<>(
            "comeback_rates",
            "How often the system warning was back after each kind of repair: repairs = back + held + not_looked + cut_short.",
            List.of(
                    word("repair", "Strongest work done; null for every kind together.", ComebackRate::repair),
                    whole("window_days", "Days after the repair.", ComebackRate::windowDays),
                    count("repairs", "Repairs of a system warning.", ComebackRate::repairs),
                    count("back", "Warning seen again within the window.", ComebackRate::back),
                    count("held", "Seen without the warning at its end or later.", ComebackRate::held),
                    count(
                            "not_looked",
                            "Followed to its end, and not seen without the warning then or later.",
                            ComebackRate::notLooked),
                    count(
                            "cut_short",
                            "Not followed to its end: repaired too late, left, or other work came first.",
                            ComebackRate::cutShort),
                    number(
                            "share",
                            "Share back within the window, repairs counted for as long as they were followed; null when"
                                    + " none was followed to its end.",
                            ComebackRate::share),
                    number("lower", "Lower 95 % limit.", ComebackRate::lower),
                    number("upper", "Upper 95 % limit.", ComebackRate::upper),
                    number(
                            "share_of_seen",
                            "back / (back + held): if those not looked at were like those seen.",
                            ComebackRate::shareOfSeen),
                    number(
                            "adjusted_share",
                            "The share if this kind had met as many repeated repairs as all kinds together; null where it"
                                    + " met none of one sort.",
                            ComebackRate::adjustedShare)));

    private ComebackRates() {}
}
