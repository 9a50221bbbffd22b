package sensorrounds.cli;

import org.apache.logging.log4j.Level;
import org.apache.logging.log4j.LogManager;
import org.apache.logging.log4j.core.LogEvent;
import org.apache.logging.log4j.core.LoggerContext;
import org.apache.logging.log4j.core.appender.AbstractAppender;
import org.apache.logging.log4j.core.config.LoggerConfig;
import org.apache.logging.log4j.core.config.Property;

/** All lines that Spark, Hadoop and we log from level INFO on, as somebody would see them who turned logging up. */
final class LoggedLines extends AbstractAppender implements AutoCloseable {
    private final StringBuffer lines = new StringBuffer();
    private final LoggerContext context;
    private final Level before;

    private LoggedLines(LoggerContext context) {
        super("everything", null, null, true, Property.EMPTY_ARRAY);
        this.context = context;
        this.before = context.getConfiguration().getRootLogger().getLevel();
    }

    static LoggedLines listen() {
        LoggedLines lines = new LoggedLines((LoggerContext) LogManager.getContext(false));
        lines.start();
        LoggerConfig root = lines.context.getConfiguration().getRootLogger();
        root.getAppenders().values().forEach(a -> root.removeAppender(a.getName()));
        root.addAppender(lines, Level.ALL, null);
        root.setLevel(Level.INFO);
        lines.context.updateLoggers();
        return lines;
    }

    @Override
    public void append(LogEvent event) {
        lines.append(event.getLoggerName())
                .append(' ')
                .append(event.getMessage().getFormattedMessage())
                .append('\n');
        for (Throwable t = event.getThrown(); t != null; t = t.getCause()) {
            lines.append(t).append('\n');
        }
    }

    String text() {
        return lines.toString();
    }

    @Override
    public void close() {
        LoggerConfig root = context.getConfiguration().getRootLogger();
        root.setLevel(before);
        root.removeAppender(getName());
        // The file's own appender comes back with its configuration.
        context.reconfigure();
        stop();
    }
}
