package longthrow.core.engine;

import static longthrow.core.engine.Alternative.row;
import static longthrow.core.engine.Bound.millimetres;
import static longthrow.core.engine.Bound.times;
import static longthrow.core.engine.Certainty.B;
import static longthrow.core.engine.Certainty.C;
import static longthrow.core.engine.Certainty.D;
import static longthrow.core.engine.Condition.when;
import static longthrow.core.engine.Evidence.CLASS_RULE;
import static longthrow.core.engine.Evidence.COMMON_PRACTICE;
import static longthrow.core.engine.Evidence.HANDBOOK;
import static longthrow.core.engine.Evidence.PART_MAKER;
import static longthrow.core.engine.Evidence.SERVICE_MANUAL;
import static longthrow.core.engine.Mend.adjust;
import static longthrow.core.engine.Mend.machine;
import static longthrow.core.engine.Mend.replace;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.Units;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * The trade's rules: the one table. Each rule judges one figure (or the same gap read in another way) and has one or more alternatives,
 * each with its limits, for which engines it is meant, where it comes from and how sure the trade is. Where the trade gives the limit
 * itself as a range, its two ends are two alternatives. A part maker's sheet and class rules stand before every row: they are the
 * owner's own rules in the build.
 */
public enum Rule {
    // ---- space above the piston
    SQUISH_LEAST(
            "squish_least",
            "least squish",
            Kind.AIM,
            List.of(Term.SQUISH, Term.SQUISH_SMALLER_END),
            adjust("cut the crown or fit a gasket thicker by {x}, crushed"),
            Mend.NONE,
            "rod size, rod metal, speed and bearing slack differ from sheet to sheet",
            row("small_kart", "small kart single, aluminium rod")
                    .when(Condition.ALUMINIUM_ROD)
                    .least(millimetres("0.76"))
                    .from(D, "0.030 in", PART_MAKER),
            row("general", "general, aluminium rod")
                    .when(Condition.ALUMINIUM_ROD)
                    .least(millimetres("1.27"))
                    .from(D, "0.050 in", PART_MAKER),
            row("large_single", "large single, aluminium rod")
                    .when(Condition.ALUMINIUM_ROD)
                    .least(millimetres("1.5"))
                    .from(D, "", PART_MAKER),
            row("steel_rod", "steel rod, tight bearings")
                    .when(Condition.STEEL_ROD)
                    .least(millimetres("0.9"))
                    .from(C, "small engines, 0.035 in", COMMON_PRACTICE, PART_MAKER),
            row("steel_rod_wide", "steel rod, the wider figure")
                    .when(Condition.STEEL_ROD)
                    .least(millimetres("1.0"))
                    .from(C, "small engines, 0.040 in", COMMON_PRACTICE, PART_MAKER)),
    SQUISH_MOST(
            "squish_most",
            "squish that still stirs the charge",
            Kind.GUIDE,
            List.of(Term.SQUISH),
            Mend.NONE,
            adjust("cut the deck or fit a gasket thinner by {x}, crushed; the least squish comes first"),
            "where stirring ends is given as a range",
            row("narrow", "petrol, the narrower figure")
                    .when(Condition.PETROL)
                    .most(millimetres("1.5"))
                    .from(C, "wider gives no turbulence and may knock", HANDBOOK, COMMON_PRACTICE),
            row("wide", "petrol, the wider figure")
                    .when(Condition.PETROL)
                    .most(millimetres("2.0"))
                    .from(C, "wider gives no turbulence and may knock", HANDBOOK, COMMON_PRACTICE)),
    STATIC_RATIO(
            "static_ratio",
            "highest static ratio for the fuel, air-cooled and hot",
            Kind.GUIDE,
            List.of(Term.COMPRESSION_RATIO, Term.RATIO_AFTER_CUT),
            Mend.NONE,
            adjust("lower the ratio by {x}: a thicker gasket if the squish allows, a bigger chamber or dish"),
            "it hangs on the fuel sold, the cam, the chamber and the heat",
            row("regular_careful", "petrol, AKI 87, careful")
                    .when(Condition.PETROL)
                    .most(ratio("8"))
                    .from(C, "", COMMON_PRACTICE),
            row("regular", "petrol, AKI 87")
                    .when(Condition.PETROL)
                    .most(ratio("9"))
                    .from(C, "", COMMON_PRACTICE),
            row("premium_careful", "petrol, AKI 91 to 93, careful")
                    .when(Condition.PETROL)
                    .most(ratio("9.5"))
                    .from(C, "", COMMON_PRACTICE),
            row("premium", "petrol, AKI 91 to 93")
                    .when(Condition.PETROL)
                    .most(ratio("10.5"))
                    .from(C, "", COMMON_PRACTICE),
            row("e85_careful", "E85, careful")
                    .when(when(Choice.FUEL, "e85"))
                    .most(ratio("11"))
                    .from(C, "depends on the cam", COMMON_PRACTICE),
            row("e85", "E85")
                    .when(when(Choice.FUEL, "e85"))
                    .most(ratio("12.5"))
                    .from(C, "depends on the cam", COMMON_PRACTICE),
            row("methanol_careful", "methanol, careful")
                    .when(when(Choice.FUEL, "methanol"))
                    .most(ratio("13"))
                    .from(C, "depends on the cam", COMMON_PRACTICE),
            row("methanol", "methanol")
                    .when(when(Choice.FUEL, "methanol"))
                    .most(ratio("15"))
                    .from(C, "depends on the cam", COMMON_PRACTICE)),
    ROD_RATIO(
            "rod_ratio",
            "rod ratio",
            Kind.GUIDE,
            List.of(Term.ROD_RATIO),
            adjust("a longer rod with a shorter piston raises it; it is no reason by itself to change a rod that fits"),
            adjust("none needed; a long rod leaves a short piston little room for its rings"),
            "whether a long rod is worth it is contested",
            row("not_harsh", "not harsh").least(ratio("1.4")).from(C, "", COMMON_PRACTICE),
            row("usual", "usual").between(ratio("1.5"), ratio("1.65")).from(C, "", COMMON_PRACTICE),
            row("long", "long rod").least(ratio("1.8")).from(C, "", COMMON_PRACTICE)),
    // ---- cylinder
    BORE_TAPER(
            "bore_taper",
            "most taper before a rebore",
            Kind.LIMIT,
            List.of(Term.BORE_TAPER),
            Mend.NONE,
            machine("rebore for the next piston, or sleeve: it is {over} over"),
            "manuals set the limit by travel or as one figure for all",
            row("per_travel", "0.0005 in per inch of travel")
                    .most(times("0.0005", Term.STROKE))
                    .from(C, "military small-engine manuals", SERVICE_MANUAL),
            row("strict", "the strict manuals").most(millimetres("0.05")).from(C, "", SERVICE_MANUAL),
            row("lenient", "the lenient manuals").most(millimetres("0.13")).from(C, "", SERVICE_MANUAL)),
    OUT_OF_ROUND(
            "out_of_round",
            "most out-of-round before a rebore",
            Kind.LIMIT,
            List.of(Term.OUT_OF_ROUND),
            Mend.NONE,
            machine("rebore for the next piston, or sleeve: it is {over} over"),
            "manuals differ",
            row("strict", "the strict manuals").most(millimetres("0.05")).from(C, "", SERVICE_MANUAL),
            row("lenient", "the lenient manuals").most(millimetres("0.13")).from(C, "", SERVICE_MANUAL)),
    SLEEVE_WALL(
            "sleeve_wall",
            "least wall of an iron sleeve",
            Kind.LIMIT,
            List.of(Term.SLEEVE_WALL),
            replace("fit a new sleeve: this one is {over} too thin; thin sleeves break"),
            Mend.NONE,
            "the figure is given as a range",
            row("thin", "the lower figure").least(millimetres("1.5")).from(C, "", COMMON_PRACTICE),
            row("thick", "the higher figure").least(millimetres("2.0")).from(C, "", COMMON_PRACTICE)),
    DECK_FLATNESS(
            "deck_flatness",
            "most gap under a straightedge on the deck",
            Kind.LIMIT,
            List.of(Term.DECK_FLATNESS),
            Mend.NONE,
            machine("lift thread edges, clean, and face the deck: {over} over"),
            "",
            row("usual", "upper end of what is usual on singles")
                    .most(millimetres("0.08"))
                    .from(C, "", COMMON_PRACTICE)),
    // ---- head, valves, springs
    HEAD_FLATNESS(
            "head_flatness",
            "most gap under a straightedge on the head",
            Kind.LIMIT,
            List.of(Term.HEAD_FLATNESS),
            Mend.NONE,
            machine("clean off carbon and lap or face the head: {over} over"),
            "",
            row("usual", "upper end of what is usual on singles")
                    .most(millimetres("0.08"))
                    .from(C, "", COMMON_PRACTICE)),
    VALVE_TO_HEAD(
            "valve_to_head",
            "least gap between open valve and head, side-valve",
            Kind.AIM,
            List.of(Term.VALVE_TO_HEAD, Term.VALVE_TO_HEAD_AFTER_CUT),
            machine("relieve the head over the valve by {x}, or fit a gasket thicker by as much"),
            Mend.NONE,
            "the figure is given as a range without a source",
            row("close", "the closer figure")
                    .when(Condition.SIDE_VALVE)
                    .least(millimetres("1.0"))
                    .from(D, "", COMMON_PRACTICE),
            row("safe", "the safer figure")
                    .when(Condition.SIDE_VALVE)
                    .least(millimetres("1.3"))
                    .from(D, "", COMMON_PRACTICE)),
    COIL_BIND_MARGIN(
            "coil_bind_margin",
            "least room before the coils touch at full lift",
            Kind.LIMIT,
            List.of(Term.COIL_BIND_MARGIN),
            replace("fit a spring with {x} more travel, or machine the seat deeper by as much and check the seat load"),
            Mend.NONE,
            "the figure is given as a range",
            row("close", "the closer figure")
                    .least(millimetres("1.0"))
                    .from(B, "0.040 in", PART_MAKER, COMMON_PRACTICE),
            row("safe", "the safer figure").least(millimetres("1.5")).from(B, "0.060 in", PART_MAKER, COMMON_PRACTICE)),
    LASH(
            "lash",
            "cold lash, overhead valve, taken past the compression release",
            Kind.AIM,
            List.of(Term.INTAKE_LASH, Term.EXHAUST_LASH),
            adjust("open the lash by {x}, cold, 6 mm of piston travel past top dead centre on compression"),
            adjust("close the lash by {x}, cold, 6 mm of piston travel past top dead centre on compression"),
            "",
            row("race", "overhead valve, racing")
                    .when(Condition.RACING.and(Choice.VALVE_LAYOUT, "overhead"))
                    .between(millimetres("0.08"), millimetres("0.10"))
                    .from(B, "", SERVICE_MANUAL, COMMON_PRACTICE),
            row("utility", "overhead valve, utility")
                    .when(Condition.MILD.and(Choice.VALVE_LAYOUT, "overhead"))
                    .between(millimetres("0.08"), millimetres("0.20"))
                    .from(B, "", SERVICE_MANUAL, COMMON_PRACTICE)),
    SEAT_WIDTH(
            "seat_width",
            "valve seat width",
            Kind.AIM,
            List.of(Term.INTAKE_SEAT_WIDTH, Term.EXHAUST_SEAT_WIDTH),
            machine("recut the seat wider by {x}"),
            machine("narrow the seat by {x} with the flatter and the steeper cutter"),
            "",
            row("usual", "usual on singles")
                    .between(millimetres("1.0"), millimetres("1.6"))
                    .from(C, "range met on singles", COMMON_PRACTICE)),
    // ---- piston, pin, rings
    PISTON_TO_WALL(
            "piston_to_wall",
            "piston to wall by alloy",
            Kind.AIM,
            List.of(Term.PISTON_TO_WALL),
            machine("hone the bore by {x}: too tight scuffs or seizes"),
            replace("a piston larger by {x}, or rebore for the next size"),
            "the same forging is run tighter with liquid cooling; air-cooled engines use the upper half",
            row("cast", "cast and high-silicon cast in an iron sleeve")
                    .when(when(Choice.PISTON_ALLOY, "cast").and(Choice.CYLINDER_METAL, "iron"))
                    .between(times("0.0005", Term.BORE), times("0.001", Term.BORE))
                    .from(C, "", SERVICE_MANUAL, COMMON_PRACTICE),
            row("high_silicon_forging", "forging of about 12 % silicon")
                    .when(when(Choice.PISTON_ALLOY, "high_silicon_forging"))
                    .between(times("0.0007", Term.BORE), times("0.0012", Term.BORE))
                    .from(C, "", PART_MAKER),
            row("high_silicon_forging_air_cooled", "forging of about 12 % silicon, air-cooled: the upper half")
                    .when(when(Choice.PISTON_ALLOY, "high_silicon_forging"))
                    .between(times("0.00095", Term.BORE), times("0.0012", Term.BORE))
                    .from(C, "upper half of 0.0007 to 0.0012", PART_MAKER),
            row("low_silicon_forging", "low-silicon forging, race, air-cooled")
                    .when(when(Choice.PISTON_ALLOY, "low_silicon_forging"))
                    .between(times("0.0012", Term.BORE), times("0.0018", Term.BORE))
                    .from(C, "", PART_MAKER, COMMON_PRACTICE)),
    PIN_CLEARANCE(
            "pin_clearance",
            "least pin clearance in an aluminium rod",
            Kind.AIM,
            List.of(Term.PIN_CLEARANCE),
            machine("hone the small end by {x}"),
            Mend.NONE,
            "",
            row("aluminium_rod", "pin in an aluminium rod")
                    .when(Condition.ALUMINIUM_ROD)
                    .least(millimetres("0.018"))
                    .from(B, "0.0007 in", PART_MAKER)),
    SKIRT_TO_COUNTERWEIGHT(
            "skirt_to_counterweight",
            "least gap between skirt and counterweight",
            Kind.AIM,
            List.of(Term.SKIRT_TO_COUNTERWEIGHT, Term.BOSS_TO_COUNTERWEIGHT),
            machine(
                    "shorten the skirt by {x} (a pin boss cannot be: turn the counterweight down), or a rod longer by as much; weigh what comes off"),
            Mend.NONE,
            "",
            row("usual", "at bottom dead centre").least(millimetres("1.5")).from(C, "", COMMON_PRACTICE)),
    TOP_RING_GAP_LEAST(
            "top_ring_gap_least",
            "least top ring gap by duty",
            Kind.AIM,
            List.of(Term.TOP_RING_GAP),
            machine("file the ring ends by {x}, square, and take off the burr"),
            Mend.NONE,
            "",
            row("mild", "utility and street, piston not forged")
                    .when(Condition.MILD.and(Choice.PISTON_ALLOY, "cast", "iron"))
                    .least(times("0.0035", Term.BORE))
                    .from(B, "0.0035 to 0.0045 in/in", COMMON_PRACTICE, SERVICE_MANUAL, PART_MAKER),
            row("mild_forged", "mild, forged piston")
                    .when(Condition.MILD.and(Choice.PISTON_ALLOY, "high_silicon_forging", "low_silicon_forging"))
                    .least(times("0.0045", Term.BORE))
                    .from(B, "", PART_MAKER),
            row("oval_or_drag", "oval or drag")
                    .when(when(Choice.DUTY, "oval_or_drag"))
                    .least(times("0.0055", Term.BORE))
                    .from(B, "given for forged pistons", PART_MAKER),
            row("boosted", "boosted")
                    .when(when(Choice.DUTY, "boosted"))
                    .least(times("0.0065", Term.BORE))
                    .from(B, "given for forged pistons", PART_MAKER)),
    SECOND_RING_GAP(
            "second_ring_gap",
            "second ring gap by the top gap",
            Kind.AIM,
            List.of(Term.SECOND_RING_GAP),
            machine("file the ring ends by {x}, square, and take off the burr"),
            replace("a ring with {x} less gap, if the engine is being built fresh"),
            "",
            row("by_top_gap", "packs of two compression rings")
                    .between(times("1.0", Term.TOP_RING_GAP), times("1.25", Term.TOP_RING_GAP))
                    .from(C, "", PART_MAKER)),
    RING_GAP_CEILING(
            "ring_gap_ceiling",
            "most ring gap of a worn engine",
            Kind.LIMIT,
            List.of(Term.TOP_RING_GAP, Term.SECOND_RING_GAP),
            Mend.NONE,
            replace("new rings: the gap is {over} over; try the old one in an unworn part of the bore first"),
            "the figure is given as a range",
            row("strict", "the stricter figure")
                    .most(millimetres("0.7"))
                    .from(C, "worn utility engines", SERVICE_MANUAL),
            row("lenient", "the lenient figure")
                    .most(millimetres("1.0"))
                    .from(C, "worn utility engines", SERVICE_MANUAL)),
    RING_SIDE_CLEARANCE(
            "ring_side_clearance",
            "top ring side clearance, rings 1.0 to 2.4 mm thick",
            Kind.LIMIT,
            List.of(Term.TOP_RING_SIDE_CLEARANCE),
            machine("clean the groove of carbon and try again; else lap the ring by {x}"),
            replace("the groove is worn by {over} too much: a new piston, or a thicker ring in a recut groove"),
            "",
            row("usual", "rings of 1.0 to 2.4 mm")
                    .between(millimetres("0.03"), millimetres("0.08"))
                    .from(B, "", SERVICE_MANUAL)),
    LEAK_DOWN_FRESH(
            "leak_down_fresh",
            "leak-down of a fresh engine",
            Kind.AIM,
            List.of(Term.LEAK_DOWN),
            Mend.NONE,
            adjust("listen at carburettor, exhaust and breather, and log it"),
            "",
            row("usual", "warm, crank locked, 100 psi").most(percent("5")).from(C, "", COMMON_PRACTICE)),
    LEAK_DOWN_REFRESH(
            "leak_down_refresh",
            "leak-down above which a refresh is planned",
            Kind.LIMIT,
            List.of(Term.LEAK_DOWN),
            Mend.NONE,
            machine("plan rings and valves: breather hiss is rings, carburettor or exhaust hiss is a valve"),
            "",
            row("usual", "warm, crank locked, 100 psi").most(percent("10")).from(C, "", COMMON_PRACTICE)),
    LEAK_DOWN_OPEN(
            "leak_down_open",
            "leak-down above which the engine is opened",
            Kind.LIMIT,
            List.of(Term.LEAK_DOWN),
            Mend.NONE,
            replace("open it before it runs again: breather hiss is rings, carburettor or exhaust hiss is a valve"),
            "",
            row("usual", "warm, crank locked, 100 psi").most(percent("20")).from(C, "", COMMON_PRACTICE)),
    // ---- rod and crankshaft
    BIG_END_CLEARANCE(
            "big_end_clearance",
            "big-end clearance",
            Kind.AIM,
            List.of(Term.BIG_END_CLEARANCE),
            machine("open the bearing by {x}: regrind the crankpin or hone the big end round"),
            machine("close the bearing by {x}: undersize insert, or another rod; never file a cap that has no shims"),
            "aluminium rods grow, and full-size practice and kart practice allow for it differently",
            row("plain", "plain journal by the handbook, taken as the least")
                    .when(Condition.HARD_BIG_END)
                    .least(times("0.001", Term.CRANKPIN_DIAMETER).plus(Quantity.of("0.0005", Units.INCH)))
                    .from(B, "0.001 in/in + 0.0005 in", HANDBOOK, COMMON_PRACTICE),
            row("service", "small engines in service")
                    .when(Condition.HARD_BIG_END)
                    .between(millimetres("0.04"), millimetres("0.06"))
                    .from(B, "", SERVICE_MANUAL),
            row("babbitt", "babbitt")
                    .when(when(Choice.BIG_END_BEARING, "babbitt"))
                    .between(times("0.001", Term.CRANKPIN_DIAMETER), times("0.0015", Term.CRANKPIN_DIAMETER))
                    .from(
                            B,
                            "0.001 in/in by handbook; the upper end, half as much again, is common practice",
                            HANDBOOK,
                            COMMON_PRACTICE),
            row("aluminium_kart", "aluminium rod, kart")
                    .when(Condition.ALUMINIUM_ROD.and(Choice.BIG_END_BEARING, "bare", "insert"))
                    .between(millimetres("0.038"), millimetres("0.064"))
                    .from(D, "0.0015 to 0.0025 in", PART_MAKER),
            row("aluminium_full_size", "aluminium rod, full-size practice")
                    .when(Condition.ALUMINIUM_ROD.and(Choice.BIG_END_BEARING, "bare", "insert"))
                    .least(millimetres("0.064"))
                    .from(D, "0.0025 in", PART_MAKER)),
    BIG_END_LIMIT(
            "big_end_limit",
            "most big-end clearance in service",
            Kind.LIMIT,
            List.of(Term.BIG_END_CLEARANCE),
            Mend.NONE,
            machine(
                    "{over} over the wear limit: take out shims where there are, else regrind and fit an undersize bearing"),
            "",
            row("service", "small engines, plain big end")
                    .when(Condition.PLAIN_BIG_END)
                    .most(millimetres("0.08"))
                    .from(B, "", SERVICE_MANUAL)),
    ROD_SIDE_CLEARANCE(
            "rod_side_clearance",
            "rod side clearance",
            Kind.AIM,
            List.of(Term.ROD_SIDE_CLEARANCE, Term.SIDE_CLEARANCE_BY_WIDTH),
            machine("face the big end narrower by {x}, both sides alike"),
            replace("a rod wider by {x} at the big end"),
            "",
            row("single", "single rod on its pin")
                    .between(millimetres("0.30"), millimetres("0.90"))
                    .from(B, "", PART_MAKER)),
    CRANK_END_PLAY_NEW(
            "crank_end_play_new",
            "crank end play, fresh",
            Kind.AIM,
            List.of(Term.CRANK_END_PLAY),
            adjust("{x} more gasket under the side cover, or a thinner shim"),
            adjust("shim the crankshaft by {x}"),
            "",
            row("new", "ball or plain mains, new")
                    .between(millimetres("0.05"), millimetres("0.20"))
                    .from(C, "", SERVICE_MANUAL)),
    CRANK_END_PLAY_LIMIT(
            "crank_end_play_limit",
            "most crank end play",
            Kind.LIMIT,
            List.of(Term.CRANK_END_PLAY),
            Mend.NONE,
            machine("shim the crankshaft by {x} or more; look for a worn thrust face"),
            "",
            row("worn", "ball or plain mains").most(millimetres("0.5")).from(C, "", SERVICE_MANUAL)),
    CRANK_RUN_OUT(
            "crank_run_out",
            "most crank run-out, total indicator reading",
            Kind.LIMIT,
            List.of(Term.CRANK_RUN_OUT),
            Mend.NONE,
            replace("another crankshaft: bent by {over} more than allowed; a straightened one stays suspect"),
            "",
            row("usual", "total indicator reading").most(millimetres("0.05")).from(B, "", SERVICE_MANUAL)),
    // ---- parts into, over and past each other
    BOSS_CLEARANCE(
            "boss_clearance",
            "least room for the small end between the pin bosses",
            Kind.AIM,
            List.of(Term.BOSS_CLEARANCE),
            machine("face the small end narrower by {x}, both sides alike"),
            Mend.NONE,
            "",
            row("usual", "both sides together").least(millimetres("0.4")).from(C, "", COMMON_PRACTICE)),
    PIN_FLOAT(
            "pin_float",
            "pin between its clips",
            Kind.AIM,
            List.of(Term.PIN_FLOAT),
            machine("grind the pin shorter by {x}, or another pin: it must not press on its clips"),
            replace("a pin longer by {x}: it hammers its clips out"),
            "",
            row("usual", "floating pin")
                    .between(millimetres("0.1"), millimetres("1.0"))
                    .from(C, "", COMMON_PRACTICE)),
    OIL_GROOVE(
            "oil_groove",
            "oil-ring groove above the pin bore",
            Kind.AIM,
            List.of(Term.OIL_GROOVE_TO_PIN),
            adjust(
                    "fit a support rail under the oil ring, as the piston's maker says: the pin bore cuts the groove open by {over}"),
            Mend.NONE,
            "",
            row("whole", "groove not cut by the pin bore")
                    .least(millimetres("0"))
                    .from(C, "", COMMON_PRACTICE)),
    TOP_RING_IN_BORE(
            "top_ring_in_bore",
            "top ring stays in the bore",
            Kind.LIMIT,
            List.of(Term.TOP_RING_TO_DECK),
            adjust("a shorter rod or piston by {x}: the top ring would catch on the deck"),
            Mend.NONE,
            "",
            row("usual", "upper edge of the ring below the deck")
                    .least(millimetres("0.5"))
                    .from(C, "room for piston rock and a chamfered bore edge", COMMON_PRACTICE)),
    SKIRT_OUT_OF_SLEEVE(
            "skirt_out_of_sleeve",
            "most skirt out of the sleeve at bottom dead centre",
            Kind.GUIDE,
            List.of(Term.SKIRT_OUT_OF_SLEEVE),
            Mend.NONE,
            adjust("a shorter skirt or a longer sleeve by {x}; a skirt out of its sleeve rocks and wears"),
            "many engines let some of the skirt out, and how much wears the skirt is not agreed",
            row("none", "none").most(millimetres("0")).from(D, "", COMMON_PRACTICE),
            row("some", "some, as many engines have").most(millimetres("6")).from(D, "", COMMON_PRACTICE)),
    PIN_BOSS_CLEARANCE(
            "pin_boss_clearance",
            "pin in the piston",
            Kind.LIMIT,
            List.of(Term.PIN_BOSS_CLEARANCE),
            replace("another pin or piston of the pair: the pin is {x} too large for its bore"),
            replace("another pin or piston of the pair: the pin rattles, {x} too loose"),
            "",
            row("usual", "floating pin, from a push fit warmed by hand to an easy slide")
                    .between(millimetres("-0.012"), millimetres("0.03"))
                    .from(D, "", COMMON_PRACTICE)),
    GASKET_OVER_BORE(
            "gasket_over_bore",
            "gasket hole and bore",
            Kind.LIMIT,
            List.of(Term.GASKET_OVER_BORE),
            replace("a gasket with a hole larger by {x}: its edge would stand in the bore and burn"),
            adjust("a gasket with a hole smaller by {x}: the pocket holds mixture that does not burn well"),
            "",
            row("usual", "hole over bore, in diameter")
                    .between(millimetres("0"), millimetres("4"))
                    .from(C, "+1 to +4 mm met on singles", COMMON_PRACTICE)),
    VALVE_TO_VALVE(
            "valve_to_valve",
            "least room between the two valve heads, shut",
            Kind.AIM,
            List.of(Term.VALVE_TO_VALVE),
            replace("smaller valves by {x} in the sum of their radii"),
            Mend.NONE,
            "",
            row("usual", "rim to rim").least(millimetres("1.0")).from(C, "", COMMON_PRACTICE)),
    VALVE_TO_WALL(
            "valve_to_wall",
            "least room between valve head and bore wall",
            Kind.AIM,
            List.of(Term.INTAKE_TO_WALL, Term.EXHAUST_TO_WALL),
            replace("a valve smaller by twice {x}"),
            Mend.NONE,
            "",
            row("usual", "rim to wall, overhead valves")
                    .when(when(Choice.VALVE_LAYOUT, "overhead"))
                    .least(millimetres("0.5"))
                    .from(C, "", COMMON_PRACTICE)),
    FLYWHEEL_ON_TAPER(
            "flywheel_on_taper",
            "flywheel on its taper",
            Kind.LIMIT,
            List.of(Term.FLYWHEEL_ON_TAPER),
            replace("a wheel with a bore larger by {x}"),
            replace("a wheel with a bore smaller by {x}"),
            "",
            row("same", "the same taper at mid key")
                    .between(millimetres("-0.1"), millimetres("0.1"))
                    .from(C, "a tenth of a millimetre moves a 1:8 taper 0.8 mm along the shaft", COMMON_PRACTICE)),
    FLYWHEEL_KEY(
            "flywheel_key",
            "flywheel key",
            Kind.LIMIT,
            List.of(Term.FLYWHEEL_KEY_STEP),
            replace("a wheel with the crankshaft's keyway, or a stepped key made for the pair"),
            replace("a wheel with the crankshaft's keyway, or a stepped key made for the pair"),
            "",
            row("same", "the same keyway")
                    .between(millimetres("-0.05"), millimetres("0.05"))
                    .from(C, "", COMMON_PRACTICE)),
    CLUTCH_ON_SHAFT(
            "clutch_on_shaft",
            "clutch on the output shaft",
            Kind.LIMIT,
            List.of(Term.CLUTCH_ON_SHAFT),
            replace("a clutch bored larger by {x}"),
            replace("a clutch bored smaller by {x}"),
            "",
            row("slip", "sliding fit")
                    .between(millimetres("0"), millimetres("0.08"))
                    .from(C, "", COMMON_PRACTICE)),
    CLUTCH_KEY(
            "clutch_key",
            "clutch key",
            Kind.LIMIT,
            List.of(Term.CLUTCH_KEY_STEP),
            replace("a clutch with the shaft's keyway"),
            replace("a clutch with the shaft's keyway"),
            "",
            row("same", "the same keyway")
                    .between(millimetres("-0.05"), millimetres("0.05"))
                    .from(C, "", COMMON_PRACTICE)),
    CLUTCH_LENGTH(
            "clutch_length",
            "shaft long enough for the clutch",
            Kind.LIMIT,
            List.of(Term.CLUTCH_OVERHANG),
            replace("a clutch that takes up {x} less shaft"),
            Mend.NONE,
            "",
            row("whole", "whole hub on the shaft").least(millimetres("0")).from(C, "", COMMON_PRACTICE)),
    // ---- spark
    COIL_GAP(
            "coil_gap",
            "coil to flywheel",
            Kind.AIM,
            List.of(Term.COIL_GAP),
            adjust("open the gap by {x} with a card of the right thickness"),
            adjust("close the gap by {x} with a card of the right thickness"),
            "",
            row("magneto", "magneto")
                    .between(millimetres("0.25"), millimetres("0.40"))
                    .from(B, "0.010 to 0.016 in", SERVICE_MANUAL)),
    IGNITION_TIMING(
            "ignition_timing",
            "spark at speed, two-valve",
            Kind.GUIDE,
            List.of(Term.TIMING_WITH_KEY),
            adjust("a key that fires {x} earlier, then read the plug"),
            adjust("a key that fires {x} later"),
            "",
            row("petrol", "petrol")
                    .when(Condition.PETROL)
                    .between(degrees("20"), degrees("28"))
                    .from(C, "before top dead centre", COMMON_PRACTICE),
            row("methanol", "methanol")
                    .when(when(Choice.FUEL, "methanol"))
                    .between(degrees("24"), degrees("36"))
                    .from(C, "before top dead centre", COMMON_PRACTICE)),
    // ---- heat
    OIL_HEAT(
            "oil_heat",
            "most heat of the oil",
            Kind.LIMIT,
            List.of(Term.OIL_TEMPERATURE),
            Mend.NONE,
            adjust(
                    "stop and let it cool: it is {over} too hot; find out why before it runs again, cooling air, oil level and mixture first"),
            "",
            row("splash", "in the case, splash oiling")
                    .most(stated("130", Units.CELSIUS))
                    .from(C, "80 to 110 °C is good", COMMON_PRACTICE)),
    // ---- speed
    MEAN_PISTON_SPEED(
            "mean_piston_speed",
            "mean piston speed at the wanted speed",
            Kind.GUIDE,
            List.of(Term.MEAN_PISTON_SPEED),
            Mend.NONE,
            adjust("lower the wanted speed until it is {x} slower"),
            "what counts as safe hangs on rod, rings and hours between rebuilds",
            row("stock_utility", "stock utility")
                    .when(Condition.MILD)
                    .most(metresPerSecond("12"))
                    .from(C, "", HANDBOOK, COMMON_PRACTICE),
            row("improved", "improved")
                    .when(Condition.RACING)
                    .most(metresPerSecond("18"))
                    .from(C, "15 to 18", HANDBOOK, COMMON_PRACTICE),
            row("good", "good parts throughout")
                    .when(Condition.RACING)
                    .most(metresPerSecond("20"))
                    .from(C, "18 to 20, 3500 to 4000 ft/min", HANDBOOK, COMMON_PRACTICE),
            row("expert", "beyond it, experts only")
                    .when(Condition.RACING)
                    .most(metresPerSecond("22"))
                    .from(C, "", HANDBOOK, COMMON_PRACTICE)),
    RING_FLUTTER(
            "ring_flutter",
            "wanted speed below ring flutter",
            Kind.GUIDE,
            List.of(Term.WANTED_SPEED),
            Mend.NONE,
            adjust("stay {over} lower, or a thinner ring"),
            "",
            row("old_type", "old-type rings")
                    .most(times("1.0", Term.RING_SPEED))
                    .from(C, "Jennings' table after Dykes", HANDBOOK)),
    RIM_SPEED(
            "rim_speed",
            "rim speed of a spoked cast-iron wheel",
            Kind.GUIDE,
            List.of(Term.RIM_SPEED),
            Mend.NONE,
            adjust("lower the wanted speed until the rim is {x} slower"),
            "the handbook figure is a range for sound iron; old castings and cracks are below it",
            row("old", "old castings")
                    .when(when(Choice.FLYWHEEL_KIND, "spoked_iron"))
                    .most(metresPerSecond("25"))
                    .from(B, "5000 ft/min; from memory", HANDBOOK),
            row("sound", "sound new iron")
                    .when(when(Choice.FLYWHEEL_KIND, "spoked_iron"))
                    .most(metresPerSecond("30"))
                    .from(B, "6000 ft/min; from memory", HANDBOOK)),
    SPEED_OVER_GOVERNED(
            "speed_over_governed",
            "wanted speed by the maker's governed speed, cast wheels",
            Kind.GUIDE,
            List.of(Term.WANTED_SPEED),
            Mend.NONE,
            adjust("hold the maker's speed, or fit a wheel whose maker rates it for the speed you want"),
            "",
            row("iron", "cast-iron wheel: a tenth over the maker's speed at most")
                    .when(when(Choice.FLYWHEEL_KIND, "solid_iron", "spoked_iron"))
                    .most(times("1.1", Term.GOVERNED_SPEED))
                    .from(
                            B,
                            "small solid wheels already run 38 to 50 m/s as governed, so a rim speed cannot judge them",
                            COMMON_PRACTICE),
            row("cast_aluminium", "cast-aluminium wheel: never past the maker's speed")
                    .when(when(Choice.FLYWHEEL_KIND, "cast_aluminium"))
                    .most(times("1.0", Term.GOVERNED_SPEED))
                    .from(D, "no safe public figure", COMMON_PRACTICE)),
    IRON_WHEEL_CLASS_CAP(
            "iron_wheel_class_cap",
            "pulling clubs' cap with an iron wheel",
            Kind.GUIDE,
            List.of(Term.WANTED_SPEED),
            Mend.NONE,
            adjust("stay {over} lower, or fit a steel or billet wheel behind a shield of 3 mm steel or 5 mm aluminium"),
            "",
            row("pulling", "pulling class, iron wheel")
                    .when(when(Choice.FLYWHEEL_KIND, "solid_iron", "spoked_iron"))
                    .most(rpm("4000"))
                    .from(B, "binds those who enter such a class and choose it", CLASS_RULE)),
    CAST_ROD_SPEED(
            "cast_rod_speed",
            "speed of a stock cast rod",
            Kind.GUIDE,
            List.of(Term.WANTED_SPEED),
            Mend.NONE,
            adjust("stay {over} lower, or fit a billet rod with new bolts"),
            "designed for the lower speed; where it breaks is a matter of luck and hours",
            row("design", "speed it was designed for")
                    .when(when(Choice.ROD_METAL, "cast_aluminium"))
                    .most(rpm("3600"))
                    .from(C, "", COMMON_PRACTICE),
            row("break_risk", "where breaking starts, 4500 to 5500 rpm")
                    .when(when(Choice.ROD_METAL, "cast_aluminium"))
                    .most(rpm("4500"))
                    .from(C, "", COMMON_PRACTICE));

