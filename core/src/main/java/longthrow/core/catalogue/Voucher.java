package longthrow.core.catalogue;

/**
 * Who stands behind the figures of a row.
 * @param basis claimed by the seller or measured on a real piece
 * @param by    who; empty when not said
 * @param when  as written, a date; empty when not said
 * @param batch of the piece; empty when not said
 */
public record Voucher(Basis basis, String by, String when, String batch) {
    public static final Voucher CLAIMED = new Voucher(Basis.CLAIMED, "", "", "");

    /** Claimed or measured. */
    public enum Basis {
        CLAIMED("claimed"),
        MEASURED("measured");

        private final String key;

        Basis(String key) {
            this.key = key;
        }

        public String key() {
            return key;
        }
    }
}
