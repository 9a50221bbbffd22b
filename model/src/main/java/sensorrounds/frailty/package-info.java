/** Lives of one vehicle that are alike: a hazard factor its sensors share, and what one death says about the others. */
package sensorrounds.frailty;
