package sensorrounds.analyst;

import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;
import sensorrounds.analyst.CovariateCode.CodedLife;
import sensorrounds.regression.CovariateLives;
import sensorrounds.regression.LifeSource;

/** All vehicles of a fleet that is too large to be held for every fit: where they are is the implementation's affair. */
public interface WholeFleet {
    /** Their lives as columns, each life knowing its vehicle. */
    LifeSource lives(CovariateCode code);

    /** How many of them are at each level. */
    LevelCounts counts(CovariateCode code);

    /** A fleet in the memory of one machine. */
    static WholeFleet of(Supplier<Stream<SampledVehicle>> vehicles) {
        return new WholeFleet() {
            @Override
            public LifeSource lives(CovariateCode code) {
                List<List<CodedLife>> coded = vehicles.get().map(code::of).toList();
                List<CodedLife> all = coded.stream().flatMap(List::stream).toList();
                int[] clusters = new int[all.size()];
                int next = 0;
                for (int v = 0; v < coded.size(); v++) {
                    for (int i = 0; i < coded.get(v).size(); i++) {
                        clusters[next++] = v;
                    }
                }
                CovariateLives lives = CovariateLives.of(
                        all.stream().mapToDouble(l -> l.life().entry()).toArray(),
                        all.stream().mapToDouble(l -> l.life().lower()).toArray(),
                        all.stream().mapToDouble(CodedLife::upper).toArray(),
                        all.stream().mapToDouble(l -> 1).toArray());
                for (int j = 0; j < code.names().size(); j++) {
                    int column = j;
                    lives = lives.withColumn(
                            code.names().get(j),
                            all.stream()
                                    .mapToDouble(l -> l.covariates()[column])
                                    .toArray());
                }
                return lives.withClusters(clusters);
            }

            @Override
            public LevelCounts counts(CovariateCode code) {
                LevelCounts counts = new LevelCounts(code);
                vehicles.get().forEach(counts::add);
                return counts;
            }
        };
    }
}
