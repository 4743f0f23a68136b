package longthrow.core.clear;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.answer.Rung;
import longthrow.core.engine.Alloy;
import longthrow.core.engine.Material;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.life.Asked;
import longthrow.core.life.DeadCentre;
import longthrow.core.life.GasTrace;
import longthrow.core.life.Section;
import longthrow.core.measurement.Measured;
import longthrow.core.motion.SliderCrank;
import longthrow.core.term.Choice;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * What warmth, speed and slack make of the sizes read at 20 °C. Where a metal or a place is not said, what closes gaps is counted and what opens them is not.
 * Growth is expansion times rise in temperature; the rod is drawn out as a bar of its narrowest section by the worst pull at top dead centre (Hooke).
 */
final class Running {
    /** Crowns run hotter than the skirts they stand on, by about this much and as much more or less, 95 % half-width [K]; common practice, no source. */
    private static final double CROWN_OVER_SKIRT = 60;
    /** Young's moduli hold within this share, see {@link Alloy#modulus}. */
    private static final double MODULUS = 0.03;

    private static final String ROLLING_PLAY = "play of the main bearings";

    private final Asked of;
    private final Map<Warm, Expression> asked = new LinkedHashMap<>();

    private Running(Asked of) {
        this.of = of;
    }

    /** Asks for what these hang on; once all is known it gives them to the one who asks. */
    static void asks(Asked of, Set<Warm> what) {
        Running running = new Running(of);
        what.forEach(running::ask);
        if (of.isWhole()) {
            Map<Warm, Measured> worked = new LinkedHashMap<>();
            running.asked.forEach((warm, sum) ->
                    worked.put(warm, Measured.through(Formula.of(warm.key(), sum), of.inputs())));
            worked.forEach((warm, figure) -> of.given(warm.key(), figure));
        }
    }

    private void ask(Warm what) {
        Expression sum = switch (what) {
            case ROD_GROWTH -> growth(Part.ROD, Choice.ROD_METAL, rise(Term.ROD_TEMPERATURE));
            case SKIRT_GROWTH -> growth(Part.PISTON, Choice.PISTON_ALLOY, rise(Term.PISTON_TEMPERATURE));
            case CROWN_GROWTH -> growth(Part.PISTON, Choice.PISTON_ALLOY, crown());
            case CYLINDER_GROWTH -> growth(Part.CYLINDER, Choice.CYLINDER_METAL, cooler());
            case CRANK_GROWTH -> growth(Part.CRANKSHAFT, Choice.CRANKSHAFT_METAL, rise(Term.OIL_TEMPERATURE));
            case CAM_GROWTH -> camshaft();
            case STRETCH -> stretch();
            case SLACK_TO_PISTON ->
                main().plus(half(Term.BIG_END_CLEARANCE, Term.PIN_CLEARANCE, Term.PIN_BOSS_CLEARANCE));
            case SLACK_TO_BIG_END -> main().plus(half(Term.BIG_END_CLEARANCE));
            case SLACK_OF_CRANK -> main();
            case ROCK -> rock();
            case GEAR_GROWTH -> gear();
            case GAP_TO_RETAINER -> gear().times(retainer());
        };
        asked.put(what, sum);
    }

    private Expression rise(Term temperature) {
        return of.figure(temperature).minus(Material.REFERENCE_TEMPERATURE);
    }

    private Expression growth(Part part, Choice metal, Expression rise) {
        of.word(metal);
        Optional<Material> material = Material.of(of.known().build(), part);
        return material.map(m -> coefficient(m).times(rise)).orElse(rise);
    }

    private Expression coefficient(Material metal) {
        return of.scatter("expansion of " + metal.key(), metal.spread() / metal.expansion())
                .times(metal.expansion());
    }

    private Expression crown() {
        of.takes(
                Term.PISTON_TEMPERATURE.path(),
                "crown and pin boss run 60 ± 60 K hotter than the skirt",
                "common practice, no source");
        return rise(Term.PISTON_TEMPERATURE)
                .plus(of.scatter("crown hotter than skirt", 1).times(CROWN_OVER_SKIRT));
    }

    /** A case is cooler than the barrel, or of a metal that grows more: the cooler of both temperatures never counts too much. */
    private Expression cooler() {
        Expression barrel = rise(Term.CYLINDER_TEMPERATURE);
        Expression oil = rise(Term.OIL_TEMPERATURE);
        of.takes(
                Term.CYLINDER_TEMPERATURE.path(),
                "the deck moves away from the crankshaft by the cylinder's metal at the cooler of barrel and oil;"
                        + " walls and camshaft of the case are not counted as moving away at all",
                "on the safe side: the case's metal and temperature are not read");
        boolean isOilCooler = of.value(Term.OIL_TEMPERATURE)
                .flatMap(o -> of.value(Term.CYLINDER_TEMPERATURE).map(c -> o.value() < c.value()))
                .orElse(false);
        return isOilCooler ? oil : barrel;
    }

