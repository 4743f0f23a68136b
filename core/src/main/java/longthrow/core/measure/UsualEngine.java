package longthrow.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Observation;
import longthrow.core.measurement.Source;
import longthrow.core.term.Term;

/** What is taken for granted of any engine that runs, to weigh readings by; no figure is worked out from it. */
final class UsualEngine {
    /** [m]. */
    private static final double INCH = 25.4e-3;
    /** Usual difference across the pin axis, rock of the piston included, standard deviation [m]; common practice, no source. */
    private static final double USUAL_ROCK = 0.15e-3;
    /** Usual difference along the pin axis, standard deviation [m]; common practice, no source. */
    private static final double USUAL_TILT = 0.05e-3;
    /** Deck clearance of an engine that runs, 95 times in 100 [m]: the usual range widened by a third; common practice, no source. */
    private static final double MOST_PROUD = -1.1e-3;

    private static final double MOST_BELOW = 3.6e-3;
    /** Middle of the usual rod lengths, in strokes; common practice, no source. */
    private static final double ROD_STROKES = 1.75;
    /** Rods stand this near to that, 95 times in 100 [m]: 1.2 to 2.3 strokes of 80 mm; common practice, no source. */
    private static final double ROD_WITHIN = 45e-3;

    /**
     * A gap between two bodies that meet in every engine of this kind.
     * @param gap    the term
     * @param least  of an engine that runs [m]
     * @param most   of one that runs; so wide 95 times in 100 [m]
     * @param beyond farther outside than this no two bodies stand that were ever meant for one engine, be they worn or the wrong ones [m]
     */
    private record Meeting(Term gap, double least, double most, double beyond) {
        boolean isAbsurd(Measured figure) {
            double out = Math.max(least - figure.value(), figure.value() - most);
            return out - figure.expanded() > beyond;
        }
    }

    /** What a longer throw, a worn bore or a piston of another size shows is not asked about here: that may be so, and its rules judge it; common practice, no source. */
    private static final List<Meeting> MEETINGS = List.of(
            new Meeting(Term.SKIRT_TO_COUNTERWEIGHT, 0, 20e-3, 10e-3),
            new Meeting(Term.BOSS_TO_COUNTERWEIGHT, 0, 30e-3, 10e-3),
            new Meeting(Term.PISTON_TO_WALL, -1e-3, 1e-3, 4e-3),
            new Meeting(Term.PIN_CLEARANCE, -1e-3, 1e-3, 4e-3),
            new Meeting(Term.PIN_BOSS_CLEARANCE, -1e-3, 1e-3, 4e-3),
            new Meeting(Term.BIG_END_CLEARANCE, -1e-3, 1e-3, 4e-3),
            new Meeting(Term.MAIN_CLEARANCE, -1e-3, 1e-3, 4e-3));

    private static final String USUAL = " usual";
    private static final String ROD_BY_STROKE = Term.ROD_RATIO.path() + USUAL;

    private UsualEngine() {}

    /**
     * What an engine that runs shows, so that a slip nothing else checks still stands out when it leads to no engine at all: deck clearance from 1.1 mm
     * proud to 3.6 mm below, the usual range widened by a third, and a rod of about 1.75 strokes; common practice, no source.
     */
    static List<Observation> of(EngineModel model) {
        return List.of(usual(model, Term.DECK_CLEARANCE, MOST_PROUD, MOST_BELOW), rodByStroke());
    }

    /** Rod against stroke, as a difference: a ratio is no straight line where the stroke is out by half or by double. */
    private static Observation rodByStroke() {
        Source source = Source.at95(ROD_BY_STROKE, Source.Kind.ASSUMED, Term.ROD_RATIO.label(), ROD_WITHIN);
        Expression over = Expression.input(Term.ROD_LENGTH.path())
                .minus(Expression.input(Term.STROKE.path()).times(ROD_STROKES));
        return new Observation(ROD_BY_STROKE, Formula.of(ROD_BY_STROKE, over), 0, Map.of(source, 1.0));
    }

