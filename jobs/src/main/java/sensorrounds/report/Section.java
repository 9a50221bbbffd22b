package sensorrounds.report;

/** One section of the report. Each opens with the question it answers and how to read the answer. */
interface Section {
    /** Anchor in the page: lower-case letters and hyphens. */
    String id();

    String title();

    /** The question, in the words of the person who brings it. */
    String question();

    /** One paragraph: what the figures are, what they are not. */
    String howToRead(ReportData data);

    void body(Html h, ReportData data);
}
