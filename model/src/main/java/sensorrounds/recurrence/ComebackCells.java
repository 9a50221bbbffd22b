package sensorrounds.recurrence;

import java.io.Serializable;
import java.util.Arrays;
import sensorrounds.numeric.WilsonInterval;

/**
 * Outcomes of repairs of one kind by day: whole numbers only. The share back within a window is one less the product-limit
 * estimate (Kaplan and Meier 1958, JASA 53:457), so that repairs followed for less than the window count as long as they were
 * followed. Its limits are the score limits of Wilson at the effective number S (1 - S) / Var with Greenwood's variance, which
 * is the number of repairs when all were followed (Rothman 1978, J. Chronic Dis. 31:557; from memory).
 */
final class ComebackCells implements Serializable {
    private static final long serialVersionUID = 1;

    private static final double LEVEL = 0.95;

    private final int[] windows;
    private final long[] back;
    private final long[] ended;
    private final long[] backWithin;
    private final long[] held;
    private final long[] notLooked;
    private long repairs;

    /** @param windows in days, rising */
    ComebackCells(int[] windows) {
        this.windows = windows;
        int days = windows[windows.length - 1] + 1;
        back = new long[days];
        // Those followed to beyond the last window end in the last cell.
        ended = new long[days + 1];
        backWithin = new long[windows.length];
        held = new long[windows.length];
        notLooked = new long[windows.length];
    }

    ComebackCells add(RepairOutcome o) {
        repairs++;
        int last = back.length - 1;
        if (o.backAfter() != null && o.backAfter() <= last) {
            back[o.backAfter()]++;
        } else {
            ended[Math.min(o.backAfter() == null ? o.followedFor() : last + 1, last + 1)]++;
        }
        for (int i = 0; i < windows.length; i++) {
            if (o.backAfter() != null && o.backAfter() <= windows[i]) {
                backWithin[i]++;
            } else if (o.clearAfter() >= windows[i]) {
                held[i]++;
            } else if (o.backAfter() != null || o.followedFor() >= windows[i]) {
                notLooked[i]++;
            }
        }
        return this;
    }

    ComebackCells merge(ComebackCells o) {
        repairs += o.repairs;
        addAll(back, o.back);
        addAll(ended, o.ended);
        addAll(backWithin, o.backWithin);
        addAll(held, o.held);
        addAll(notLooked, o.notLooked);
        return this;
    }

    private static void addAll(long[] mine, long[] others) {
        for (int i = 0; i < mine.length; i++) {
            mine[i] += others[i];
        }
    }

    long repairs() {
        return repairs;
    }

    long backWithin(int window) {
        return backWithin[window];
    }

    long held(int window) {
        return held[window];
    }

    long notLooked(int window) {
        return notLooked[window];
    }

    long cutShort(int window) {
        return repairs - backWithin[window] - held[window] - notLooked[window];
    }

    /** Share back by the end of a window with its limits; NaN with limits 0 and 1 when no repair was followed to there. */
    WilsonInterval share(int window) {
        long atRisk = repairs;
        double holding = 1;
        double greenwood = 0;
        for (int day = 0; day <= windows[window]; day++) {
            if (back[day] > 0) {
                holding *= (double) (atRisk - back[day]) / atRisk;
                greenwood += (double) back[day] / atRisk / (atRisk - back[day]);
            }
            atRisk -= back[day] + (day < windows[window] ? ended[day] : 0);
        }
        if (atRisk == 0 && (holding > 0 || repairs == 0)) {
            return WilsonInterval.of(0, 0, LEVEL);
        }
        // With none back or all back there is no variance to take the number from: that of those still followed, or
        // that of
        // those back, takes its place.
        double effective =
                holding == 1 ? atRisk : holding == 0 ? backWithin[window] : (1 - holding) / (holding * greenwood);
        WilsonInterval limits = WilsonInterval.of(Math.min(effective, (1 - holding) * effective), effective, LEVEL);
        return new WilsonInterval(1 - holding, limits.lower(), limits.upper());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ComebackCells o
                && repairs == o.repairs
                && Arrays.equals(windows, o.windows)
                && Arrays.equals(back, o.back)
                && Arrays.equals(ended, o.ended)
                && Arrays.equals(backWithin, o.backWithin)
                && Arrays.equals(held, o.held)
                && Arrays.equals(notLooked, o.notLooked);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(back);
    }
}
