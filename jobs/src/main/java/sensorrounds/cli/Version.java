package sensorrounds.cli;

import picocli.CommandLine.IVersionProvider;
import sensorrounds.run.Versions;

/** What {@code --version} prints. */
final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
        return new String[] {
            "sensor-rounds " + Versions.own(), "Java " + Runtime.version(), "built for Spark " + Versions.spark()
        };
    }
}