    /** What a rule is for. */
    public enum Kind {
        /** How a fresh build is set. */
        AIM("aim"),
        /** Past it the part is mended or replaced. */
        LIMIT("limit"),
        /** What to expect; it decides about no part. */
        GUIDE("guide");

        private final String label;

        Kind(String label) {
            this.label = label;
        }

        public String label() {
            return label;
        }
    }

    private final String key;
    private final String label;
    private final Kind kind;

    @SuppressWarnings("ImmutableEnumChecker") // List.of is immutable, which its type does not say
    private final List<Term> terms;

    @SuppressWarnings("ImmutableEnumChecker") // a record of a text and an outcome
    private final Mend whenLow;

    @SuppressWarnings("ImmutableEnumChecker") // a record of a text and an outcome
    private final Mend whenHigh;

    private final String dispute;

    @SuppressWarnings("ImmutableEnumChecker") // List.of is immutable, which its type does not say
    private final List<Alternative> alternatives;

    Rule(
            String key,
            String label,
            Kind kind,
            List<Term> terms,
            Mend whenLow,
            Mend whenHigh,
            String dispute,
            Alternative... alternatives) {
        this.key = key;
        this.label = label;
        this.kind = kind;
        this.terms = terms;
        this.whenLow = whenLow;
        this.whenHigh = whenHigh;
        this.dispute = dispute;
        this.alternatives = List.of(alternatives);
    }

