package sensorrounds.visit;

import java.io.Serializable;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A place for a wheel: axle counted from the front starting at 1, side facing forward, mount. The spare is axle 0 and
 * has no side. The code is {@code 1L}, {@code 2RI} (second axle, right inner), {@code 2RO}, {@code spare}.
 */
public record WheelPosition(int axle, Side side, Mount mount) implements Serializable, Comparable<WheelPosition> {
    public static final WheelPosition SPARE = new WheelPosition(0, null, Mount.SINGLE);
    /** More axles than any road vehicle this is meant for; a larger number is a slip of the pen. */
    public static final int MAX_AXLE = 9;

    private static final Pattern CODE = Pattern.compile("([1-9])([LR])([IO]?)");

    public WheelPosition {
        if (axle < 0 || axle > MAX_AXLE || mount == null || (side == null) != (axle == 0)) {
            throw new IllegalArgumentException("no such wheel position: axle " + axle + ", side " + side + ", " + mount
                    + "; an axle is 1 to " + MAX_AXLE + " with a side, or 0 without one for the spare");
        }
    }

    /** @return the position with this code, or empty when the text is no position code */
    public static Optional<WheelPosition> parse(String code) {
        String text = code.strip();
        if (text.equalsIgnoreCase("spare")) {
            return Optional.of(SPARE);
        }
        Matcher m = CODE.matcher(text.toUpperCase(Locale.ROOT));
        if (!m.matches()) {
            return Optional.empty();
        }
        Mount mount = switch (m.group(3)) {
            case "I" -> Mount.INNER;
            case "O" -> Mount.OUTER;
            default -> Mount.SINGLE;
        };
        return Optional.of(new WheelPosition(
                Integer.parseInt(m.group(1)), m.group(2).equals("L") ? Side.LEFT : Side.RIGHT, mount));
    }

    public boolean isSpare() {
        return axle == 0;
    }

    public String code() {
        if (isSpare()) {
            return "spare";
        }
        String m = switch (mount) {
            case SINGLE -> "";
            case INNER -> "I";
            case OUTER -> "O";
        };
        return axle + (side == Side.LEFT ? "L" : "R") + m;
    }

    /** The position in words, for people: {@code axle 2, right, inner}. */
    public String words() {
        if (isSpare()) {
            return "spare";
        }
        String m = switch (mount) {
            case SINGLE -> "";
            case INNER -> ", inner";
            case OUTER -> ", outer";
        };
        return "axle " + axle + ", " + (side == Side.LEFT ? "left" : "right") + m;
    }

    /** Front to back, left before right, inner wheels before outer, as the codes do; the spare last. */
    @Override
    public int compareTo(WheelPosition o) {
        int byAxle = Integer.compare(isSpare() ? MAX_AXLE + 1 : axle, o.isSpare() ? MAX_AXLE + 1 : o.axle);
        if (byAxle != 0 || isSpare()) {
            return byAxle;
        }
        int bySide = side.compareTo(o.side);
        return bySide != 0 ? bySide : mount.compareTo(o.mount);
    }

    @Override
    public String toString() {
        return code();
    }
}
