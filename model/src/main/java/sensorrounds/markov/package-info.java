/**
 * Markov models in continuous time for states seen at arbitrary times, with or without error. Knows no sensors; built
 * for any process with a handful of states. Source: Kalbfleisch and Lawless (1985), JASA 80:863-871; Jackson (2011), J.
 * Stat. Software 38(8).
 */
package sensorrounds.markov;
