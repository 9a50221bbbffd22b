package sensorrounds.condition;

import java.io.Serializable;

/** A point of the search with the model it belongs to; what depends on both alone is worked out once on each machine. */
public final class HiddenPoint implements Serializable {
    private static final long serialVersionUID = 1;

    private final HiddenParameters parameters;
    private final HiddenModel model;
    private transient HiddenTables tables;

    public HiddenPoint(HiddenParameters parameters, HiddenModel model) {
        this.parameters = parameters;
        this.model = model;
    }

    HiddenParameters parameters() {
        return parameters;
    }

    HiddenModel model() {
        return model;
    }

    synchronized HiddenTables tables() {
        if (tables == null) {
            tables = new HiddenTables(parameters, model);
        }
        return tables;
    }
}
