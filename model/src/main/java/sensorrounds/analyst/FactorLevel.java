package sensorrounds.analyst;

import java.io.Serializable;

/**
 * One level of a factor among the lives of a regression.
 *
 * @param name the level; of several merged ones their names
 * @param reference whether the others are compared with it
 */
record FactorLevel(Factor factor, String name, long lives, long failures, boolean reference) implements Serializable {
    String column() {
        return factor + "=" + name;
    }
}
