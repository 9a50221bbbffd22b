/** Which months are cold where, from logged air temperatures; what the cold does to the hazard of sensors. */
package sensorrounds.season;