    /** Within the range 95 times in 100. */
    private static Observation usual(EngineModel model, Term term, double least, double most) {
        Source source = Source.at95(term.path() + USUAL, Source.Kind.ASSUMED, term.label(), 0.5 * (most - least));
        return new Observation(
                term.path() + USUAL, model.formula(term).orElseThrow(), 0.5 * (least + most), Map.of(source, 1.0));
    }

    /** A deck and a piston that stand level within what a bench shows, so that a slip at one end of a pair is told from one at the other. */
    static List<Observation> levelDeck(List<Observation> kept) {
        List<Observation> level = new ArrayList<>();
        for (String tilt : List.of(EngineModel.TILT_SIDES, EngineModel.TILT_ENDS)) {
            if (kept.stream().anyMatch(o -> o.formula().inputs().contains(tilt))) {
                double usual = tilt.equals(EngineModel.TILT_SIDES) ? USUAL_ROCK : USUAL_TILT;
                Source source = Source.known(tilt + USUAL, Source.Kind.ASSUMED, tilt, usual);
                level.add(new Observation(
                        tilt + USUAL, Formula.of(tilt, Expression.input(tilt)), 0, Map.of(source, 1.0)));
            }
        }
        return level;
    }

    /**
     * Gaps that no two bodies of one engine leave, with what they are in engines that run: so a diameter written for a radius, or the other way, stands
     * out although every reading is believable by itself. None where all can be: then nothing is weighed by them.
     */
    static List<Observation> meetings(Figures figures) {
        return MEETINGS.stream()
                .filter(m -> figures.figure(m.gap()).filter(m::isAbsurd).isPresent())
                .map(m -> usual(figures.model(), m.gap(), m.least(), m.most()))
                .toList();
    }

    /** What of it stands among the observations, said. */
    static List<DefaultUsed> assumed(List<Observation> kept) {
        List<DefaultUsed> assumed = new ArrayList<>();
        for (Observation o : kept) {
            if (o.id().equals(Term.DECK_CLEARANCE.path() + USUAL)) {
                assumed.add(taken(String.format(
                        Locale.ROOT,
                        "an engine that runs has its piston %.1f mm (%.3f in) proud of the deck to %.1f mm (%.3f in) below it",
                        -1e3 * MOST_PROUD,
                        -MOST_PROUD / INCH,
                        1e3 * MOST_BELOW,
                        MOST_BELOW / INCH)));
            } else if (o.id().equals(ROD_BY_STROKE)) {
                assumed.add(taken(String.format(
                        Locale.ROOT,
                        "an engine that runs has a rod within %.0f mm (%.2f in) of %.2f times its stroke",
                        1e3 * ROD_WITHIN,
                        ROD_WITHIN / INCH,
                        ROD_STROKES)));
            } else if (o.id().equals(EngineModel.TILT_SIDES + USUAL)) {
                assumed.add(level("across the pin", USUAL_ROCK));
            } else if (o.id().equals(EngineModel.TILT_ENDS + USUAL)) {
                assumed.add(level("along the pin", USUAL_TILT));
            } else {
                MEETINGS.stream()
                        .filter(m -> o.id().equals(m.gap().path() + USUAL))
                        .map(UsualEngine::meeting)
                        .forEach(assumed::add);
            }
        }
        return assumed;
    }

    private static DefaultUsed level(String way, double standard) {
        double most = Source.NORMAL_95 * standard;
        return taken(String.format(
                Locale.ROOT, "deck and crown stand level %s within %.2f mm (%.3f in)", way, 1e3 * most, most / INCH));
    }

    private static DefaultUsed meeting(Meeting m) {
        return taken(String.format(
                Locale.ROOT,
                "an engine that runs has a %s of %.0f mm (%.2f in) to %.0f mm (%.2f in)",
                m.gap().label(),
                1e3 * m.least(),
                m.least() / INCH,
                1e3 * m.most(),
                m.most() / INCH));
    }

    private static DefaultUsed taken(String what) {
        return new DefaultUsed(
                "what the readings are weighed by",
                what + ", 95 times in 100; no figure is worked out from it",
                "common practice, no source");
    }
}
