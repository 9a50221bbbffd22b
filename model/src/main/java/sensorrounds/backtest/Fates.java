package sensorrounds.backtest;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import sensorrounds.backtest.Fate.Ending;
import sensorrounds.history.LifeEnd;

/** What became of the sensors, by the lives as they are known today. A sensor that went to another vehicle is followed. */
public final class Fates {
    private final Map<String, LifeFate> lives = new HashMap<>();
    private final Map<String, LifeFate> continuations = new HashMap<>();

    /** @param today lives that were forecast, and all that continue another vehicle's */
    public Fates(Collection<LifeFate> today) {
        for (LifeFate life : today) {
            lives.put(life.lifeId(), life);
            if (life.continues() != null) {
                continuations.put(life.continues(), life);
            }
        }
    }

    /** What is known since {@code cut} of the sensor whose life had this key then. */
    public Fate of(String lifeId, LocalDate cut) {
        LifeFate life = lives.get(lifeId);
        if (life == null) {
            return Fate.notFound();
        }
        LocalDate worked = life.workedOn();
        Set<String> followed = new HashSet<>();
        while (life.end() == LifeEnd.MOVED && followed.add(life.lifeId()) && continuations.containsKey(life.lifeId())) {
            life = continuations.get(life.lifeId());
            worked = life.workedOn() == null ? worked : life.workedOn();
        }
        long workedOn = worked == null ? 0 : ChronoUnit.DAYS.between(cut, worked);
        if (life.end() == LifeEnd.FAILED && life.failedBy() != null) {
            long failedBy = ChronoUnit.DAYS.between(cut, life.failedBy());
            return new Fate(Math.min(workedOn, failedBy - 1), failedBy, Ending.FAILED);
        }
        return new Fate(workedOn, Double.POSITIVE_INFINITY, ending(life.end()));
    }

    private static Ending ending(LifeEnd end) {
        return switch (end) {
            case IN_SERVICE -> Ending.IN_SERVICE;
            case PREVENTIVE -> Ending.REPLACED_WORKING;
            case FAILED, PROCESS, LOST, LEFT_FLEET, MOVED, PLACE_SUSPECTED -> Ending.OTHER;
        };
    }
}
