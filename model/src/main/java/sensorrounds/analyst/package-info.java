/** What is worked out for the analyst from the estimators of life: who lives longer, what a report foretells, how alike sets are. */
package sensorrounds.analyst;
