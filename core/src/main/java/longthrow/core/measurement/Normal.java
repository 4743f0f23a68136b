package longthrow.core.measurement;

/** The normal distribution, fast: the library's is twenty times slower and these are called by the thousand. */
public final class Normal {
    private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

    private Normal() {}

    /** Height of the curve at z. */
    public static double density(double z) {
        return Math.exp(-0.5 * z * z) / ROOT_TWO_PI;
    }

    /** Share below z. Hart (1968), algorithm 5666, as given by West (2005), Better approximations to cumulative normal functions; good to 1e-15; from memory. */
    public static double atMost(double z) {
        double x = Math.abs(z);
        if (x > 37) {
            return z > 0 ? 1 : 0;
        }
        double tail;
        double e = Math.exp(-0.5 * x * x);
        if (x < 7.071_067_811_865_47) {
            double above = 3.526_249_659_989_11e-2 * x + 0.700_383_064_443_688;
            above = above * x + 6.373_962_203_531_65;
            above = above * x + 33.912_866_078_383;
            above = above * x + 112.079_291_497_871;
            above = above * x + 221.213_596_169_931;
            above = above * x + 220.206_867_912_376;
            double below = 8.838_834_764_831_84e-2 * x + 1.755_667_163_182_64;
            below = below * x + 16.064_177_579_207;
            below = below * x + 86.780_732_202_946_1;
            below = below * x + 296.564_248_779_674;
            below = below * x + 637.333_633_378_831;
            below = below * x + 793.826_512_519_948;
            below = below * x + 440.413_735_824_752;
            tail = e * above / below;
        } else {
            tail = e / (x + 1 / (x + 2 / (x + 3 / (x + 4 / (x + 0.65))))) / 2.506_628_274_631;
        }
        return z > 0 ? 1 - tail : tail;
    }
}
