package sensorrounds.history;

import java.time.LocalDate;
import sensorrounds.visit.BatteryReport;
import sensorrounds.visit.ReadOutcome;
import sensorrounds.visit.WheelPosition;
import sensorrounds.visit.WheelReading;
import sensorrounds.visit.WheelWork;
import sensorrounds.visit.WorkReason;

/** One wheel of a hand-made log. */
final class Wheel {
    private final WheelPosition position;
    private ReadOutcome read = ReadOutcome.NOT_TRIED;
    private String sensorId;
    private Integer attempts;
    private Double sensorKpa;
    private Double gaugeKpa;
    private Boolean hot;
    private Double celsius;
    private BatteryReport battery;
    private WheelWork work;
    private WorkReason reason;
    private String newId;
    private Boolean cloned;
    private LocalDate tyre;
    private String part;

    private Wheel(String position) {
        this.position = WheelPosition.parse(position).orElseThrow();
    }

    static Wheel heard(String position, String id) {
        Wheel w = new Wheel(position);
        w.read = ReadOutcome.OK;
        w.sensorId = id;
        return w;
    }

    static Wheel silent(String position) {
        return silent(position, null);
    }

    static Wheel silent(String position, String id) {
        Wheel w = new Wheel(position);
        w.read = ReadOutcome.NO_ANSWER;
        w.sensorId = id;
        return w;
    }

    static Wheel untried(String position) {
        return new Wheel(position);
    }

    static Wheel notPresent(String position) {
        Wheel w = new Wheel(position);
        w.read = ReadOutcome.NOT_PRESENT;
        return w;
    }

    Wheel replaced(WorkReason why, String with) {
        work = WheelWork.SENSOR_REPLACED;
        reason = why;
        newId = with;
        return this;
    }

    Wheel cloned() {
        cloned = true;
        return this;
    }

    Wheel plainValve(WorkReason why) {
        work = WheelWork.PLAIN_VALVE_FITTED;
        reason = why;
        return this;
    }

    Wheel work(WheelWork what) {
        work = what;
        return this;
    }

    /** @param madeOn first day of the week of the tyre's date code */
    Wheel tyre(String madeOn) {
        tyre = LocalDate.parse(madeOn);
        return this;
    }

    Wheel part(String number) {
        part = number;
        return this;
    }

    Wheel attempts(int n) {
        attempts = n;
        return this;
    }

    Wheel battery(BatteryReport report) {
        battery = report;
        return this;
    }

    Wheel gauge(double kpa) {
        gaugeKpa = kpa;
        return this;
    }

    Wheel sensorKpa(double kpa) {
        sensorKpa = kpa;
        return this;
    }

    Wheel celsius(double inside) {
        celsius = inside;
        return this;
    }

    Wheel hot() {
        hot = true;
        return this;
    }

    WheelReading reading() {
        return new WheelReading(
                position,
                position.code(),
                sensorId,
                read,
                attempts,
                sensorKpa,
                gaugeKpa,
                hot,
                celsius,
                battery,
                part,
                work,
                reason,
                newId,
                null,
                cloned,
                tyre);
    }
}
