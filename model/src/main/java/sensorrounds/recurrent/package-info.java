/** Statistics of recurrent events: mean cumulative function, rates that change with time, tests of trend. */
package sensorrounds.recurrent;
