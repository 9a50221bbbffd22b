/** How well predictions of failure held up: order, probability, and number. Knows predictions, not the models behind. */
package sensorrounds.accuracy;
