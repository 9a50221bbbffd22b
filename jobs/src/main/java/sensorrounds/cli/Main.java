package sensorrounds.cli;

/** Entry. */
public final class Main {
    private Main() {}

    public static void main(String[] args) {}
}
