/** What the engine would have said on days gone by, from what was known then, held against what happened since. */
package sensorrounds.backtest;
