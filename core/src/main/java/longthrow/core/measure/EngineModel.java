package longthrow.core.measure;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.build.Build;
import longthrow.core.engine.Alternative;
import longthrow.core.engine.Compression;
import longthrow.core.engine.Fits;
import longthrow.core.engine.Rule;
import longthrow.core.engine.Stack;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.motion.SliderCrank;
import longthrow.core.motion.Timing;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/**
 * How every term hangs together with every other on one engine: each as a formula of the figures sought. What is sought depends on what was read:
 * with a bore map the bore is its mean; with a chamber volume the volume in assembly is a sum, without one it is sought itself.
 */
final class EngineModel {
    private static final Map<String, Term> SOUGHT = byPath();
    /** Piston rock and deck tilt across the pin axis, thrust side deeper positive [m]. */
    static final String TILT_SIDES = Term.DECK_TILT_SIDES.path();
    /** Deck tilt along the pin axis, flywheel end deeper positive [m]. */
    static final String TILT_ENDS = Term.DECK_TILT_ENDS.path();

    private static final List<Term> MAP_THRUST =
            List.of(Term.BORE_TOP_THRUST, Term.BORE_MIDDLE_THRUST, Term.BORE_BOTTOM_THRUST);
    private static final List<Term> MAP_AXIS =
            List.of(Term.BORE_TOP_AXIS, Term.BORE_MIDDLE_AXIS, Term.BORE_BOTTOM_AXIS);

    private final Map<Term, Expression> expressions = new EnumMap<>(Term.class);
    private final Map<Term, Formula> formulas = new EnumMap<>(Term.class);
    private final Build build;

    EngineModel(Build build) {
        this.build = build;
        for (Term term : Term.read()) {
            expressions.put(term, Expression.input(term.path()));
        }
        cylinder();
        stack();
        volumes();
        rodAndCrank();
        cam();
        effective();
        neighbours();
        rest();
    }

    /** The term as a formula; empty when this engine's readings give it no meaning. */
    Optional<Formula> formula(Term term) {
        Expression expression = expressions.get(term);
        return expression == null
                ? Optional.empty()
                : Optional.of(formulas.computeIfAbsent(term, t -> Formula.of(t.path(), expression)));
    }

    /** Every term that has a formula, in the order of the registry. */
    List<Term> terms() {
        return List.copyOf(expressions.keySet());
    }

    private Expression at(Term term) {
        Expression expression = expressions.get(term);
        if (expression == null) {
            throw new IllegalStateException(term.path() + " is asked for before it is set");
        }
        return expression;
    }

    private void set(Term term, Expression expression) {
        expressions.put(term, expression);
    }

    private List<Expression> read(List<Term> terms) {
        return terms.stream().filter(build::has).map(this::at).toList();
    }

    private void cylinder() {
        List<Expression> map = new ArrayList<>(read(MAP_THRUST));
        map.addAll(read(MAP_AXIS));
        if (!map.isEmpty()) {
            set(Term.BORE, Fits.mean(map));
        }
        taper(Term.BORE_TAPER_THRUST, Term.BORE_TOP_THRUST, Term.BORE_BOTTOM_THRUST);
        taper(Term.BORE_TAPER_AXIS, Term.BORE_TOP_AXIS, Term.BORE_BOTTOM_AXIS);
        round(Term.OUT_OF_ROUND_TOP, Term.BORE_TOP_THRUST, Term.BORE_TOP_AXIS);
        round(Term.OUT_OF_ROUND_MIDDLE, Term.BORE_MIDDLE_THRUST, Term.BORE_MIDDLE_AXIS);
        round(Term.OUT_OF_ROUND_BOTTOM, Term.BORE_BOTTOM_THRUST, Term.BORE_BOTTOM_AXIS);
        worst(Term.BORE_TAPER, List.of(Term.BORE_TAPER_THRUST, Term.BORE_TAPER_AXIS));
        worst(Term.OUT_OF_ROUND, List.of(Term.OUT_OF_ROUND_TOP, Term.OUT_OF_ROUND_MIDDLE, Term.OUT_OF_ROUND_BOTTOM));
        List<Expression> outside = read(List.of(Term.SLEEVE_OUTSIDE_TOP, Term.SLEEVE_OUTSIDE_BOTTOM));
        if (!outside.isEmpty()) {
            Expression thinner = outside.size() == 1 ? outside.get(0) : Expression.min(outside.get(0), outside.get(1));
            set(Term.SLEEVE_WALL, Fits.sleeveWall(thinner, at(Term.BORE)));
        }
    }

