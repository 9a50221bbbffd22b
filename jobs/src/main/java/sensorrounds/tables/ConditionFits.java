package sensorrounds.tables;

import static sensorrounds.tables.Column.number;
import static sensorrounds.tables.Column.text;

import java.util.List;
import sensorrounds.condition.ConditionFigure;

/** Stored table of the fitted model of good, weak and dead sensors. */
public final class ConditionFits {
    public static final Table<ConditionFigure> TABLE = new Table<>(
            "condition_fit",
            "The fitted model of good, weak and dead sensors that the outlooks rest on, or why there is none.",
            List.of(
                    text(
                            "figure",
                            "Name of the figure; the first line says what came of the fit.",
                            ConditionFigure::name),
                    number("value", "Its value; null for a line of words alone.", ConditionFigure::value),
                    number("lower", "Lower 95 % limit.", ConditionFigure::lower),
                    number("upper", "Upper 95 % limit.", ConditionFigure::upper),
                    text("meaning", "What it says.", ConditionFigure::meaning)));

    private ConditionFits() {}
}
