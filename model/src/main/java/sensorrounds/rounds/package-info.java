/** Rounds of the depots: which vehicles in which week, within what a depot can do. */
package sensorrounds.rounds;