    private void taper(Term taper, Term top, Term bottom) {
        if (build.has(top) && build.has(bottom)) {
            set(taper, Fits.taper(at(top), at(bottom)));
        }
    }

    private void round(Term outOfRound, Term thrust, Term axis) {
        if (build.has(thrust) && build.has(axis)) {
            set(outOfRound, Fits.outOfRound(at(thrust), at(axis)));
        }
    }

    private void worst(Term worst, List<Term> of) {
        List<Expression> there =
                of.stream().filter(expressions::containsKey).map(this::at).toList();
        if (!there.isEmpty()) {
            set(worst, Fits.largest(there));
        }
    }

    private void stack() {
        Expression clearance = hasOffset()
                ? at(Term.DECK_HEIGHT).minus(crank().highestPin()).minus(at(Term.COMPRESSION_HEIGHT))
                : Stack.deckClearance(
                        at(Term.DECK_HEIGHT), at(Term.STROKE), at(Term.ROD_LENGTH), at(Term.COMPRESSION_HEIGHT));
        Expression sides = Expression.input(TILT_SIDES);
        Expression ends = Expression.input(TILT_ENDS);
        set(Term.DECK_CLEARANCE, clearance);
        set(Term.DECK_CLEARANCE_THRUST, clearance.plus(sides.half()));
        set(Term.DECK_CLEARANCE_ANTITHRUST, clearance.minus(sides.half()));
        set(Term.DECK_CLEARANCE_FLYWHEEL_END, clearance.plus(ends.half()));
        set(Term.DECK_CLEARANCE_OUTPUT_END, clearance.minus(ends.half()));
        set(Term.DECK_TILT_SIDES, sides);
        set(Term.DECK_TILT_ENDS, ends);
        Expression squish = Stack.squish(clearance, at(Term.GASKET_THICKNESS));
        set(Term.SQUISH, squish);
        set(Term.SQUISH_FLYWHEEL_END, squish.plus(ends.half()));
        set(Term.SQUISH_OUTPUT_END, squish.minus(ends.half()));
        if (build.has(Term.SQUISH_FLYWHEEL_END)
                || build.has(Term.SQUISH_OUTPUT_END)
                || build.has(Term.DECK_CLEARANCE_FLYWHEEL_END)
                || build.has(Term.DECK_CLEARANCE_OUTPUT_END)) {
            set(Term.SQUISH_SMALLER_END, squish.minus(ends.half().absolute()));
        }
        set(Term.PIN_TOP_TO_CROWN, Stack.pinTopToCrown(at(Term.COMPRESSION_HEIGHT), at(Term.PIN_DIAMETER)));
        Expression pinBore = build.has(Term.PISTON_PIN_BORE) ? at(Term.PISTON_PIN_BORE) : at(Term.PIN_DIAMETER);
        set(Term.PIN_BOTTOM_TO_CROWN, Stack.pinBottomToCrown(at(Term.COMPRESSION_HEIGHT), pinBore));
        set(
                Term.ROD_INSIDE_EDGES,
                Stack.rodInsideEdges(at(Term.ROD_LENGTH), at(Term.BIG_END_BORE), at(Term.SMALL_END_BORE)));
        set(Term.THROW, hasOffset() ? crank().crankRadius() : at(Term.STROKE).half());
        set(Term.ROD_RATIO, Stack.rodRatio(at(Term.ROD_LENGTH), at(Term.STROKE)));
        set(Term.SKIRT_TO_COUNTERWEIGHT, overCounterweight(at(Term.SKIRT_BELOW_PIN)));
        set(Term.BOSS_TO_COUNTERWEIGHT, overCounterweight(at(Term.BOSS_BELOW_PIN)));
        if (build.aims().containsKey(Term.SQUISH)
                && Aims.isUsual(Term.SQUISH, build.aims().get(Term.SQUISH))) {
            Expression deck =
                    Expression.constant(build.aims().get(Term.SQUISH).si()).minus(at(Term.GASKET_THICKNESS));
            Expression height =
                    at(Term.DECK_HEIGHT).minus(at(Term.COMPRESSION_HEIGHT)).minus(deck);
            set(
                    Term.ROD_LENGTH_WANTED,
                    hasOffset()
                            ? SliderCrank.rodFor(height, at(Term.STROKE), offset())
                            : Stack.rodLength(
                                    at(Term.DECK_HEIGHT), at(Term.STROKE), at(Term.COMPRESSION_HEIGHT), deck));
        }
    }

