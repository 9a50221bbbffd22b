package sensorrounds.ingest;

import java.util.Collections;
import java.util.Iterator;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.catalyst.InternalRow;
import org.apache.spark.sql.execution.ColumnarToRowExec;
import org.apache.spark.sql.execution.InputAdapter;
import org.apache.spark.sql.execution.SparkPlan;
import org.apache.spark.sql.execution.WholeStageCodegenExec;
import org.apache.spark.sql.vectorized.ColumnarBatch;

/**
 * The rows of a dataset as Spark has them inside. Where they come straight from Parquet, they are looked at in the columns
 * as these were decoded: of some fifty columns most are null in most rows, and need not be copied into a row first.
 */
final class InnerRows {
    private InnerRows() {}

    /** @return rows of which each is valid only until the next is asked for */
    static JavaRDD<InternalRow> of(Dataset<Row> rows) {
        var execution = ((org.apache.spark.sql.classic.Dataset<Row>) rows).queryExecution();
        SparkPlan plan = execution.executedPlan();
        boolean wrapped = true;
        while (wrapped) {
            wrapped = plan instanceof WholeStageCodegenExec
                    || plan instanceof InputAdapter
                    || plan instanceof ColumnarToRowExec;
            plan = wrapped ? plan.children().head() : plan;
        }
        return plan.supportsColumnar()
                ? plan.executeColumnar().toJavaRDD().mapPartitions(Walk::new)
                : execution.toRdd().toJavaRDD();
    }

    /** Row by row through the batches. */
    private static final class Walk implements Iterator<InternalRow> {
        private final Iterator<ColumnarBatch> batches;
        private Iterator<InternalRow> rows = Collections.emptyIterator();

        Walk(Iterator<ColumnarBatch> batches) {
            this.batches = batches;
        }

        @Override
        public boolean hasNext() {
            // The next batch takes the place of the one before, so it is asked for only when that one is used up.
            while (!rows.hasNext() && batches.hasNext()) {
                rows = batches.next().rowIterator();
            }
            return rows.hasNext();
        }

        @Override
        public InternalRow next() {
            return hasNext()
                    ? rows.next()
                    : Collections.<InternalRow>emptyIterator().next();
        }
    }
}
