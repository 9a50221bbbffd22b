package sensorrounds.ingest;

/**
 * What a store knows of a log it has read.
 *
 * @param bytes size when it was read
 * @param modified when it had been written last, milliseconds by the clock of its file system
 * @param checksum of its content, as {@link Checksums} has it
 * @param layout word for the layout it was read with, as {@link LayoutDigest} has it
 * @param segment segment of the store that holds its rows
 * @param rows rows in it
 * @param quarantined rows that could not be used, before duplicates are known
 */
record StoredLog(long bytes, long modified, String checksum, String layout, int segment, long rows, long quarantined) {
    /** As {@link #isAsBefore}, but for the time it was written. */
    boolean hasForm(LogFile file) {
        return bytes == file.bytes() && layout.equals(LayoutDigest.of(file.layout()));
    }

    /** By size, time and layout. */
    boolean isAsBefore(LogFile file) {
        return modified == file.modified() && hasForm(file);
    }

    StoredLog writtenAt(long time) {
        return new StoredLog(bytes, time, checksum, layout, segment, rows, quarantined);
    }

    StoredLog in(int otherSegment) {
        return new StoredLog(bytes, modified, checksum, layout, otherSegment, rows, quarantined);
    }
}
