package longthrow.core.term;

/**
 * Range in which a reading of an 80-500 cc single is believable [SI]; outside it the reading is questioned, never dropped.
 * Ranges: workshop manuals' usual figures, widened; common practice, no source.
 */
public record Believable(double least, double most) {
    public Believable {
        if (!(least < most)) {
            throw new IllegalArgumentException("range from " + least + " to " + most + " is empty");
        }
    }

    static Believable mm(double least, double most) {
        return new Believable(least * 1e-3, most * 1e-3);
    }

    static Believable cc(double least, double most) {
        return new Believable(least * 1e-6, most * 1e-6);
    }

    static Believable mm2(double least, double most) {
        return new Believable(least * 1e-6, most * 1e-6);
    }

    static Believable deg(double least, double most) {
        return new Believable(Math.toRadians(least), Math.toRadians(most));
    }

    static Believable grams(double least, double most) {
        return new Believable(least * 1e-3, most * 1e-3);
    }

    static Believable rpm(double least, double most) {
        return new Believable(least * Math.PI / 30, most * Math.PI / 30);
    }

    static Believable si(double least, double most) {
        return new Believable(least, most);
    }

    /** Both ends included, as they are written in another unit, too. */
    public boolean holds(double value) {
        double roundOff = 1e-12 * Math.max(Math.abs(least), Math.abs(most));
        return value >= least - roundOff && value <= most + roundOff;
    }

    public double middle() {
        return 0.5 * (least + most);
    }

    public double width() {
        return most - least;
    }
}
