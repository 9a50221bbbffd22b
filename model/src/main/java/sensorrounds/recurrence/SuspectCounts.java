package sensorrounds.recurrence;

/** Expected numbers of sensors and vehicles at each level, as the learning goes through the flagged vehicles. */
final class SuspectCounts {
    final SignLaw.Counts wake = SignLaw.Counts.of(SuspectFigures.WAKE);
    final SignLaw.Counts silence = SignLaw.Counts.of(SuspectFigures.SILENCE);
    final SignLaw.Counts low = SignLaw.Counts.of(SuspectFigures.LOW);
    final SignLaw.Counts apart = SignLaw.Counts.of(SuspectFigures.APART);
    final double[] naming = new double[SuspectFigures.NAMING.length];
    final double[] misnaming = new double[SuspectFigures.MISNAMING.length];
    final double[] lead = new double[SuspectFigures.LEAD.length];
    /** Causes by age class, and what their number is measured by. */
    final double[] causes = new double[SuspectFigures.AGE_CLASSES];

    final double[] exposed = new double[SuspectFigures.AGE_CLASSES];
    /** Logarithm of the likelihood of all that was seen. */
    double logLikelihood;
}
