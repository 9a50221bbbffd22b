package sensorrounds.backtest;

/** What was said of a sensor, and what became of it. */
public record Judged(Forecast forecast, Fate fate) {}
