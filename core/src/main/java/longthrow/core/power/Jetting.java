package longthrow.core.power;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import longthrow.core.answer.JetAdvice;
import longthrow.core.answer.Rung;
import longthrow.core.cycle.JetChange;
import longthrow.core.cycle.JetChange.Running;
import longthrow.core.cycle.JetSize.Numbering;
import longthrow.core.gas.Fuel;
import longthrow.core.life.Known;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/** What the main jet becomes, from where the present one was right. */
final class Jetting {
    private static final List<Term> BEFORE =
            List.of(Term.JETTED_PRESSURE, Term.JETTED_TEMPERATURE, Term.JETTED_HUMIDITY);

    private static final List<Term> AFTER = List.of(Term.AIR_PRESSURE, Term.AIR_TEMPERATURE, Term.HUMIDITY);

    /** Another fuel is not surely wanted as rich: air to petrol 11.5 to 13.5 at full load, see {@link Usual}, is 8 % either way for each of the two. */
    private static final double RICHNESS_REACH = 0.08;

    /** The same before and after: only its change counts. */
    private static final double MIXTURE = 1.17;

    private static final List<String> READ = List.of(
            "the plug after full load, cut clean: pale or with beads on its insulator is lean, black and dry is rich",
            "the exhaust temperature at full load beside what it was where the jet was right: hotter is leaner, until"
                    + " it misfires",
            "how it pulls under full load: flat, hunting or backfiring through the carburettor is lean, four-stroking"
                    + " and smoke is rich");

    private static final String LEAN =
            "A lean engine runs hot and seizes or burns its piston before it says so: start on the rich side, with the"
                    + " next larger jet than this comes to, and go leaner by one step at a time.";

    private static final String FIRE =
            "Methanol burns with a flame that nobody sees in daylight, and is toxic by skin and lungs: the methanol"
                    + " fire card is to be read before a jet is changed; water puts it out.";

    private Jetting() {}

    /** From what its owner wrote. */
    static JetAdvice of(Known known) {
        List<Rung.Missing> missing = new ArrayList<>();
        Stream.concat(BEFORE.stream(), AFTER.stream())
                .filter(term -> known.figure(term).isEmpty())
                .forEach(term -> missing.addAll(known.missing(term)));
        Optional<Fuel> before = fuel(known, Choice.JETTED_FUEL, missing);
        Optional<Fuel> after = fuel(known, Choice.FUEL, missing);
        List<String> cautions = new ArrayList<>(List.of(LEAN));
        if (Stream.of(Choice.JETTED_FUEL, Choice.FUEL)
                .anyMatch(c -> known.build().chose(c, "methanol"))) {
            cautions.add(FIRE);
        }
        if (!missing.isEmpty()) {
            return new JetAdvice(
                    Optional.empty(),
                    List.of(),
                    missing,
                    READ,
                    cautions,
                    "What the main jet becomes here is not told: it takes the air and the fuel in which the present"
                            + " jet was right, and those of the place where it is to run.");
        }
        List<Measured> there =
                BEFORE.stream().map(t -> known.figure(t).orElseThrow()).toList();
        List<Measured> here =
                AFTER.stream().map(t -> known.figure(t).orElseThrow()).toList();
        return told(known, before.orElseThrow(), there, after.orElseThrow(), here, cautions);
    }

    private static Optional<Fuel> fuel(Known known, Choice choice, List<Rung.Missing> missing) {
        Optional<Fuel> fuel = known.build().choice(choice).flatMap(Fuel::named);
        if (fuel.isEmpty()) {
            missing.add(Known.missing(choice));
        }
        return fuel;
    }

