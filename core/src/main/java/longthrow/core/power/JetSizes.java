package longthrow.core.power;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import longthrow.core.answer.JetAdvice.Buy;
import longthrow.core.cycle.JetChange;
import longthrow.core.cycle.JetSize.Numbering;
import longthrow.core.life.Known;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/** Main jets and drills that are to be had, and the next of them to the rich side. */
final class JetSizes {
    /** Between numbers that are sold: common practice, no source. */
    private static final double HUNDREDTHS_STEP = 2.5;

    private static final double THOUSANDTHS_STEP = 1;

    /** Between numbers that count flow [as the number]: common practice, no source; another maker may have others. */
    private static final double FLOW_STEP = 5;

    /** Metric drills in hundredths of a millimetre: ISO 235, from memory. */
    private static final double DRILL_STEP = 5;

    /** Number drills 80 to 41 in thousandths of an inch: ASME B94.11M, from memory. */
    private static final double[] NUMBER_DRILLS = {
        13.5, 14.5, 16, 18, 20, 21, 22.5, 24, 25, 26, 28, 29.2, 31, 32, 33, 35, 36, 37, 38, 39, 40, 41, 42, 43, 46.5,
        52, 55, 59.5, 63.5, 67, 70, 73, 76, 78.5, 81, 82, 86, 89, 93.5, 96
    };

    private static final String NUMBER = "number of the jet in ";
    private static final String DRILL = "drill in hundredths of a millimetre";
    private static final String NUMBER_DRILL = "number drill in thousandths of an inch";

    private JetSizes() {}

    /** From the present jet's number where it is told what that counts, else from its bore. */
    static List<Buy> next(Known known, JetChange change) {
        Optional<String> word = known.build().choice(Choice.MAIN_JET_NUMBERING);
        Optional<Measured> number = known.figure(Term.MAIN_JET_NUMBER);
        Optional<Numbering> numbering = word.flatMap(JetMixture::numbering);
        if (number.isPresent() && numbering.isPresent()) {
            double step = switch (numbering.get()) {
                case HUNDREDTHS_OF_A_MILLIMETRE -> HUNDREDTHS_STEP;
                case THOUSANDTHS_OF_AN_INCH -> THOUSANDTHS_STEP;
                case FLOW -> FLOW_STEP;
            };
            String counts = switch (numbering.get()) {
                case HUNDREDTHS_OF_A_MILLIMETRE -> "hundredths of a millimetre";
                case THOUSANDTHS_OF_AN_INCH -> "thousandths of an inch";
                case FLOW -> "its maker's flow";
            };
            return List.of(stepped(NUMBER + counts, change, number.get().value(), numbering.get(), step));
        }
        Optional<Measured> bore = known.figure(Term.MAIN_JET_DRILL);
        if (bore.isEmpty()) {
            return List.of();
        }
        List<Buy> drills = new ArrayList<>();
        drills.add(stepped(DRILL, change, bore.get().value() * 1e5, Numbering.HUNDREDTHS_OF_A_MILLIMETRE, DRILL_STEP));
        double thou = bore.get().value() / 25.4e-6;
        TreeSet<Double> sizes = new TreeSet<>();
        for (double drill : NUMBER_DRILLS) {
            sizes.add(drill);
        }
        sizes.add(thou); // it may stay as it is
        if (thou * change.diameterRatio() >= NUMBER_DRILLS[0]
                && thou * change.diameterRatio() <= NUMBER_DRILLS[NUMBER_DRILLS.length - 1]) {
            drills.add(chosen(NUMBER_DRILL, change, thou, Numbering.THOUSANDTHS_OF_AN_INCH, sizes));
        }
        return drills;
    }

    /** Whether it is told what the number counts. */
    static boolean counts(Known known) {
        return known.build()
                .choice(Choice.MAIN_JET_NUMBERING)
                .flatMap(JetMixture::numbering)
                .isPresent();
    }

    private static Buy stepped(String what, JetChange change, double present, Numbering numbering, double step) {
        double wanted = present * Math.pow(change.areaRatio(), 1.0 / numbering.power());
        TreeSet<Double> sizes = new TreeSet<>();
        sizes.add(present);
        for (double k = Math.floor(wanted / step); k <= Math.ceil(wanted / step) + 1; k++) {
            if (k > 0) {
                sizes.add(k * step);
            }
        }
        return chosen(what, change, present, numbering, sizes);
    }

    private static Buy chosen(String what, JetChange change, double present, Numbering numbering, Set<Double> sizes) {
        JetChange.Choice choice = change.choose(present, numbering, sizes, 0);
        return new Buy(what, present, choice.number(), choice.fuelShare());
    }

    static String said(List<Buy> buy) {
        StringBuilder said = new StringBuilder();
        for (Buy one : buy) {
            if (one.next() == one.present()) {
                said.append(String.format(
                        Locale.ROOT,
                        " As %s: %s stays, for the next smaller to be had is leaner than this comes to.",
                        one.what(),
                        printed(one.present())));
                continue;
            }
            said.append(String.format(
                    Locale.ROOT,
                    " The next to be had to the rich side, as %s: %s in place of %s, which passes %.1f %% more fuel than this comes to.",
                    one.what(),
                    printed(one.next()),
                    printed(one.present()),
                    100 * (one.fuelShare() - 1)));
        }
        return said.toString();
    }

    private static String printed(double number) {
        String text = String.format(Locale.ROOT, "%.1f", number);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }
}
