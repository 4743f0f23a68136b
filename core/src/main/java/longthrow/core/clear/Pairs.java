package longthrow.core.clear;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import longthrow.core.answer.Clearance.Way;
import longthrow.core.answer.Finding;
import longthrow.core.clear.Plan.Beside;
import longthrow.core.clear.Plan.Cut;
import longthrow.core.clear.Plan.Head;
import longthrow.core.clear.Plan.Shaped;
import longthrow.core.clearance.Body;
import longthrow.core.clearance.Pair;
import longthrow.core.engine.MockUp;
import longthrow.core.engine.Rule;
import longthrow.core.formula.Expression;
import longthrow.core.life.Asked;
import longthrow.core.life.Known;
import longthrow.core.measure.NoSuchPart;
import longthrow.core.term.Choice;
import longthrow.core.term.MovingPair;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** The pairs of an engine that may touch. */
final class Pairs {
    private static final Set<Warm> UNDER_PISTON =
            EnumSet.of(Warm.ROD_GROWTH, Warm.SKIRT_GROWTH, Warm.CRANK_GROWTH, Warm.STRETCH, Warm.SLACK_TO_PISTON);
    private static final Set<Warm> OVER_PISTON = EnumSet.of(
            Warm.ROD_GROWTH,
            Warm.CROWN_GROWTH,
            Warm.CYLINDER_GROWTH,
            Warm.CRANK_GROWTH,
            Warm.STRETCH,
            Warm.SLACK_TO_PISTON,
            Warm.ROCK);
    private static final Set<Warm> ROUND_ROD = EnumSet.of(Warm.ROD_GROWTH, Warm.CRANK_GROWTH, Warm.SLACK_TO_BIG_END);
    private static final Set<Warm> ROUND_ROD_AT_CAM =
            EnumSet.of(Warm.ROD_GROWTH, Warm.CRANK_GROWTH, Warm.CAM_GROWTH, Warm.SLACK_TO_BIG_END);

    private static final List<Term> BOTH_SHAFTS = List.of(Term.CRANK_END_PLAY, Term.CAM_END_PLAY);

    private static final String BOTH_WAYS =
            "clay or wire, two turns by hand, both ways of the end play of crankshaft and camshaft";

    private static final String TRACE_ROD = "trace the rod (outlines, part: connecting_rod)";

    private final Known known;
    private final List<Plan> plans = new ArrayList<>();

    private Pairs(Known known) {
        this.known = known;
    }

    /** In the order in which an engine is mocked up. */
    static List<Plan> of(Known known) {
        Pairs pairs = new Pairs(known);
        pairs.underPiston();
        boolean isOverheadCam = isOverheadCam(known);
        pairs.roundRod(!isOverheadCam);
        if (!isOverheadCam) {
            pairs.counterweightAtCam();
        }
        pairs.overPiston();
        pairs.valves(!isOverheadCam || isAnyRead(known, Part.PUSHROD));
        return List.copyOf(pairs.plans);
    }

    private static Head head(MovingPair pair, Wanted want, String how, String cut) {
        return new Head(pair, want, how, Cut.of(cut));
    }

    /** Of a pair whose second part is cut to an outline. */
    private static Head relieved(MovingPair pair, Wanted want, String how, String cut) {
        return new Head(pair, want, how, Cut.of(cut, Shaped.OTHER));
    }

    private static Head head(Swinging part, String other, Wanted want, String how, String cut) {
        return new Head(at(part.key + other), part.name, want, how, Cut.of(cut));
    }

    private static MovingPair at(String key) {
        return MovingPair.at(key).orElseThrow(() -> new IllegalStateException("no pair is called " + key));
    }

    private void add(Head head, Plan.Drawing drawing, Set<Warm> warm) {
        add(head, drawing, warm, Optional.empty());
    }