    /** Pressure, temperature and humidity of each place. */
    private static JetAdvice told(
            Known known, Fuel before, List<Measured> there, Fuel after, List<Measured> here, List<String> cautions) {
        boolean another = !before.label().equals(after.label());
        List<Measured> air = Stream.concat(there.stream(), here.stream()).toList();
        double[] at = air.stream().mapToDouble(Measured::value).toArray();
        JetChange bare = change(before, after, at);
        Map<Source, Double> sources = new LinkedHashMap<>();
        double area = bare.areaRatio();
        add(
                sources,
                "model: flow of the jet",
                "what a jet passes in other air or of another fuel",
                area * bare.doubt());
        if (another) {
            double richness = RICHNESS_REACH * Math.sqrt(2) / Math.sqrt(3);
            add(
                    sources,
                    "model: richness of two fuels",
                    "how rich the one and the other fuel is wanted",
                    area * richness);
        }
        for (int i = 0; i < at.length; i++) {
            double u = air.get(i).standardUncertainty();
            if (u > 0) {
                double[] moved = at.clone();
                moved[i] += (i % 3 == 2 && at[i] > 0.5 ? -1 : 1) * 1e-3 * u; // air cannot be moister than saturated
                double slope = (change(before, after, moved).areaRatio() - area) / (moved[i] - at[i]);
                air.get(i).contributions().forEach((source, c) -> sources.merge(source, slope * c, Double::sum));
            }
        }
        Measured areas = Measured.withContributions(area, sources);
        double diameter = bare.diameterRatio();
        Map<Source, Double> half = new LinkedHashMap<>();
        sources.forEach((source, c) -> half.put(source, 0.5 * c * diameter / area));
        JetChange doubted = new JetChange(
                area, areas.standardUncertainty() / area, bare.airRatio(), bare.heatRatio(), bare.volumeRatio());
        JetAdvice.Change change = new JetAdvice.Change(
                areas,
                Measured.withContributions(diameter, half),
                bare.airRatio(),
                bare.heatRatio(),
                bare.volumeRatio(),
                number(doubted, Numbering.FLOW),
                number(doubted, Numbering.HUNDREDTHS_OF_A_MILLIMETRE));
        List<JetAdvice.Buy> buy = JetSizes.next(known, bare);
        return new JetAdvice(
                Optional.of(change),
                buy,
                List.of(),
                READ,
                cautions,
                said(change, before, after, another, JetSizes.counts(known)) + JetSizes.said(buy));
    }

    private static JetChange change(Fuel before, Fuel after, double[] at) {
        return JetChange.of(
                new Running(before, MIXTURE, JetChange.dryAirDensity(at[0], at[1], at[2])),
                new Running(sameOr(before, after), MIXTURE, JetChange.dryAirDensity(at[3], at[4], at[5])));
    }

    /** One fuel named twice is one fuel: its density then does not count. */
    private static Fuel sameOr(Fuel before, Fuel after) {
        return before.label().equals(after.label()) ? before : after;
    }

    private static void add(Map<Source, Double> sources, String id, String label, double u) {
        sources.put(Source.known(id, Source.Kind.ASSUMED, label, u), u);
    }

    private static JetAdvice.Numbered number(JetChange change, Numbering meaning) {
        JetChange.Numbers numbers = change.numbers(Optional.of(meaning));
        return new JetAdvice.Numbered(numbers.physics(), numbers.leanest(), numbers.richest());
    }

    private static String said(
            JetAdvice.Change change, Fuel before, Fuel after, boolean another, boolean isCountingKnown) {
        String said = String.format(
                Locale.ROOT,
                "The dry air here is %.3f times as dense as where the jet was right. Its area becomes %s (± %.1f %%),"
                        + " its diameter %s: a number that counts flow %s (%s to %s with the rule of the trade), one that"
                        + " counts diameter %s (%s to %s).%s",
                change.air(),
                percent(change.area().value()),
                100 * change.area().expanded() / change.area().value(),
                percent(change.diameter().value()),
                percent(change.asFlow().physics()),
                percent(change.asFlow().leanest()),
                percent(change.asFlow().richest()),
                percent(change.asDiameter().physics()),
                percent(change.asDiameter().leanest()),
                percent(change.asDiameter().richest()),
                isCountingKnown
                        ? ""
                        : " Which of both the number counts is asked of its maker; not knowing it, start with the"
                                + " richer.");
        if (!another) {
            return said;
        }
        return said
                + String.format(
                        Locale.ROOT,
                        " On %s instead of %s a kilogram of air sets %s heat free, and the same air takes %.2f times"
                                + " the fuel by volume: tank, tap and float valve have to pass that too.",
                        after.label(),
                        before.label(),
                        percent(change.heat()),
                        change.volume());
    }

    private static String percent(double ratio) {
        return String.format(Locale.ROOT, "%+.1f %%", 100 * (ratio - 1));
    }
}
