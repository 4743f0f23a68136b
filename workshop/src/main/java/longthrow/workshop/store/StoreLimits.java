package longthrow.workshop.store;

/**
 * How much the store takes, all in bytes unless said otherwise. The numbers are our own choice; none comes from a standard.
 *
 * @param textBytes            a build file in UTF-8
 * @param fileBytes            an attached file or a catalogue
 * @param archiveBytes         an archive as it arrives
 * @param archiveEntries       entries of an archive, a count
 * @param archiveContentBytes  an archive unpacked
 * @param archiveRatio         how many times its packed size an archive may unpack to, beyond {@link #archiveFreeBytes}
 * @param archiveFreeBytes     up to this unpacked size no ratio is asked: short texts that repeat themselves pack very well
 */
public record StoreLimits(
        long textBytes,
        long fileBytes,
        long archiveBytes,
        int archiveEntries,
        long archiveContentBytes,
        int archiveRatio,
        long archiveFreeBytes) {
    /**
     * A build file: a hundred times a full one. A file: the log of an hour at 1 kHz, 150 MB; several of the largest catalogues that are read.
     * Archive: some hundred photos, or a hundred thousand revisions. Ratio: build files pack about 4 to 10 times.
     */
    public static final StoreLimits DEFAULT =
            new StoreLimits(1L << 20, 256L << 20, 4L << 30, 200_000, 8L << 30, 100, 256L << 20);

    /** The same with another limit for attached files and catalogues. */
    public StoreLimits withFileBytes(long bytes) {
        return new StoreLimits(
                textBytes, bytes, archiveBytes, archiveEntries, archiveContentBytes, archiveRatio, archiveFreeBytes);
    }
}