    private void add(Head head, Plan.Drawing drawing, Set<Warm> warm, Optional<Beside> beside) {
        plans.add(new Plan.Outlines(head, drawing, warm, beside, false, Optional.empty()));
    }

    private void add(Head head, Plan.Drawing drawing, Set<Warm> warm, Plan.Larger larger) {
        plans.add(new Plan.Outlines(head, drawing, warm, Optional.empty(), false, Optional.of(larger)));
    }

    // ---- what is drawn larger than it can be

    private static final Plan.Larger BEAM = new Plan.Larger(
            Term.BIG_END_REACH.path(),
            "the rod's shape between its ends is not known: drawn as a circle of the big end's reach and a straight wedge from there to the"
                    + " narrowest beam at the pin, larger than it can be",
            Optional.of(TRACE_ROD));
    /** Its outermost point is read, not on which side it stands; a rod hardly turns against its cylinder. */
    private static final Plan.Larger BIG_END = new Plan.Larger(
            Term.BIG_END_REACH.path(),
            "on which side the big end reaches farthest is not known: drawn as a full circle of its reach, larger than it can be",
            Optional.of(TRACE_ROD));
    /** What stands still meets the weights' outer edge at some angle; a lobe comes by at one angle, where perhaps no weight is. */
    private static final Plan.Larger WEIGHTS = new Plan.Larger(
            Term.COUNTERWEIGHT_RADIUS.path(),
            "whether the counterweights come by as the lobe or weight stands there is not known: drawn as a full circle of their radius, larger"
                    + " than they can be",
            Optional.of("trace the counterweights (outlines, part: counterweight)"));

    private static final Plan.Larger SOLID_SLEEVE = new Plan.Larger(
            Term.SLEEVE_LENGTH.path(),
            "where the counterweights pass the sleeve's round end is not known: the sleeve is drawn solid all across, larger than it can be",
            Optional.empty());

    private static final Plan.Larger ROCKER = new Plan.Larger(
            Term.ROCKER_OVER_RETAINER_OPEN.path(),
            "what of the rocker comes down on the retainer as it swings is not known: drawn flat across all of it, larger than it can be",
            Optional.of("read the gap over the retainer at full lift (" + Term.ROCKER_OVER_RETAINER_OPEN.path()
                    + "), or trace the rocker (outlines, part: rocker)"));

    private static final Plan.Larger RETAINER = new Plan.Larger(
            Term.RETAINER_BELOW_TIP.path(),
            "how deep the retainer is hollow within its rim is not known: drawn solid up to the rim all across, stem and all, larger than it can be",
            Optional.of("trace the retainer too (outlines, part: spring_retainer)"));

    private static final Plan.Larger DOME = new Plan.Larger(
            Term.CROWN_RISE.path(),
            "how high the crown stands under the valve is not known: drawn at its highest point all across, larger than it can be",
            Optional.empty());

    // ---- piston, counterweight, sleeve

