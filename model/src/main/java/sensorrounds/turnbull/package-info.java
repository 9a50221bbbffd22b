/** Nonparametric maximum likelihood of survival from lives known to intervals, with delayed entry. */
package sensorrounds.turnbull;
