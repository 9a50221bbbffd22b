/**
 * Laws of life whose scale, and shape where asked, depend on covariates: accelerated failure time regression under any
 * mix of censoring with delayed entry.
 */
package sensorrounds.regression;