    private void underPiston() {
        Wanted want = Wanted.of(Rule.SKIRT_TO_COUNTERWEIGHT, known);
        add(
                new Head(
                        MovingPair.SKIRT_TO_COUNTERWEIGHT,
                        want,
                        "clay on the counterweight, two turns by hand",
                        new Cut(
                                "shorten the skirt by {x} where the counterweight passes and weigh what comes off, or"
                                        + " fit a rod longer by as much",
                                Shaped.ONE,
                                List.of(Term.SKIRT_BELOW_PIN),
                                List.of())),
                (of, runs) -> underPiston(of, "piston skirt", OutlinedPart.PISTON_SKIRT, Term.SKIRT_BELOW_PIN),
                UNDER_PISTON,
                besideCounterweights(OutlinedPart.PISTON_SKIRT));
        add(
                head(
                        MovingPair.BOSS_TO_COUNTERWEIGHT,
                        want,
                        "clay on the counterweight, two turns by hand",
                        "turn the counterweights down by {x}, or fit a rod longer by as much: a pin boss cannot be"
                                + " cut"),
                (of, runs) -> underPiston(of, "pin boss", OutlinedPart.PIN_BOSS, Term.BOSS_BELOW_PIN),
                UNDER_PISTON,
                besideCounterweights(OutlinedPart.PIN_BOSS));
        add(
                relieved(
                        MovingPair.COUNTERWEIGHT_TO_SLEEVE,
                        Wanted.of(MockUp.COUNTERWEIGHT_TO_ANYTHING, known),
                        "look up from below as it is turned, clay on the sleeve's end",
                        "have the sleeve's end relieved by {x} where the counterweights pass"),
                (of, runs) -> {
                    Function<Sizes, Body> counterweight = Crankwork.counterweight(of);
                    of.figure(Term.DECK_HEIGHT);
                    of.figure(Term.SLEEVE_LENGTH);
                    return s -> new Pair(
                            counterweight.apply(s),
                            Crankwork.from("sleeve", s.of(Term.DECK_HEIGHT) - s.of(Term.SLEEVE_LENGTH)),
                            s.closer(Warm.SLACK_OF_CRANK));
                },
                EnumSet.of(Warm.CRANK_GROWTH, Warm.SLACK_OF_CRANK),
                SOLID_SLEEVE);
        counterweightToCase();
        plans.add(new Plan.OnlyMockedUp(
                head(
                        MovingPair.ROD_TO_SKIRT,
                        Wanted.of(MockUp.ROD_TO_ANYTHING, known),
                        "wire through the skirt at a quarter turn, both sides",
                        "relieve the inside of the skirt by {x} where the rod passes and weigh what comes off; never grind the rod: it may not be weakened"),
                "the inside of the skirt is not read"));
    }

    private void counterweightToCase() {
        Head head = relieved(
                MovingPair.COUNTERWEIGHT_TO_CASE,
                Wanted.of(MockUp.COUNTERWEIGHT_TO_ANYTHING, known),
                "clay at the case, two turns by hand",
                "relieve the case by {x} where the counterweights pass");
        if (known.build().outline(OutlinedPart.CASE).isEmpty()) {
            plans.add(new Plan.OnlyMockedUp(
                    head, "where the counterweights pass the case is not read, nor is its inside traced"));
            return;
        }
        add(
                head,
                (of, runs) -> {
                    Function<Sizes, Body> counterweight = Crankwork.counterweight(of);
                    Function<Sizes, Body> walls = Crankwork.caseWalls(of);
                    return s -> new Pair(counterweight.apply(s), walls.apply(s), s.closer(Warm.SLACK_OF_CRANK));
                },
                EnumSet.of(Warm.CRANK_GROWTH, Warm.SLACK_OF_CRANK));
    }

    /** Only an outline tells where a skirt or a boss is along the crankshaft. */
    private Optional<Beside> besideCounterweights(OutlinedPart part) {
        return Outlined.extent(new Asked(known), part)
                .map(extent -> extent.beside(Extent.counterweight(known), List.of(Term.CRANK_END_PLAY)));
    }

    private static Function<Sizes, Pair> underPiston(Asked of, String name, OutlinedPart part, Term reach) {
        Crankwork.asks(of);
        Function<Sizes, Body> low = Crankwork.tracedOnPiston(of, part).orElseGet(() -> {
            of.figure(reach);
            return s -> Crankwork.pistonDownTo(name, s, reach);
        });
        Function<Sizes, Body> counterweight = Crankwork.counterweight(of);
        if (!Outlined.has(of, part)) {
            of.takes(
                    reach.path(),
                    name + " is taken to reach so low all round, and the counterweights to stand under all of it",
                    "on the safe side");
        }
        return s -> new Pair(low.apply(s), counterweight.apply(s), s.closer(Warm.SLACK_TO_PISTON));
    }

    // ---- rod

