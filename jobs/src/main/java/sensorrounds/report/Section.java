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

    /** True for a section that needs the lists as long as they are, not the first lines that a reader can use. */
    default boolean needsWholeLists() {
        return false;
    }

    void body(Html h, ReportData data);
}
