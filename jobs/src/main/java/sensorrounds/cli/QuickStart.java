package sensorrounds.cli;

import java.io.PrintWriter;
import java.io.Writer;

/**
 * Goes through the commands that should start quickly, so that one archive of the classes they use can be made. Called by
 * the launcher; what the commands print is of no interest.
 */
final class QuickStart {
    private QuickStart() {}

    /** @param args data folder, and a scratch folder to write in */
    public static void main(String[] args) {
        PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
        String store = args[1] + "/store";
        String out = args[1] + "/out";
        Main.execute(new String[] {"ingest", "--data", args[0], "--store", store}, nowhere, nowhere);
        Main.execute(new String[] {"run", "--data", args[0], "--out", out}, nowhere, nowhere);
        System.exit(0);
    }
}
