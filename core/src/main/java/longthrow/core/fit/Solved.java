package longthrow.core.fit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.PartKind;
import longthrow.core.engine.Compression;
import longthrow.core.engine.Rule;
import longthrow.core.engine.Stack;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measure.Appraisal;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Figure;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/** The stack solved for any one of its figures: what it would have to be for the squish aimed at, with the doubt of the others, and the window that rules leave. */
final class Solved {
    private final Build build;
    private final Appraisal own;
    private final FigurePrinter printer;

    private Solved(Build build, Appraisal own) {
        this.build = build;
        this.own = own;
        this.printer = new FigurePrinter(build.units());
    }

    static List<Finding> findings(Build build, Appraisal own, Catalogue catalogue) {
        return new Solved(build, own).all(catalogue);
    }

    private List<Finding> all(Catalogue catalogue) {
        List<Finding> chamber = chamber();
        Quantity aim = build.aims().get(Term.SQUISH);
        if (aim == null && build.chose(Choice.VALVE_LAYOUT, "side")) {
            return chamber; // its gap above the piston is the chamber's, not a squish to aim at
        }
        boolean ownLeast = build.ownRules().stream()
                .anyMatch(r -> r.term() == Term.SQUISH && r.lower().isPresent());
        if (aim == null && ownLeast) {
            return chamber; // the search keeps to his limit; an aim besides is for him to want
        }
        if (aim == null) {
            return List.of(new Finding(
                    Finding.Kind.NOTE,
                    "aims",
                    "no squish is aimed at, so the stack is not solved for any of its figures",
                    "write aims: engine.squish: 1.27 mm (or what your rod and speed ask for)"));
        }
        List<Finding> findings = new ArrayList<>(chamber);
        for (Map.Entry<Term, Expression> one : solutions(aim.si()).entrySet()) {
            solve(one.getKey(), one.getValue(), "squish", "").ifPresent(findings::add);
        }
        if (own.figure(Term.GASKET_THICKNESS).isEmpty()
                || !catalogue.of(PartKind.GASKET).isEmpty()) {
            findings.addAll(byGasket(aim.si(), catalogue));
        }
        return findings;
    }

    /** The chamber that gives the ratio aimed at with everything else as it is. */
    private List<Finding> chamber() {
        Quantity aim = build.aims().get(Term.COMPRESSION_RATIO);
        if (aim == null) {
            return List.of();
        }
        Expression swept = Compression.sweptVolume(in(Term.BORE), in(Term.STROKE));
        Expression wanted = Compression.clearanceForRatio(swept, Expression.constant(aim.si()))
                .minus(Compression.gasketVolume(in(Term.GASKET_BORE), in(Term.GASKET_THICKNESS)))
                .minus(Compression.deckVolume(in(Term.BORE), in(Term.DECK_CLEARANCE)))
                .minus(in(Term.CROWN_VOLUME));
        return solve(Term.CHAMBER_VOLUME, wanted, "ratio", "").map(List::of).orElse(List.of());
    }

    private static Expression in(Term term) {
        return Expression.input(term.path());
    }

    /** Every figure of the stack from the others. */
    private static Map<Term, Expression> solutions(double squish) {
        Expression deck = Expression.constant(squish).minus(in(Term.GASKET_THICKNESS));
        Map<Term, Expression> solutions = new LinkedHashMap<>();
        solutions.put(
                Term.ROD_LENGTH,
                Stack.rodLength(in(Term.DECK_HEIGHT), in(Term.STROKE), in(Term.COMPRESSION_HEIGHT), deck));
        solutions.put(
                Term.COMPRESSION_HEIGHT,
                in(Term.DECK_HEIGHT)
                        .minus(in(Term.STROKE).half())
                        .minus(in(Term.ROD_LENGTH))
                        .minus(deck));
        solutions.put(
                Term.STROKE,
                in(Term.DECK_HEIGHT)
                        .minus(in(Term.ROD_LENGTH))
                        .minus(in(Term.COMPRESSION_HEIGHT))
                        .minus(deck)
                        .times(2));
        solutions.put(
                Term.DECK_HEIGHT,
                Stack.deckHeight(in(Term.STROKE), in(Term.ROD_LENGTH), in(Term.COMPRESSION_HEIGHT), deck));
        solutions.put(
                Term.GASKET_THICKNESS,
                Expression.constant(squish)
                        .minus(Stack.deckClearance(
                                in(Term.DECK_HEIGHT),
                                in(Term.STROKE),
                                in(Term.ROD_LENGTH),
                                in(Term.COMPRESSION_HEIGHT))));
        return solutions;
    }