    /** Something of the rod that swings round: how it is drawn, and its reach along the crankshaft in the largest of some widths. */
    private record Swinging(
            String key,
            String name,
            Optional<OutlinedPart> traceable,
            Function<Asked, Function<Sizes, Body>> shape,
            List<Term> widths,
            Extent.FromPin away,
            boolean isMiddle,
            String cut,
            Optional<Plan.Larger> larger) {
        /** Asks, and gives the drawing. */
        Function<Sizes, Body> of(Asked of) {
            Crankwork.asks(of);
            Optional<Function<Sizes, Body>> traced = traceable.flatMap(part -> Crankwork.tracedOnRod(of, part));
            if (traced.isPresent()) {
                return traced.get();
            }
            Function<Sizes, Body> drawn = shape.apply(of);
            if (isMiddle) {
                of.takes(
                        widths.get(0).path(),
                        name + " taken to stand on the rod's middle plane, and straight along it",
                        "common practice, no source");
            }
            return drawn;
        }
    }

    private void roundRod(boolean hasCam) {
        Wanted rod = Wanted.of(MockUp.ROD_TO_ANYTHING, known);
        String never = "; never grind the rod: it may not be weakened";
        boolean isTraced = known.build().outline(OutlinedPart.ROD).isPresent();
        Swinging bigEnd = new Swinging(
                "big_end",
                isTraced ? "rod with its bolts" : "rod big end",
                Optional.of(OutlinedPart.ROD),
                of -> {
                    of.figure(Term.BIG_END_REACH);
                    return Crankwork::bigEnd;
                },
                isTraced ? List.of(Term.BIG_END_WIDTH, Term.BOLT_ACROSS) : List.of(Term.BIG_END_WIDTH),
                Extent.FromPin.of(Term.BIG_END_REACH),
                false,
                never,
                isTraced ? Optional.empty() : Optional.of(BIG_END));
        Swinging bolts = new Swinging(
                "rod_bolts",
                "rod bolts",
                Optional.empty(),
                of -> {
                    of.figure(Term.BOLT_OUT);
                    of.figure(Term.BOLT_UP);
                    of.figure(Term.BOLT_DOWN);
                    of.figure(Term.BOLT_ACROSS);
                    return Crankwork::bolts;
                },
                List.of(Term.BOLT_ACROSS),
                new Extent.FromPin(
                        of -> {
                            of.figure(Term.BOLT_OUT);
                            of.figure(Term.BOLT_UP);
                            of.figure(Term.BOLT_DOWN);
                        },
                        s -> Math.hypot(
                                s.of(Term.BOLT_OUT),
                                Math.max(Math.abs(s.of(Term.BOLT_UP)), Math.abs(s.of(Term.BOLT_DOWN))))),
                true,
                "; never grind a bolt",
                Optional.empty());
        Swinging dipper = new Swinging(
                "dipper",
                "dipper",
                Optional.of(OutlinedPart.DIPPER),
                of -> {
                    of.figure(Term.DIPPER_REACH);
                    of.figure(Term.DIPPER_WIDTH);
                    return Crankwork::dipper;
                },
                List.of(Term.DIPPER_THICKNESS),
                new Extent.FromPin(
                        of -> {
                            of.figure(Term.DIPPER_REACH);
                            of.figure(Term.DIPPER_WIDTH);
                        },
                        s -> Math.hypot(s.of(Term.DIPPER_REACH), s.of(Term.DIPPER_WIDTH) / 2)),
                true,
                ", or shorten the dipper by as much if it still reaches the oil",
                Optional.empty());
        List<Swinging> swinging = new ArrayList<>(List.of(bigEnd));
        if (!isTraced) { // the bolts are in the rod's outline
            swinging.add(bolts);
        }
        if (isThere(Term.DIPPER_REACH, OutlinedPart.DIPPER)) {
            swinging.add(dipper);
        }
        for (Swinging part : swinging) {
            if (hasCam) {
                atCam(part, rod);
            }
            boolean isDipper = part.equals(dipper);
            MockUp gap = isDipper ? MockUp.DIPPER_TO_CASE : MockUp.ROD_TO_ANYTHING;
            plans.add(new Plan.Outlines(
                    new Head(
                            at(part.key + "_to_case"),
                            part.name,
                            Wanted.of(gap, known),
                            gap.how(),
                            Cut.of("relieve the case by {x} where it passes" + part.cut, Shaped.OTHER)),
                    (of, runs) -> {
                        Function<Sizes, Body> drawn = part.of(of);
                        Function<Sizes, Body> walls = Crankwork.caseWalls(of);
                        return s -> new Pair(drawn.apply(s), walls.apply(s), s.closer(Warm.SLACK_TO_BIG_END));
                    },
                    ROUND_ROD,
                    Optional.empty(),
                    false,
                    part.larger));
        }
        atSleeve(
                MovingPair.ROD_TO_SLEEVE,
                Crankwork::rod,
                Term.BIG_END_WIDTH,
                List.of(Term.BIG_END_REACH, Term.BEAM_WIDTH),
                rod,
                isTraced ? Optional.empty() : Optional.of(BEAM));
        if (isTraced) {
            return;
        }
        atSleeve(
                MovingPair.ROD_BOLTS_TO_SLEEVE,
                Crankwork::bolts,
                Term.BOLT_ACROSS,
                List.of(Term.BOLT_OUT, Term.BOLT_UP, Term.BOLT_DOWN),
                rod,
                Optional.empty());
    }

