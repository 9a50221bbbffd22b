package sensorrounds.condition;

import java.util.Arrays;
import sensorrounds.condition.RoadVisits.Sign;

/**
 * The life of one sensor as the likelihood walks it: the time between readings, cut where the pieces of age or the season
 * do. Work space, used again for each sensor; one per thread.
 */
final class HiddenSteps {
    private static final int PLAIN = HiddenReadings.context(false, Sign.NONE);

    int count;
    int cohort;
    int[] piece = new int[64];
    /** 0 for all the year where there is no season. */
    int[] season = new int[64];

    int[] days = new int[64];
    /** What was seen at the end of the step. */
    int[] code = new int[64];

    int[] context = new int[64];

    private final HiddenCohorts cohorts;
    private final ColdSeason seasons;

    HiddenSteps(HiddenTables tables) {
        cohorts = tables.cohorts;
        seasons = tables.season;
    }

    void layOut(HiddenReadings readings) {
        count = 0;
        cohort = readings.cohort();
        int age = readings.entryDays();
        int at = cohorts.pieceAt(age);
        int turns = seasons.turnsUpTo(readings.fittedDay() + age);
        for (int r = 0; r < readings.size(); r++) {
            int to = readings.age(r);
            int seen = readings.context(r);
            while (true) {
                int end = cohorts.from(at + 1);
                int turn = seasons.turn(turns) - readings.fittedDay();
                int cut = Math.min(end, turn);
                if (to <= cut) {
                    break;
                }
                add(at, ColdSeason.season(turns), cut - age, HiddenReadings.NOT_READ, PLAIN | (seen & 1));
                age = cut;
                at += cut == end ? 1 : 0;
                turns += cut == turn ? 1 : 0;
            }
            add(at, ColdSeason.season(turns), to - age, readings.code(r), seen);
            age = to;
        }
    }

    private void add(int newPiece, int newSeason, int newDays, int newCode, int newContext) {
        if (count == piece.length) {
            int longer = 2 * count;
            piece = Arrays.copyOf(piece, longer);
            season = Arrays.copyOf(season, longer);
            days = Arrays.copyOf(days, longer);
            code = Arrays.copyOf(code, longer);
            context = Arrays.copyOf(context, longer);
        }
        piece[count] = newPiece;
        season[count] = newSeason;
        days[count] = newDays;
        code[count] = newCode;
        context[count] = newContext;
        count++;
    }
}