    /** A size of a catalogue with its doubt; without a tolerance, as exactly what it says. */
    private static Measured measured(CataloguePart.Figure figure) {
        Dim dim = Dim.of(figure);
        return dim.uncertainty() == 0
                ? Measured.exact(dim.value())
                : Measured.of(
                        dim.value(),
                        List.of(Source.known("gasket", Source.Kind.TOLERANCE, "gasket", dim.uncertainty())));
    }

    private Optional<Finding> solve(Term term, Expression expression, String aimed, String with) {
        return solve(term, expression, aimed, with, Optional.empty(), java.util.OptionalDouble.empty());
    }

    private Optional<Finding> solve(
            Term term,
            Expression expression,
            String aimed,
            String with,
            Optional<Measured> gasket,
            java.util.OptionalDouble gasketHalf) {
        Function<Term, Optional<Measured>> figures =
                t -> t == Term.GASKET_THICKNESS && gasket.isPresent() ? gasket : own.figure(t);
        Formula formula = Formula.of(term.path() + " wanted", expression);
        if (formula.inputs().stream().anyMatch(n -> Term.at(n).flatMap(figures).isEmpty())) {
            return Optional.empty();
        }
        Measured wanted =
                Measured.through(formula, n -> Term.at(n).flatMap(figures).orElseThrow());
        return Optional.of(wanted(term, wanted, box(formula, figures, gasketHalf), aimed, with));
    }

    /** Half-width of the box: every figure of the others at the worst end of its own. */
    private static double box(
            Formula formula, Function<Term, Optional<Measured>> figures, java.util.OptionalDouble gasketHalf) {
        double[] x = new double[formula.inputs().size()];
        double[] half = new double[x.length];
        for (int n = 0; n < x.length; n++) {
            Term input = Term.at(formula.inputs().get(n)).orElseThrow();
            Measured figure = figures.apply(input).orElseThrow();
            x[n] = figure.value();
            half[n] = input == Term.GASKET_THICKNESS && gasketHalf.isPresent()
                    ? gasketHalf.getAsDouble()
                    : figure.expanded();
        }
        double[] slope = new double[x.length];
        formula.gradient(x, slope);
        double box = 0;
        for (int n = 0; n < x.length; n++) {
            box += Math.abs(slope[n]) * half[n];
        }
        return box;
    }

    private Finding wanted(Term term, Measured wanted, double box, String aimed, String with) {
        String now = own.figure(term)
                .map(m -> "; it is " + words(term, m) + ", " + difference(term, m.value() - wanted.value()))
                .orElse("");
        return new Finding(
                Finding.Kind.NOTE,
                term.path(),
                term.label() + " wanted " + words(term, wanted) + " for the " + aimed + " aimed at" + with + now
                        + (aimed.equals("squish") ? band(term, wanted, box) : ""),
                "");
    }

    private String difference(Term term, double by) {
        double grain = term.dimension() == Dimension.LENGTH ? 0.1e-3 : 0.1e-6;
        Figure figure = printer.print(term.dimension(), Math.abs(by), grain).first();
        return Math.abs(by) < grain / 100
                ? "as wanted"
                : figure.value() + " " + figure.unit() + (by > 0 ? " more" : " less");
    }

