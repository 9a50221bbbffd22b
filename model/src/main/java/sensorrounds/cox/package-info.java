/** Proportional hazards regression by partial likelihood: the analyst's tool, and a check on the parametric fits. */
package sensorrounds.cox;
