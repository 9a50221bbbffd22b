package sensorrounds.story;

import java.util.ArrayList;
import java.util.List;

/** The sensors the vehicle has had, with the basis of their age. */
final class LifeLines {
    private LifeLines() {}

    static Page.Part part(VehicleFacts facts) {
        List<StoredRow> lives = facts.rows("sensor-lives");
        List<Block> blocks = new ArrayList<>();
        if (!lives.isEmpty()) {
            blocks.add(new Block.Grid(
                    "Sensors over time",
                    List.of("place", "sensor", "on since", "by", "until", "what became of it", "last answer", "part"),
                    lives.stream().map(LifeLines::row).toList()));
        }
        return new Page.Part("lives", "Its sensors", blocks);
    }

    private static List<String> row(StoredRow l) {
        return List.of(
                l.place(),
                l.orEmpty("sensor_id") + (l.whole("generation") > 1 ? " (" + l.text("generation") + ")" : ""),
                l.has("fitted_on") ? l.text("fitted_on") : "not known",
                basis(l),
                l.has("ended_on") ? l.text("ended_on") : "now",
                end(l),
                l.has("last_answered") ? l.text("last_answered") : "never",
                l.orEmpty("part"));
    }

    private static String basis(StoredRow l) {
        return switch (l.orEmpty("basis")) {
            case "RECORDED_FITTING" -> "record";
            case "VEHICLE_FIRST_USE" -> "first use";
            default -> Say.NONE;
        };
    }

    static String end(StoredRow l) {
        String cause = l.has("cause") && !l.is("cause", "UNKNOWN") ? ", " + l.words("cause") : "";
        return switch (l.orEmpty("life_end")) {
            case "IN_SERVICE" -> l.has("first_weak") ? "in service, battery low" : "in service";
            case "FAILED" -> "failed" + cause;
            case "PREVENTIVE" -> "replaced while it answered";
            case "PROCESS" -> "sound, a slip of process";
            case "LOST" -> "lost or laid aside";
            case "LEFT_FLEET" -> "left with the vehicle";
            case "PLACE_SUSPECTED" -> "silent, place suspected";
            default -> l.words("life_end");
        };
    }
}