    private String words(Term term, Measured figure) {
        return printer.print(term.dimension(), figure.value(), figure.expanded())
                .line();
    }

    /** From where to where the rules on squish let it be, for sure with the doubt of the others. */
    private String band(Term term, Measured wanted, double box) {
        RuleWindows windows = new RuleWindows(build);
        Map<Choice, String> words = build.choices();
        RuleWindows.Limits squish = windows.of(Rule.SQUISH_LEAST, Term.SQUISH, words, own::figure)
                .and(windows.of(Rule.SQUISH_MOST, Term.SQUISH, words, own::figure));
        double aim =
                java.util.Objects.requireNonNull(build.aims().get(Term.SQUISH)).si();
        double slope = term == Term.GASKET_THICKNESS || term == Term.DECK_HEIGHT ? 1 : term == Term.STROKE ? -2 : -1;
        double a = wanted.value() + slope * (squish.least() - aim);
        double b = wanted.value() + slope * (squish.most() - aim);
        double low = Math.min(a, b) + box;
        double high = Math.max(a, b) - box;
        double skirt = term == Term.ROD_LENGTH ? leastRodForTheSkirt() : Double.NEGATIVE_INFINITY;
        boolean byskirt = skirt > low;
        low = Math.max(low, skirt);
        if (low > high && byskirt) {
            return "; no length keeps for sure both the squish rules and the gap of the skirt to the counterweight, which asks for "
                    + plain(skirt);
        }
        if (Double.isNaN(low) || Double.isNaN(high) || low > high) {
            return "";
        }
        String text = (Double.isInfinite(low) ? "" : " from " + plain(low))
                + (Double.isInfinite(high) ? "" : " to " + plain(high));
        return text.isEmpty()
                ? ""
                : "; for sure within the squish rules" + (byskirt ? " and past the counterweight" : "") + text;
    }

    /** The shortest rod with which the skirt surely keeps its gap to the counterweight [m]; none where that is not known. */
    private double leastRodForTheSkirt() {
        List<Term> known = List.of(Term.STROKE, Term.SKIRT_BELOW_PIN, Term.COUNTERWEIGHT_RADIUS);
        double gap = new RuleWindows(build)
                .of(Rule.SKIRT_TO_COUNTERWEIGHT, Term.SKIRT_TO_COUNTERWEIGHT, build.choices(), own::figure)
                .least();
        if (Double.isInfinite(gap) || known.stream().anyMatch(t -> own.figure(t).isEmpty())) {
            return Double.NEGATIVE_INFINITY;
        }
        double rod = gap;
        for (Term term : known) {
            Measured figure = own.figure(term).orElseThrow();
            rod += (figure.value() + figure.expanded()) * (term == Term.STROKE ? 0.5 : 1);
        }
        return rod;
    }

    private String plain(double length) {
        return printer.print(Dimension.LENGTH, length, 0.1e-3).first().value() + " "
                + printer.print(Dimension.LENGTH, length, 0.1e-3).first().unit();
    }

    /** The ideal rod with each gasket on offer. */
    private List<Finding> byGasket(double squish, Catalogue catalogue) {
        List<Finding> findings = new ArrayList<>();
        catalogue.of(PartKind.GASKET).stream()
                .limit(12)
                .forEach(gasket -> gasket.figure(Term.GASKET_THICKNESS).ifPresent(f -> {
                    Expression deck = Expression.constant(squish).minus(in(Term.GASKET_THICKNESS));
                    Expression rod =
                            Stack.rodLength(in(Term.DECK_HEIGHT), in(Term.STROKE), in(Term.COMPRESSION_HEIGHT), deck);
                    solve(
                                    Term.ROD_LENGTH,
                                    rod,
                                    "squish",
                                    " with gasket " + gasket.code() + ", "
                                            + f.value().written(),
                                    Optional.of(measured(f)),
                                    java.util.OptionalDouble.of(Dim.of(f).half()))
                            .ifPresent(findings::add);
                }));
        return findings;
    }
}
