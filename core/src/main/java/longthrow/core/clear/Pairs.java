package longthrow.core.clear;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import longthrow.core.answer.Clearance.Way;
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
import longthrow.core.term.Choice;
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

    private static final String BOTH_WAYS =
            "clay or wire, two turns by hand, both ways of the end play of crankshaft and camshaft";

    private final Known known;
    private final List<Plan> plans = new ArrayList<>();

    private Pairs(Known known) {
        this.known = known;
    }

    /** In the order in which an engine is mocked up. */
    static List<Plan> of(Known known) {
        Pairs pairs = new Pairs(known);
        pairs.underPiston();
        boolean isOverheadCam = known.build()
                .choice(Choice.CAM_DRIVE)
                .filter(drive -> drive.startsWith("overhead"))
                .isPresent();
        pairs.roundRod(!isOverheadCam);
        if (!isOverheadCam) {
            pairs.counterweightAtCam();
        }
        pairs.overPiston();
        pairs.valves(!isOverheadCam);
        return List.copyOf(pairs.plans);
    }

    private Head head(String key, String one, String other, Wanted want, String how, String cut) {
        return new Head(key, one, other, want, how, Cut.of(cut));
    }

    /** Of a pair whose second part is cut to an outline. */
    private Head relieved(String key, String one, String other, Wanted want, String how, String cut) {
        return new Head(key, one, other, want, how, Cut.of(cut, Shaped.OTHER));
    }

    private void add(Head head, Plan.Drawing drawing, Set<Warm> warm) {
        plans.add(new Plan.Outlines(head, drawing, warm, Optional.empty(), false));
    }

    // ---- piston, counterweight, sleeve

    private void underPiston() {
        Wanted want = Wanted.of(Rule.SKIRT_TO_COUNTERWEIGHT, known);
        add(
                new Head(
                        "skirt_to_counterweight",
                        "piston skirt",
                        "counterweight",
                        want,
                        "clay on the counterweight, two turns by hand",
                        new Cut(
                                "shorten the skirt by {x} where the counterweight passes and weigh what comes off, or"
                                        + " fit a rod longer by as much",
                                Shaped.ONE,
                                List.of(Term.SKIRT_BELOW_PIN),
                                List.of())),
                (of, runs) -> underPiston(of, "piston skirt", Term.SKIRT_BELOW_PIN),
                UNDER_PISTON);
        add(
                head(
                        "boss_to_counterweight",
                        "pin boss",
                        "counterweight",
                        want,
                        "clay on the counterweight, two turns by hand",
                        "turn the counterweights down by {x}, or fit a rod longer by as much: a pin boss cannot be"
                                + " cut"),
                (of, runs) -> underPiston(of, "pin boss", Term.BOSS_BELOW_PIN),
                UNDER_PISTON);
        add(
                relieved(
                        "counterweight_to_sleeve",
                        "counterweight",
                        "lower end of the sleeve",
                        Wanted.NOTHING,
                        "look up from below as it is turned, clay on the sleeve's end",
                        "have the sleeve's end relieved by {x} where the counterweights pass"),
                (of, runs) -> {
                    of.figure(Term.COUNTERWEIGHT_RADIUS);
                    of.figure(Term.DECK_HEIGHT);
                    of.figure(Term.SLEEVE_LENGTH);
                    return s -> new Pair(
                            Crankwork.counterweight(s),
                            Crankwork.from("sleeve", s.of(Term.DECK_HEIGHT) - s.of(Term.SLEEVE_LENGTH)),
                            s.warm(Warm.SLACK_OF_CRANK));
                },
                EnumSet.of(Warm.CRANK_GROWTH, Warm.SLACK_OF_CRANK));
        plans.add(new Plan.OnlyMockedUp(
                head(
                        "counterweight_to_case",
                        "counterweight",
                        "case",
                        Wanted.NOTHING,
                        "clay at the case, two turns by hand",
                        ""),
                "where the counterweights pass the case is not read"));
        plans.add(new Plan.OnlyMockedUp(
                head(
                        "rod_to_skirt",
                        "rod beam",
                        "inside of the skirt",
                        Wanted.NOTHING,
                        "wire through the skirt at a quarter turn, both sides",
                        ""),
                "the inside of the skirt is not read"));
    }

    private static Function<Sizes, Pair> underPiston(Asked of, String name, Term reach) {
        Crankwork.asks(of);
        of.figure(reach);
        of.figure(Term.COUNTERWEIGHT_RADIUS);
        of.takes(
                reach.path(),
                name + " is taken to reach so low all round, and the counterweights to stand under all of it",
                "on the safe side");
        return s -> new Pair(
                Crankwork.pistonDownTo(name, s, reach), Crankwork.counterweight(s), s.warm(Warm.SLACK_TO_PISTON));
    }

    // ---- rod

    /** Something of the rod that swings round: how it is drawn and how far it reaches along the crankshaft. */
    private record Swinging(
            String key,
            String name,
            Consumer<Asked> asks,
            Function<Sizes, Body> drawn,
            Term width,
            boolean isMiddle,
            String cut) {}

    private void roundRod(boolean hasCam) {
        Wanted rod = Wanted.of(MockUp.ROD_TO_ANYTHING, known);
        String never = "; never grind the rod: it may not be weakened";
        Swinging bigEnd = new Swinging(
                "big_end",
                "rod big end",
                of -> of.figure(Term.BIG_END_REACH),
                Crankwork::bigEnd,
                Term.BIG_END_WIDTH,
                false,
                never);
        Swinging bolts = new Swinging(
                "rod_bolts",
                "rod bolts",
                of -> {
                    of.figure(Term.BOLT_OUT);
                    of.figure(Term.BOLT_UP);
                    of.figure(Term.BOLT_DOWN);
                    of.figure(Term.BOLT_ACROSS);
                },
                Crankwork::bolts,
                Term.BOLT_ACROSS,
                true,
                "; never grind a bolt");
        Swinging dipper = new Swinging(
                "dipper",
                "dipper",
                of -> {
                    of.figure(Term.DIPPER_REACH);
                    of.figure(Term.DIPPER_WIDTH);
                },
                Crankwork::dipper,
                Term.DIPPER_THICKNESS,
                true,
                ", or shorten the dipper by as much if it still reaches the oil");
        boolean hasDipper = known.figure(Term.DIPPER_REACH)
                .filter(reach -> reach.value() == 0)
                .isEmpty();
        for (Swinging part : hasDipper ? List.of(bigEnd, bolts, dipper) : List.of(bigEnd, bolts)) {
            if (hasCam) {
                atCam(part, rod);
            }
            boolean isDipper = part.equals(dipper);
            MockUp gap = isDipper ? MockUp.DIPPER_TO_CASE : MockUp.ROD_TO_ANYTHING;
            add(
                    relieved(
                            part.key + "_to_case",
                            part.name,
                            "case",
                            Wanted.of(gap, known),
                            gap.how(),
                            "relieve the case by {x} where it passes" + part.cut),
                    (of, runs) -> {
                        asks(of, part);
                        of.figure(Term.CASE_BELOW);
                        of.figure(Term.CASE_THRUST);
                        of.figure(Term.CASE_ANTITHRUST);
                        return s ->
                                new Pair(part.drawn.apply(s), Crankwork.caseWalls(s), s.warm(Warm.SLACK_TO_BIG_END));
                    },
                    ROUND_ROD);
        }
        atSleeve(
                "rod_to_sleeve",
                "rod",
                Crankwork::rod,
                Term.BIG_END_WIDTH,
                List.of(Term.BIG_END_REACH, Term.BEAM_WIDTH),
                rod);
        atSleeve(
                "rod_bolts_to_sleeve",
                "rod bolts",
                Crankwork::bolts,
                Term.BOLT_ACROSS,
                List.of(Term.BOLT_OUT, Term.BOLT_UP, Term.BOLT_DOWN),
                rod);
    }

    private static void asks(Asked of, Swinging part) {
        Crankwork.asks(of);
        part.asks.accept(of);
        if (part.isMiddle) {
            of.takes(
                    part.width.path(),
                    part.name + " taken to stand on the rod's middle plane, and straight along it",
                    "common practice, no source");
        }
    }

    private void atSleeve(
            String key, String name, Function<Sizes, Body> drawn, Term width, List<Term> shape, Wanted want) {
        add(
                relieved(
                        key,
                        name,
                        "lower end of the sleeve",
                        want,
                        "wire between rod and sleeve at a quarter turn, both sides",
                        "have the sleeve's end relieved by {x} where the rod passes; never grind the rod"),
                (of, runs) -> {
                    Crankwork.asks(of);
                    shape.forEach(of::figure);
                    of.figure(width);
                    of.figure(Term.BORE);
                    of.figure(Term.DECK_HEIGHT);
                    of.figure(Term.SLEEVE_LENGTH);
                    return s -> new Pair(
                            drawn.apply(s), Crankwork.sleeve(s, s.of(width) / 2), s.warm(Warm.SLACK_TO_BIG_END));
                },
                ROUND_ROD);
    }

    private void atCam(Swinging part, Wanted want) {
        String cut = "the camshaft cannot be cut: another rod or camshaft with {x} more room" + part.cut;
        String how = MockUp.ROD_TO_ANYTHING.how();
        plans.add(new Plan.Outlines(
                head(part.key + "_to_cam_core", part.name, "camshaft core", want, how, cut),
                (of, runs) -> {
                    asks(of, part);
                    return pair(part, Camwork.core(of));
                },
                ROUND_ROD_AT_CAM,
                Optional.empty(),
                false));
        for (Part valve : List.of(Part.INTAKE_VALVE, Part.EXHAUST_VALVE)) {
            String lobe = valve == Part.INTAKE_VALVE ? "intake lobe" : "exhaust lobe";
            plans.add(new Plan.Outlines(
                    head(part.key + "_to_" + lobe.replace(' ', '_'), part.name, lobe, want, how, cut),
                    (of, runs) -> {
                        asks(of, part);
                        return pair(part, Camwork.lobe(of, valve));
                    },
                    ROUND_ROD_AT_CAM,
                    Optional.of(besideRod(part, Camwork.Along.lobe(valve))),
                    true));
        }
        if (hasRelease()) {
            plans.add(new Plan.Outlines(
                    head(part.key + "_to_release", part.name, "compression release", want, how, cut),
                    (of, runs) -> {
                        asks(of, part);
                        return pair(part, Camwork.release(of));
                    },
                    ROUND_ROD_AT_CAM,
                    Optional.of(besideRod(part, Camwork.Along.RELEASE)),
                    true));
        }
    }

    private static Function<Sizes, Pair> pair(Swinging part, Function<Sizes, Body> other) {
        return s -> new Pair(part.drawn.apply(s), other.apply(s), s.warm(Warm.SLACK_TO_BIG_END));
    }

    private boolean hasRelease() {
        return known.figure(Term.RELEASE_REACH)
                .filter(reach -> reach.value() == 0)
                .isEmpty();
    }

    private Beside besideRod(Swinging part, Camwork.Along along) {
        boolean isByWidth = known.figure(Term.ROD_SIDE_CLEARANCE).isEmpty()
                && known.figure(Term.SIDE_CLEARANCE_BY_WIDTH).isPresent();
        Term side = isByWidth ? Term.SIDE_CLEARANCE_BY_WIDTH : Term.ROD_SIDE_CLEARANCE;
        Consumer<Asked> asks = of -> {
            along.asks(of);
            of.figure(part.width);
            of.figure(side);
        };
        ToDoubleFunction<Sizes> gap = s -> along.besideRod(s, s.of(part.width) / 2, s.of(side) / 2);
        return new Beside(asks, gap);
    }

    private void counterweightAtCam() {
        String cut = "turn the counterweights down by {x}, which moves the balance: see shake";
        String[] keys = {"cam_core", "intake_lobe", "exhaust_lobe", "release"};
        for (String key : keys) {
            if (key.equals("release") && !hasRelease()) {
                continue;
            }
            String name = key.equals("cam_core")
                    ? "camshaft core"
                    : key.equals("release") ? "compression release" : key.replace('_', ' ');
            Plan.Drawing drawing = (of, runs) -> {
                of.figure(Term.COUNTERWEIGHT_RADIUS);
                Function<Sizes, Body> other = switch (key) {
                    case "cam_core" -> Camwork.core(of);
                    case "intake_lobe" -> Camwork.lobe(of, Part.INTAKE_VALVE);
                    case "exhaust_lobe" -> Camwork.lobe(of, Part.EXHAUST_VALVE);
                    default -> Camwork.release(of);
                };
                return s -> new Pair(Crankwork.counterweight(s), other.apply(s), s.warm(Warm.SLACK_OF_CRANK));
            };
            Optional<Camwork.Along> along = switch (key) {
                case "cam_core" -> Optional.empty();
                case "intake_lobe" -> Optional.of(Camwork.Along.lobe(Part.INTAKE_VALVE));
                case "exhaust_lobe" -> Optional.of(Camwork.Along.lobe(Part.EXHAUST_VALVE));
                default -> Optional.of(Camwork.Along.RELEASE);
            };
            plans.add(new Plan.Outlines(
                    head("counterweight_to_" + key, "counterweight", name, Wanted.NOTHING, BOTH_WAYS, cut),
                    drawing,
                    EnumSet.of(Warm.CRANK_GROWTH, Warm.CAM_GROWTH, Warm.SLACK_OF_CRANK),
                    along.map(a -> new Beside(
                            of -> {
                                a.asks(of);
                                of.figure(Term.COUNTERWEIGHT_FACES);
                                of.figure(Term.COUNTERWEIGHT_THICKNESS);
                            },
                            a::besideCounterweights)),
                    along.isPresent()));
        }
    }

    // ---- above the piston

    private void overPiston() {
        add(
                head(
                        "piston_to_head",
                        "piston crown",
                        "head",
                        Wanted.of(Rule.SQUISH_LEAST, known),
                        "solder at both ends of the pin line, head tightened",
                        "cut the crown or fit a gasket thicker by {x}, crushed"),
                (of, runs) -> Valves.crownToHead(of),
                OVER_PISTON);
        plans.add(new Plan.Told(
                head(
                        "top_ring_to_deck",
                        "top ring",
                        "edge of the deck",
                        Wanted.of(Rule.TOP_RING_IN_BORE, known),
                        "depth gauge at top dead centre, and look for the ring's edge",
                        "a shorter rod or piston by {x}: the ring would catch on the deck"),
                of -> of.figure(Term.TOP_RING_TO_DECK),
                Way.TRAVEL,
                0,
                "how far the ring rises warm is not worked out"));
        plans.add(new Plan.Told(
                head(
                        "oil_ring_to_sleeve_end",
                        "oil ring",
                        "lower end of the sleeve",
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
        boolean maybeOverhead = layout.filter("side"::equals).isEmpty();
        boolean maybeSide = layout.filter("overhead"::equals).isEmpty();
        if (maybeOverhead) {
            for (Part valve : List.of(Part.INTAKE_VALVE, Part.EXHAUST_VALVE)) {
                overhead(valve);
            }
        }
        add(
                head(
                        "valve_to_valve",
                        "intake valve",
                        "exhaust valve",
                        Wanted.of(Rule.VALVE_TO_VALVE, known),
                        "soft springs in, both opened by hand as the camshaft would about overlap",
                        "smaller heads by {x} in the sum of their radii, or a camshaft with less overlap"),
                Valves::toEachOther,
                Set.of());
        if (maybeSide) {
            plans.add(new Plan.Told(
                    head(
                            "valve_to_head",
                            "open valve",
                            "head",
                            Wanted.of(Rule.VALVE_TO_HEAD, known),
                            Term.VALVE_TO_HEAD.reading().how(),
                            "relieve the head over the valve by {x}, or fit a gasket thicker by as much"),
                    of -> of.figure(Term.VALVE_TO_HEAD),
                    Way.TRAVEL,
                    Double.NaN,
                    "read by clay, cold"));
        }
        if (maybeOverhead) {
            plans.add(new Plan.OnlyMockedUp(
                    head(
                            "retainer_to_rocker",
                            "spring retainer",
                            "rocker",
                            Wanted.NOTHING,
                            "wire between retainer and rocker, shut and at full lift",
                            ""),
                    "the shape of the rocker is not read"));
            if (hasPushrods) {
                plans.add(new Plan.OnlyMockedUp(
                        head(
                                "pushrod_to_tube",
                                "pushrod",
                                "its tube or hole",
                                Wanted.NOTHING,
                                "marking blue on the pushrod, two turns by hand, at both lash and full lift",
                                ""),
                        "the tube is not read"));
            }
        }
    }

    private void overhead(Part valve) {
        boolean isIntake = valve == Part.INTAKE_VALVE;
        String word = isIntake ? "intake" : "exhaust";
        MockUp gap = isIntake ? MockUp.VALVE_TO_PISTON_INTAKE : MockUp.VALVE_TO_PISTON_EXHAUST;
        plans.add(new Plan.Outlines(
                new Head(
                        word + "_valve_to_piston",
                        word + " valve",
                        "piston",
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
                true));
        add(
                relieved(
                        word + "_valve_to_wall",
                        word + " valve",
                        "bore wall",
                        Wanted.of(Rule.VALVE_TO_WALL, known),
                        "soft spring in, opened by hand, feeler at the bore",
                        "a smaller head by twice {x}, or relieve the bore's edge"),
                (of, runs) -> Valves.of(valve).toWall(of, runs),
                Set.of());
        plans.add(new Plan.Told(
                head(
                        word + "_retainer_to_seal",
                        word + " spring retainer",
                        "valve seal or guide",
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
