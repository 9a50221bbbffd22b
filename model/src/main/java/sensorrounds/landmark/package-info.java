/** Life still to come from a day on which something was known: after a report, at an age. Nothing later is looked at. */
package sensorrounds.landmark;
