/** Tests of whether groups of lives differ: the log-rank family, and score tests for lives known to intervals. */
package sensorrounds.ranktest;
