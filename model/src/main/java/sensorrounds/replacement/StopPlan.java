package sensorrounds.replacement;

import java.util.BitSet;

/**
 * What is done at a vehicle now, if anything. Costs and savings of its lines add up to those of the stop.
 *
 * @param advice REPLACE_NOW or READ_FIRST; null for no stop
 * @param lines sensors that the stop is made for, by their index
 * @param costs cost of each line
 * @param savings saving of each line
 * @param saving of the whole stop
 */
record StopPlan(Advice advice, BitSet lines, double[] costs, double[] savings, double saving) {
    static StopPlan none() {
        return new StopPlan(null, new BitSet(), new double[0], new double[0], 0);
    }

    int size() {
        return lines.cardinality();
    }
}