    /** The rule with this key. */
    public static Optional<Rule> at(String key) {
        return Arrays.stream(values()).filter(r -> r.key.equals(key)).findFirst();
    }

    /** The rule of the table a verdict is by; empty for an owner's own rule. */
    public static Optional<Rule> of(Verdict verdict) {
        int dot = verdict.rule().indexOf('.');
        return dot < 0 ? Optional.empty() : at(verdict.rule().substring(0, dot));
    }

    public String key() {
        return key;
    }

    /** Key of a verdict by one alternative: {@code squish_least.general}. */
    public String key(Alternative alternative) {
        return key + "." + alternative.key();
    }

    public String label() {
        return label;
    }

    public Kind kind() {
        return kind;
    }

    /** The figures it judges, the chief one first; the others are read another way or on a sister part. */
    public List<Term> terms() {
        return terms;
    }

    public Term term() {
        return terms.get(0);
    }

    /** The part whose fate it decides. */
    public Part part() {
        return switch (term()) {
            case LEAK_DOWN -> Part.RINGS;
            case VALVE_TO_HEAD -> Part.HEAD;
            case PIN_CLEARANCE -> Part.ROD;
            default -> term().part();
        };
    }

    public Mend whenLow() {
        return whenLow;
    }

    public Mend whenHigh() {
        return whenHigh;
    }

