package longthrow.buildfile.log;

/** The bytes of a log, wherever they are kept; only ever read. May be read by several threads at once. */
public interface LogSource {
    /** How many bytes there are. */
    long size();

    /**
     * Copies bytes out.
     * @param at     of the first, from 0
     * @param into   receives them
     * @param offset in it
     * @param count  how many; all of them are there
     */
    void read(long at, byte[] into, int offset, int count);

    /** Bytes in memory; not copied. */
    static LogSource of(byte[] bytes) {
        return new LogSource() {
            @Override
            public long size() {
                return bytes.length;
            }

            @Override
            public void read(long at, byte[] into, int offset, int count) {
                System.arraycopy(bytes, Math.toIntExact(at), into, offset, count);
            }
        };
    }
}
