package sensorrounds.cli;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import sensorrounds.ingest.Pseudonyms.Technicians;
import sensorrounds.run.RunOptions;

/** How personal data is replaced before it is stored; shared by the commands that store rows of logs. */
final class PseudonymOption {
    @Option(
            names = "--pseudonymise",
            paramLabel = "KEYFILE",
            description =
                    "Store number plates and VINs as keyed hashes, and no free text. KEYFILE holds 32 or more random"
                            + " bytes; the same key gives the same hashes. A store takes one key.")
    private String keyFile;

    @Option(names = "--pseudonymise-technicians", description = "With --pseudonymise: technicians too.")
    private boolean technicians;

    /**
     * @return null when personal data is kept
     * @throws ParameterException for technicians without a key
     */
    RunOptions.PseudonymOptions options(CommandSpec command) {
        if (technicians && keyFile == null) {
            throw new ParameterException(
                    command.commandLine(), "--pseudonymise-technicians needs --pseudonymise KEYFILE beside it");
        }
        return keyFile == null
                ? null
                : new RunOptions.PseudonymOptions(keyFile, technicians ? Technicians.REPLACED : Technicians.KEPT);
    }
}