    /** Whether an engine has a part: traced, or its reach is not read as 0. */
    private boolean isThere(Term reach, OutlinedPart part) {
        return known.build().outline(part).isPresent()
                || known.figure(reach).filter(NoSuchPart::isSaidBy).isEmpty();
    }

    private void atSleeve(
            MovingPair pair,
            Function<Sizes, Body> drawn,
            Term width,
            List<Term> shape,
            Wanted want,
            Optional<Plan.Larger> larger) {
        plans.add(new Plan.Outlines(
                relieved(
                        pair,
                        want,
                        "wire between rod and sleeve at a quarter turn, both sides",
                        "have the sleeve's end relieved by {x} where the rod passes; never grind the rod"),
                (of, runs) -> {
                    Crankwork.asks(of);
                    Function<Sizes, Body> swings = Crankwork.tracedOnRod(of, OutlinedPart.ROD)
                            .orElseGet(() -> {
                                shape.forEach(of::figure);
                                return drawn;
                            });
                    of.figure(width);
                    of.figure(Term.BORE);
                    of.figure(Term.DECK_HEIGHT);
                    of.figure(Term.SLEEVE_LENGTH);
                    return s -> new Pair(
                            swings.apply(s), Crankwork.sleeve(s, s.of(width) / 2), s.closer(Warm.SLACK_TO_BIG_END));
                },
                ROUND_ROD,
                Optional.empty(),
                false,
                larger));
    }

    private void atCam(Swinging part, Wanted want) {
        String cut = "the camshaft cannot be cut: another rod or camshaft with {x} more room" + part.cut;
        String how = MockUp.ROD_TO_ANYTHING.how();
        plans.add(new Plan.Outlines(
                head(part, "_to_cam_core", want, how, cut),
                (of, runs) -> pair(part, of, Camwork::core),
                ROUND_ROD_AT_CAM,
                Optional.empty(),
                false,
                part.larger));
        for (Part valve : List.of(Part.INTAKE_VALVE, Part.EXHAUST_VALVE)) {
            String lobe = valve == Part.INTAKE_VALVE ? "_to_intake_lobe" : "_to_exhaust_lobe";
            plans.add(new Plan.Outlines(
                    head(part, lobe, want, how, cut),
                    (of, runs) -> pair(part, of, asked -> Camwork.lobe(asked, valve)),
                    ROUND_ROD_AT_CAM,
                    Optional.of(besideRod(part, Extent.lobe(known, valve))),
                    true,
                    part.larger));
        }
        if (hasRelease()) {
            plans.add(new Plan.Outlines(
                    head(part, "_to_release", want, how, cut),
                    (of, runs) -> pair(part, of, Camwork::release),
                    ROUND_ROD_AT_CAM,
                    Optional.of(besideRod(part, Extent.release(known))),
                    true,
                    part.larger));
        }
    }

