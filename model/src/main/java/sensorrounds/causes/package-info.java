/** Competing causes of an end of life: what share ends by which cause, and what preventive replacement hides. */
package sensorrounds.causes;
