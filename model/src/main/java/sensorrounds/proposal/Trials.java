package sensorrounds.proposal;

import java.util.List;
import java.util.Map;
import java.util.Set;
import sensorrounds.intake.FieldTrial;
import sensorrounds.intake.IdForm;
import sensorrounds.intake.Layout;

/** Trials of single texts under the conventions that a proposal has to choose between. */
final class Trials {
    private Trials() {}

    static FieldTrial canonical() {
        return new FieldTrial(Layout.CANONICAL);
    }

    static FieldTrial decimalMark(char mark) {
        return new FieldTrial(layout(mark, null, null, IdForm.CANONICAL));
    }

    static FieldTrial dates(String dateFormat, String dateTimeFormat) {
        return new FieldTrial(layout('.', dateFormat, dateTimeFormat, IdForm.CANONICAL));
    }

    static FieldTrial ids(IdForm form) {
        return new FieldTrial(layout('.', null, null, form));
    }

    private static Layout layout(char mark, String dateFormat, String dateTimeFormat, IdForm ids) {
        return new Layout(
                "trial",
                List.of(),
                ',',
                "UTF-8",
                mark,
                dateFormat,
                dateTimeFormat,
                null,
                Map.of(),
                Set.of(),
                Map.of(),
                Map.of(),
                ids,
                Set.of());
    }
}