    private static Function<Sizes, Pair> pair(Swinging part, Asked of, Function<Asked, Function<Sizes, Body>> onShaft) {
        Function<Sizes, Body> drawn = part.of(of);
        Function<Sizes, Body> other = onShaft.apply(of);
        return s -> new Pair(drawn.apply(s), other.apply(s), s.closer(Warm.SLACK_TO_BIG_END));
    }

    private boolean hasRelease() {
        return isThere(Term.RELEASE_REACH, OutlinedPart.RELEASE);
    }

    private Beside besideRod(Swinging part, Extent onShaft) {
        Extent.FromPin away = part.traceable
                .flatMap(traced -> Outlined.farthest(known, traced))
                .orElse(part.away);
        return Extent.onRod(known, part.traceable, part.widths, away).beside(onShaft, BOTH_SHAFTS);
    }

    private void counterweightAtCam() {
        String cut = "turn the counterweights down by {x}, which moves the balance: see shake";
        String[] keys = {"cam_core", "intake_lobe", "exhaust_lobe", "release"};
        for (String key : keys) {
            if (key.equals("release") && !hasRelease()) {
                continue;
            }
            Plan.Drawing drawing = (of, runs) -> {
                Function<Sizes, Body> counterweight = Crankwork.counterweight(of);
                Function<Sizes, Body> other = switch (key) {
                    case "cam_core" -> Camwork.core(of);
                    case "intake_lobe" -> Camwork.lobe(of, Part.INTAKE_VALVE);
                    case "exhaust_lobe" -> Camwork.lobe(of, Part.EXHAUST_VALVE);
                    default -> Camwork.release(of);
                };
                return s -> new Pair(counterweight.apply(s), other.apply(s), s.closer(Warm.SLACK_OF_CRANK));
            };
            Optional<Extent> along = switch (key) {
                case "cam_core" -> Optional.empty();
                case "intake_lobe" -> Optional.of(Extent.lobe(known, Part.INTAKE_VALVE));
                case "exhaust_lobe" -> Optional.of(Extent.lobe(known, Part.EXHAUST_VALVE));
                default -> Optional.of(Extent.release(known));
            };
            plans.add(new Plan.Outlines(
                    head(
                            at("counterweight_to_" + key),
                            Wanted.of(MockUp.COUNTERWEIGHT_TO_ANYTHING, known),
                            BOTH_WAYS,
                            cut),
                    drawing,
                    EnumSet.of(Warm.CRANK_GROWTH, Warm.CAM_GROWTH, Warm.SLACK_OF_CRANK),
                    along.map(a -> Extent.counterweight(known).beside(a, BOTH_SHAFTS)),
                    along.isPresent(),
                    along.isPresent()
                                    && known.build()
                                            .outline(OutlinedPart.COUNTERWEIGHT)
                                            .isEmpty()
                            ? Optional.of(WEIGHTS)
                            : Optional.empty()));
        }
    }

    // ---- above the piston

