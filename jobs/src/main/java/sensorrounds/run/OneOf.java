package sensorrounds.run;

import java.io.Serializable;
import java.util.Set;
import org.apache.parquet.filter2.predicate.Statistics;
import org.apache.parquet.filter2.predicate.UserDefinedPredicate;
import org.apache.parquet.io.api.Binary;

/**
 * Keeps rows whose text is one of a set. Parquet's own {@code in} looks at a page between the least and the greatest of the
 * set, which for vehicles from all over a fleet is every page, and compares each row with every one of them.
 */
final class OneOf extends UserDefinedPredicate<Binary> implements Serializable {
    private static final long serialVersionUID = 1;

    private final Set<Binary> values;

    OneOf(Set<Binary> values) {
        this.values = values;
    }

    @Override
    public boolean acceptsNullValue() {
        return false;
    }

    @Override
    public boolean keep(Binary value) {
        return value != null && values.contains(value);
    }

    /** A file, a group of rows or a page: none of the texts lies between its least and its greatest. */
    @Override
    public boolean canDrop(Statistics<Binary> page) {
        return values.stream()
                .noneMatch(v -> page.getComparator().compare(page.getMin(), v) <= 0
                        && page.getComparator().compare(v, page.getMax()) <= 0);
    }

    @Override
    public boolean inverseCanDrop(Statistics<Binary> page) {
        return false;
    }
}
