/** Numerical ground floor: special functions, log-space arithmetic, small dense matrices, maximisation. Knows no domain. */
package sensorrounds.numeric;