    /** Whether the pin's path was read to lie beside the crank axis. */
    private boolean hasOffset() {
        return build.has(Term.PIN_OFFSET) || build.has(Term.BORE_OFFSET);
    }

    /** Path of the piston pin from the crank axis; what was not read of it is taken as nothing, {@link Readings} says so. */
    private Expression offset() {
        List<Expression> parts = read(List.of(Term.PIN_OFFSET, Term.BORE_OFFSET));
        return parts.stream().reduce(Expression::plus).orElse(Expression.constant(0));
    }

    private SliderCrank crank() {
        return SliderCrank.ofStroke(at(Term.STROKE), at(Term.ROD_LENGTH), offset());
    }

    /** A positive stop finds top dead centre by equal travel on both sides, so events count from the true one. */
    private void effective() {
        if (build.has(Term.INTAKE_CLOSES) || TableCurve.mayTell(build, Valve.INTAKE)) {
            SliderCrank crank = crank();
            Expression closes =
                    crank.topDeadCentre().plus(at(Term.INTAKE_CLOSES)).plus(Math.PI);
            set(
                    Term.EFFECTIVE_RATIO,
                    Compression.effectiveRatio(crank.volumeSwept(at(Term.BORE), closes), at(Term.CLEARANCE_VOLUME)));
        }
    }

    /** What is left at bottom dead centre between the counterweight and a part of the piston so far below the pin. */
    private Expression overCounterweight(Expression belowPin) {
        return hasOffset()
                ? crank().lowestPin().minus(belowPin).minus(at(Term.COUNTERWEIGHT_RADIUS))
                : Stack.skirtToCounterweight(
                        at(Term.ROD_LENGTH), at(Term.STROKE), belowPin, at(Term.COUNTERWEIGHT_RADIUS));
    }

    private void volumes() {
        Expression swept = Compression.sweptVolume(at(Term.BORE), at(Term.STROKE));
        Expression gasket = Compression.gasketVolume(at(Term.GASKET_BORE), at(Term.GASKET_THICKNESS));
        Expression deck = Compression.deckVolume(at(Term.BORE), at(Term.DECK_CLEARANCE));
        set(Term.SWEPT_VOLUME, swept);
        set(Term.GASKET_VOLUME, gasket);
        set(Term.DECK_VOLUME, deck);
        boolean landRead = build.has(Term.TOP_LAND_DIAMETER) && build.has(Term.TOP_LAND_HEIGHT);
        Expression crevice = landRead
                ? Compression.creviceVolume(at(Term.BORE), at(Term.TOP_LAND_DIAMETER), at(Term.TOP_LAND_HEIGHT))
                : Expression.input(Term.CREVICE_VOLUME.path());
        set(Term.CREVICE_VOLUME, crevice);
        if (sumsTheVolumes()) {
            Expression clearance =
                    Compression.clearanceVolume(at(Term.CHAMBER_VOLUME), gasket, deck, at(Term.CROWN_VOLUME));
            set(Term.CLEARANCE_VOLUME, clearance);
            set(Term.VOLUME_IN_ASSEMBLY, clearance.plus(crevice));
            set(Term.COMPRESSION_RATIO_WITH_CREVICE, Compression.ratio(swept, clearance.plus(crevice)));
        } else {
            set(Term.CLEARANCE_VOLUME, at(Term.VOLUME_IN_ASSEMBLY));
        }
        Expression clearance = at(Term.CLEARANCE_VOLUME);
        set(Term.COMPRESSION_RATIO, Compression.ratio(swept, clearance));
        build.ownRules().stream()
                .filter(rule -> rule.term() == Term.CLEARANCE_VOLUME || rule.term() == Term.VOLUME_IN_ASSEMBLY)
                .filter(rule -> rule.lower().isPresent())
                .findFirst()
                .ifPresent(rule -> {
                    double guard = rule.guard() == null ? 0 : rule.guard().si();
                    double keep = rule.lower().orElseThrow().si() + guard;
                    Expression cut = Compression.cutForVolume(clearance.minus(keep), at(Term.CHAMBER_AREA));
                    set(Term.HEAD_CUT, cut);
                    set(Term.RATIO_AFTER_CUT, Compression.ratio(swept, Expression.constant(keep)));
                    set(Term.VALVE_TO_HEAD_AFTER_CUT, at(Term.VALVE_TO_HEAD).minus(cut));
                });
    }