    private void overPiston() {
        add(
                head(
                        MovingPair.PISTON_TO_HEAD,
                        Wanted.of(Rule.SQUISH_LEAST, known),
                        "solder at both ends of the pin line, head tightened",
                        "cut the crown or fit a gasket thicker by {x}, crushed"),
                (of, runs) -> Valves.crownToHead(of),
                OVER_PISTON);
        plans.add(new Plan.Told(
                head(
                        MovingPair.TOP_RING_TO_DECK,
                        Wanted.of(Rule.TOP_RING_IN_BORE, known),
                        "depth gauge at top dead centre, and look for the ring's edge",
                        "a shorter rod or piston by {x}: the ring would catch on the deck"),
                of -> of.figure(Term.TOP_RING_TO_DECK),
                Way.TRAVEL,
                0,
                "how far the ring rises warm is not worked out"));
        plans.add(new Plan.Told(
                head(
                        MovingPair.OIL_RING_TO_SLEEVE_END,
                        Wanted.NOTHING,
                        "look from below at bottom dead centre",
                        "a longer rod or sleeve by {x}: the ring would spring out below"),
                of -> of.figure(Term.SLEEVE_LENGTH)
                        .minus(of.figure(Term.DECK_CLEARANCE))
                        .minus(of.figure(Term.STROKE))
                        .minus(of.figure(Term.OIL_GROOVE_TO_CROWN)),
                Way.TRAVEL,
                Math.PI,
                "how far the ring sinks warm is not worked out"));
    }

    // ---- valves

    private void valves(boolean hasPushrods) {
        Optional<String> layout = known.build().choice(Choice.VALVE_LAYOUT);
        boolean maybeOverhead = !isSide(known) || isAnyRead(known, Part.ROCKER) || isAnyRead(known, Part.PUSHROD);
        boolean maybeSide = layout.filter("overhead"::equals).isEmpty();
        if (maybeOverhead) {
            for (Part valve : List.of(Part.INTAKE_VALVE, Part.EXHAUST_VALVE)) {
                overhead(valve);
            }
        }
        add(
                head(
                        MovingPair.VALVE_TO_VALVE,
                        Wanted.of(Rule.VALVE_TO_VALVE, known),
                        "soft springs in, both opened by hand as the camshaft would about overlap",
                        "smaller heads by {x} in the sum of their radii, or a camshaft with less overlap"),
                Valves::toEachOther,
                Set.of());
        if (maybeSide) {
            plans.add(new Plan.Told(
                    head(
                            MovingPair.VALVE_TO_HEAD,
                            Wanted.of(Rule.VALVE_TO_HEAD, known),
                            Term.VALVE_TO_HEAD.reading().how(),
                            "relieve the head over the valve by {x}, or fit a gasket thicker by as much"),
                    of -> of.figure(Term.VALVE_TO_HEAD),
                    Way.TRAVEL,
                    Double.NaN,
                    "read by clay, cold"));
        }
        if (maybeOverhead) {
            plans.add(new Plan.Outlines(
                    head(
                            MovingPair.RETAINER_TO_ROCKER,
                            Wanted.of(MockUp.RETAINER_TO_ROCKER, known),
                            "wire between retainer and rocker, shut and at full lift",
                            "a smaller retainer, or a rocker with {x} more room; never grind a rocker: it may not be weakened"),
                    Rockerwork::retainerUnderRocker,
                    EnumSet.of(Warm.GAP_TO_RETAINER),
                    Optional.empty(),
                    false,
                    Rockerwork.isFlat(new Asked(known))
                            ? Optional.of(ROCKER)
                            : isRockerAloneTraced() ? Optional.of(RETAINER) : Optional.empty()));
            if (hasPushrods) {
                add(
                        head(
                                MovingPair.PUSHROD_TO_TUBE,
                                Wanted.of(MockUp.PUSHROD_TO_TUBE, known),
                                "wire beside the pushrod, two turns by hand, at both lash and full lift; marking blue shows where",
                                "open the tube by {x} all round where it marks, or a pushrod thinner by twice as much; never grind a pushrod"),
                        (of, runs) -> Rockerwork.pushrodInTube(of),
                        EnumSet.of(Warm.GEAR_GROWTH));
            }
        }
    }

    /** Whether something of a part was written down, so that the engine has it whatever else is said. */
    private static boolean isAnyRead(Known known, Part part) {
        return Term.read().stream()
                .anyMatch(term -> term.part() == part && !known.build().of(term).isEmpty());
    }