    private Expression camshaft() {
        of.takes(Part.CAMSHAFT.key(), "the camshaft grows as steel in warm oil", Material.STEEL.source());
        return coefficient(Material.STEEL).times(rise(Term.OIL_TEMPERATURE));
    }

    private Expression gear() {
        of.takes(
                Part.PUSHROD.key(),
                "pushrods, rockers and retainers grow as aluminium in warm oil, whatever they are of; what is around a pushrod is not counted as growing away from it",
                Material.ALUMINIUM.source() + "; on the safe side");
        return coefficient(Material.ALUMINIUM).times(rise(Term.OIL_TEMPERATURE));
    }

    /** Over so much rocker and retainer grow towards each other, at the most: their rim is no farther from the end of the stem than the retainer is wide. */
    private Expression retainer() {
        return of.known()
                .build()
                .outline(OutlinedPart.RETAINER)
                .map(traced -> Expression.constant(2 * Outlined.outline(traced).farthest()))
                .orElseGet(() -> of.figure(Term.RETAINER_OUTSIDE));
    }

    /** Half of the play of the main bearings: bore less journal of plain ones, of others what they are made with. */
    private Expression main() {
        Optional<String> bearing = of.known().build().choice(Choice.MAIN_BEARING);
        if (bearing.filter(word -> !word.equals("plain")).isPresent()) {
            of.word(Choice.MAIN_BEARING);
            RollingPlay.asks(of, ROLLING_PLAY, bearing.get());
            return Expression.input(ROLLING_PLAY).half();
        }
        if (bearing.isEmpty() && of.value(Term.MAIN_CLEARANCE).isEmpty()) {
            of.word(Choice.MAIN_BEARING); // with ball or roller bearings no bore is waited for
        }
        return half(Term.MAIN_CLEARANCE);
    }

    private Expression half(Term... clearances) {
        Expression sum = Expression.constant(0);
        for (Term clearance : clearances) {
            sum = sum.plus(of.figure(clearance).half());
        }
        return sum;
    }

    private Expression stretch() {
        Section beam = Section.ofBeam(
                of.figure(Term.BEAM_WIDTH),
                of.figure(Term.BEAM_THICKNESS),
                of.figure(Term.BEAM_WEB),
                of.figure(Term.BEAM_FLANGE));
        DeadCentre worst = new DeadCentre(
                SliderCrank.inLine(of.figure(Term.STROKE).half(), of.figure(Term.ROD_LENGTH)),
                of.sum(Term.PISTON_MASS, Term.PIN_MASS, Term.RING_MASS, Term.ROD_SMALL_END_MASS),
                Expression.constant(0),
                Expression.constant(0),
                of.figure(Term.BORE));
        Expression pull =
                worst.shankPull(of.figure(Term.WANTED_SPEED), Expression.constant(-GasTrace.STANDARD_ATMOSPHERE));
        Optional<Alloy> alloy = of.word(Choice.ROD_METAL).map(Running::alloy);
        of.takes(
                Choice.ROD_METAL.path(),
                "the rod stretches as a bar of its narrowest section; pressed at bottom dead centre it shortens by no"
                        + " more than it is drawn out at the top",
                "Hooke; geometry");
        double modulus = alloy.map(Alloy::modulus).orElse(1.0);
        return beam.axialStress(pull)
                .times(of.figure(Term.ROD_LENGTH))
                .times(of.scatter("modulus of the rod", MODULUS))
                .dividedBy(modulus);
    }

    private static Alloy alloy(String metal) {
        return switch (metal) {
            case "steel" -> Alloy.FORGED_CARBON_STEEL;
            case "billet_aluminium" -> Alloy.BILLET_ALUMINIUM_ROD;
            default -> Alloy.CAST_ROD;
        };
    }

    /** The piston leans in its bore by all its cold clearance over the skirt below its pin alone, which is more than any does. */
    private Expression rock() {
        of.takes(
                Term.PISTON_TO_WALL.path(),
                "the piston rocks by its whole cold clearance, borne from pin to lower edge of the skirt alone",
                "on the safe side; geometry");
        return of.figure(Term.PISTON_TO_WALL)
                .times(of.figure(Term.BORE).half())
                .dividedBy(of.figure(Term.SKIRT_BELOW_PIN));
    }

    /** For what is read cold and not worked out warm. */
    static List<Rung.Missing> notWorkedOut(String why) {
        return List.of(new Rung.Missing("", why, "read it cold with room to spare", 0));
    }
}