    /** Whether the clearance volume is a sum of parts that were read, or only known from the fill in assembly. */
    boolean sumsTheVolumes() {
        return build.has(Term.CHAMBER_VOLUME) || !build.has(Term.VOLUME_IN_ASSEMBLY);
    }

    private void rodAndCrank() {
        if (!build.has(Term.CRANKPIN_DIAMETER)
                && build.has(Term.CRANKPIN_LARGEST)
                && build.has(Term.CRANKPIN_SMALLEST)) {
            set(Term.CRANKPIN_DIAMETER, Fits.mean(List.of(at(Term.CRANKPIN_LARGEST), at(Term.CRANKPIN_SMALLEST))));
        }
        set(Term.CRANKPIN_WEAR, Fits.clearance(at(Term.CRANKPIN_LARGEST), at(Term.CRANKPIN_SMALLEST)));
        Expression bigEnd = Fits.clearance(at(Term.BIG_END_BORE), at(Term.CRANKPIN_DIAMETER));
        set(Term.BIG_END_CLEARANCE, bigEnd);
        set(Term.BIG_END_STRIP, bigEnd);
        if (!build.chose(Choice.MAIN_BEARING, "ball", "roller")) { // there the bore is the inner ring's, pressed on
            set(Term.MAIN_CLEARANCE, Fits.clearance(at(Term.MAIN_BORE), at(Term.MAIN_JOURNAL)));
        }
        Expression side = Fits.clearance(at(Term.CRANKPIN_WIDTH), at(Term.BIG_END_WIDTH));
        set(Term.ROD_SIDE_CLEARANCE, side);
        set(Term.PISTON_TO_WALL, Fits.clearance(at(Term.BORE), at(Term.PISTON_DIAMETER)));
        set(Term.PIN_CLEARANCE, Fits.clearance(at(Term.SMALL_END_BORE), at(Term.PIN_DIAMETER)));
        set(Term.PIN_BOSS_CLEARANCE, Fits.clearance(at(Term.PISTON_PIN_BORE), at(Term.PIN_DIAMETER)));
        set(Term.ROD_MASS, at(Term.ROD_BIG_END_MASS).plus(at(Term.ROD_SMALL_END_MASS)));
        set(
                Term.RECIPROCATING_MASS,
                Expression.sum(
                        at(Term.PISTON_MASS), at(Term.PIN_MASS), at(Term.RING_MASS), at(Term.ROD_SMALL_END_MASS)));
        set(Term.ROTATING_MASS, at(Term.ROD_BIG_END_MASS));
    }

    /** Parts that must go into, over or past each other. */
    private void neighbours() {
        difference(Term.BOSS_CLEARANCE, Term.BOSS_GAP, Term.SMALL_END_WIDTH);
        difference(Term.PIN_FLOAT, Term.CLIP_SPAN, Term.PIN_LENGTH);
        difference(Term.GASKET_OVER_BORE, Term.GASKET_BORE, Term.BORE);
        difference(Term.FLYWHEEL_ON_TAPER, Term.FLYWHEEL_TAPER_BORE, Term.CRANK_TAPER);
        difference(Term.FLYWHEEL_KEY_STEP, Term.FLYWHEEL_KEYWAY, Term.CRANK_KEYWAY);
        difference(Term.CLUTCH_ON_SHAFT, Term.CLUTCH_BORE, Term.OUTPUT_SHAFT_DIAMETER);
        difference(Term.CLUTCH_KEY_STEP, Term.CLUTCH_KEYWAY, Term.OUTPUT_SHAFT_KEYWAY);
        difference(Term.CLUTCH_OVERHANG, Term.OUTPUT_SHAFT_LENGTH, Term.CLUTCH_HUB_LENGTH);
        Expression pinBore = build.has(Term.PISTON_PIN_BORE) ? at(Term.PISTON_PIN_BORE) : at(Term.PIN_DIAMETER);
        set(
                Term.OIL_GROOVE_TO_PIN,
                Stack.grooveToPin(at(Term.COMPRESSION_HEIGHT), pinBore, at(Term.OIL_GROOVE_TO_CROWN)));
        set(Term.TOP_RING_TO_DECK, Stack.ringBelowDeck(at(Term.DECK_CLEARANCE), at(Term.TOP_LAND_HEIGHT)));
        set(
                Term.SKIRT_OUT_OF_SLEEVE,
                Stack.skirtOutOfSleeve(
                        at(Term.STROKE),
                        at(Term.DECK_CLEARANCE),
                        at(Term.COMPRESSION_HEIGHT),
                        at(Term.SKIRT_BELOW_PIN),
                        at(Term.SLEEVE_LENGTH)));
        set(Term.VALVE_TO_VALVE, Fits.rimToRim(at(Term.VALVE_SPACING), at(Term.INTAKE_HEAD), at(Term.EXHAUST_HEAD)));
        set(Term.INTAKE_TO_WALL, Fits.rimToWall(at(Term.BORE), at(Term.INTAKE_FROM_AXIS), at(Term.INTAKE_HEAD)));
        set(Term.EXHAUST_TO_WALL, Fits.rimToWall(at(Term.BORE), at(Term.EXHAUST_FROM_AXIS), at(Term.EXHAUST_HEAD)));
    }

