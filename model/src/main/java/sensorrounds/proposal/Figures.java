package sensorrounds.proposal;

/** Figures of a sample, for counting where they lie; what is kept is always read by the intake. */
final class Figures {
    private Figures() {}

    /** @return NaN for what is no plain figure with this decimal mark */
    static double read(String text, char mark) {
        String plain = mark == '.' ? text : text.indexOf('.') >= 0 ? "" : text.replace(mark, '.');
        return plain.matches("[-+]?\\d+(\\.\\d+)?") ? Double.parseDouble(plain) : Double.NaN;
    }
}