    /** Why the trade disagrees; empty where it does not. */
    public String dispute() {
        return dispute;
    }

    public List<Alternative> alternatives() {
        return alternatives;
    }

    public Optional<Alternative> alternative(String alternativeKey) {
        return alternatives.stream().filter(a -> a.key().equals(alternativeKey)).findFirst();
    }

    /** The alternative the owner picked, meant for this engine or not. */
    public Optional<Alternative> picked(Build build) {
        return Optional.ofNullable(build.rulesChosen().get(key)).flatMap(this::alternative);
    }

    /** Alternatives that may be meant for this engine, and the one the owner picked. */
    public List<Alternative> applicable(Build build) {
        Optional<Alternative> picked = picked(build);
        return alternatives.stream()
                .filter(a -> a.condition().in(build) != Condition.Holds.NO
                        || picked.filter(a::equals).isPresent())
                .toList();
    }

    /** Whether the trade disagrees about this engine, or would if more were said of it. */
    public boolean isDisputed(Build build) {
        return applicable(build).size() > 1;
    }

    /**
     * The one alternative that counts: the one picked, or the only one there is for this engine. What a class alone lays down
     * binds only those who enter it: it counts when it is picked and the engine is said to be of its kind. Own rules of the
     * build stand before it.
     */
    public Optional<Alternative> inForce(Build build) {
        Optional<Alternative> picked = picked(build);
        if (picked.isPresent()) {
            return picked.filter(a -> !isOfAClass(a) || holds(a, build));
        }
        List<Alternative> applicable = applicable(build);
        return applicable.size() == 1 && holds(applicable.get(0), build) && !isOfAClass(applicable.get(0))
                ? Optional.of(applicable.get(0))
                : Optional.empty();
    }

    /** Whether it binds only those who enter a class, and nothing says that this engine is of that kind or enters: then it says nothing. */
    boolean isForOthers(Alternative alternative, Build build) {
        return isOfAClass(alternative)
                && picked(build).isEmpty()
                && alternative.condition().in(build) == Condition.Holds.NOT_SAID;
    }

    private static boolean holds(Alternative alternative, Build build) {
        return alternative.condition().in(build) == Condition.Holds.YES;
    }

    private static boolean isOfAClass(Alternative alternative) {
        return alternative.evidence().equals(List.of(CLASS_RULE));
    }

    private static Bound stated(String decimal, Unit unit) {
        return Bound.stated(Quantity.of(decimal, unit));
    }

    private static Bound ratio(String decimal) {
        return stated(decimal, Units.BARE_RATIO);
    }

    private static Bound percent(String decimal) {
        return stated(decimal, Units.PERCENT);
    }

    private static Bound degrees(String decimal) {
        return stated(decimal, Units.DEGREE);
    }

    private static Bound metresPerSecond(String decimal) {
        return stated(decimal, Units.METRE_PER_SECOND);
    }

    private static Bound rpm(String decimal) {
        return stated(decimal, Units.RPM);
    }
}