    private static boolean isSide(Known known) {
        return known.build().choice(Choice.VALVE_LAYOUT).filter("side"::equals).isPresent();
    }

    private static boolean isOverheadCam(Known known) {
        return known.build()
                .choice(Choice.CAM_DRIVE)
                .filter(drive -> drive.startsWith("overhead"))
                .isPresent();
    }

    /** Words that leave an engine without a part of which something was read. */
    static List<Finding> contradictions(Known known) {
        List<Finding> findings = new ArrayList<>();
        boolean isSide = isSide(known);
        if (isSide && isAnyRead(known, Part.ROCKER)) {
            findings.add(contradiction(Choice.VALVE_LAYOUT, Part.ROCKER));
        }
        if ((isSide || isOverheadCam(known)) && isAnyRead(known, Part.PUSHROD)) {
            findings.add(contradiction(isSide ? Choice.VALVE_LAYOUT : Choice.CAM_DRIVE, Part.PUSHROD));
        }
        return findings;
    }

    private static Finding contradiction(Choice word, Part part) {
        return new Finding(
                Finding.Kind.SUSPECT,
                word.path(),
                "an engine as this word says has no " + part.label()
                        + ", and readings of one are written down: its gaps are looked at as if it were there",
                "write the word that is true of this engine, or take the readings of the " + part.label() + " out");
    }

    private boolean isRockerAloneTraced() {
        return known.build().outline(OutlinedPart.ROCKER).isPresent()
                && known.build().outline(OutlinedPart.RETAINER).isEmpty();
    }

    /** Whether a valve without a pocket is held against the highest point of a crown that is not flat. */
    private boolean isUnderADome(Term pocket) {
        return known.figure(pocket).filter(p -> p.value() == 0).isPresent()
                && known.figure(Term.CROWN_RISE).filter(r -> r.value() > 0).isPresent();
    }

    private void overhead(Part valve) {
        boolean isIntake = valve == Part.INTAKE_VALVE;
        String word = isIntake ? "intake" : "exhaust";
        MockUp gap = isIntake ? MockUp.VALVE_TO_PISTON_INTAKE : MockUp.VALVE_TO_PISTON_EXHAUST;
        plans.add(new Plan.Outlines(
                new Head(
                        at(word + "_valve_to_piston"),
                        Wanted.of(gap, known),
                        gap.how(),
                        new Cut(
                                "deepen the pocket by {x}, or fit a gasket thicker by as much",
                                Shaped.OTHER,
                                List.of(Term.CROWN_THICKNESS),
                                List.of(isIntake ? Term.INTAKE_POCKET : Term.EXHAUST_POCKET))),
                (of, runs) -> Valves.of(valve).toPiston(of, runs),
                OVER_PISTON,
                Optional.empty(),
                true,
                isUnderADome(isIntake ? Term.INTAKE_POCKET : Term.EXHAUST_POCKET)
                        ? Optional.of(DOME)
                        : Optional.empty()));
        add(
                relieved(
                        at(word + "_valve_to_wall"),
                        Wanted.of(Rule.VALVE_TO_WALL, known),
                        "soft spring in, opened by hand, feeler at the bore",
                        "a smaller head by twice {x}, or relieve the bore's edge"),
                (of, runs) -> Valves.of(valve).toWall(of, runs),
                Set.of());
        plans.add(new Plan.Told(
                head(
                        at(word + "_retainer_to_seal"),
                        Wanted.of(MockUp.RETAINER_TO_SEAL, known),
                        MockUp.RETAINER_TO_SEAL.how(),
                        "a shorter guide or a retainer that sits {x} higher"),
                of -> {
                    Expression travel = of.figure(Term.RETAINER_TO_SEAL);
                    return travel.minus(of.figure(Lift.full(valve)));
                },
                Way.TRAVEL,
                Double.NaN,
                "a travel, read cold"));
    }
}