    private void difference(Term gap, Term larger, Term smaller) {
        set(gap, Fits.clearance(at(larger), at(smaller)));
    }

    private void cam() {
        events(Term.INTAKE_LOBE_CENTRE, Term.INTAKE_DURATION, Term.INTAKE_OPENS, Term.INTAKE_CLOSES, true);
        events(Term.EXHAUST_LOBE_CENTRE, Term.EXHAUST_DURATION, Term.EXHAUST_OPENS, Term.EXHAUST_CLOSES, false);
        set(Term.LOBE_SEPARATION, Timing.lobeSeparation(at(Term.INTAKE_LOBE_CENTRE), at(Term.EXHAUST_LOBE_CENTRE)));
        set(Term.OVERLAP, Timing.overlap(at(Term.INTAKE_OPENS), at(Term.EXHAUST_CLOSES)));
        set(
                Term.SPRING_RATE,
                Fits.springRate(at(Term.SPRING_SEAT_LOAD), at(Term.SPRING_OPEN_LOAD), at(Term.INTAKE_LIFT)));
        set(
                Term.COIL_BIND_MARGIN,
                Fits.coilBindMargin(
                        at(Term.SPRING_INSTALLED_HEIGHT), at(Term.INTAKE_LIFT), at(Term.SPRING_SOLID_HEIGHT)));
    }

    /** Lobe centre and duration are sought, the events follow: so trials that were zeroed anew each time stay paired. */
    private void events(Term centre, Term duration, Term opens, Term closes, boolean intake) {
        Expression lobe = Expression.input(centre.path());
        Expression span = Expression.input(duration.path());
        set(centre, lobe);
        set(duration, span);
        Expression early = span.half().minus(lobe);
        Expression late = span.half().plus(lobe).minus(Math.PI);
        set(opens, intake ? early : late);
        set(closes, intake ? late : early);
    }

    private void rest() {
        Rule.TOP_RING_GAP_LEAST
                .inForce(build)
                .flatMap(Alternative::lower)
                .ifPresent(least -> set(
                        Term.TOP_RING_GAP_WANTED,
                        least.expression().substitute(Map.of(Term.BORE.path(), at(Term.BORE)))));
        set(Term.KEY_SHIFT, Timing.keyShift(at(Term.KEY_OFFSET), at(Term.TAPER_DIAMETER)));
        set(Term.TIMING_WITH_KEY, at(Term.BASE_TIMING).plus(at(Term.KEY_SHIFT)));
        set(Term.MEAN_PISTON_SPEED, Timing.meanPistonSpeed(at(Term.STROKE), at(Term.WANTED_SPEED)));
        Expression radius = at(Term.THROW);
        set(Term.TDC_ACCELERATION, Timing.topAcceleration(radius, at(Term.ROD_LENGTH), at(Term.WANTED_SPEED)));
        Expression bears = Timing.ringBears(at(Term.TOP_RING_THICKNESS));
        set(Term.RING_BEARS, bears);
        set(Term.RING_SPEED, Timing.speedOfTopAcceleration(radius, at(Term.ROD_LENGTH), bears));
        set(Term.RIM_SPEED, Timing.rimSpeed(at(Term.FLYWHEEL_DIAMETER), at(Term.WANTED_SPEED)));
    }

    /** Names of everything sought, with the term whose believable range it has. */
    static Map<String, Term> sought() {
        return SOUGHT;
    }

    private static Map<String, Term> byPath() {
        Map<String, Term> names = new LinkedHashMap<>();
        for (Term term : Term.values()) {
            names.put(term.path(), term);
        }
        return Collections.unmodifiableMap(names);
    }
}
