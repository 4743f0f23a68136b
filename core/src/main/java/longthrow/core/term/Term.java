package longthrow.core.term;

import static longthrow.core.term.Believable.cc;
import static longthrow.core.term.Believable.deg;
import static longthrow.core.term.Believable.grams;
import static longthrow.core.term.Believable.mm;
import static longthrow.core.term.Believable.mm2;
import static longthrow.core.term.Believable.rpm;
import static longthrow.core.term.Believable.si;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import longthrow.core.quantity.Dimension;
import org.jspecify.annotations.Nullable;

/**
 * The one registry of terms: each quantity of the trade with its key, part, dimension, sign, symbol, label and meaning.
 * Terms that are read on the bench stand in stripping order and carry how they are read; terms that are worked out carry none.
 * Keys are only ever added (docs/decisions/0002).
 */
public enum Term {
    // spotless:off  one row a term: key, part, how read (or dimension), symbol, believable range, sign, label, meaning
    // ---- as found
    CRANKING_PRESSURE("cranking_pressure", Part.WHOLE, ReadingKind.PRESSURE, "p_c", si(0, 2e6), "", "cranking pressure", "highest gauge pressure while pulling the starter, throttle open"),
    LEAK_DOWN("leak_down", Part.WHOLE, ReadingKind.LEAK, "q_l", si(0, 1), "", "leak-down", "share of the supplied air that the cylinder loses at top dead centre, crank locked"),
    OUTPUT_SHAFT_DIAMETER("diameter", Part.OUTPUT_SHAFT, ReadingKind.OUTSIDE, "d_s", mm(10, 40), "", "output shaft diameter", "diameter where clutch or pulley sits"),
    OUTPUT_SHAFT_LENGTH("usable_length", Part.OUTPUT_SHAFT, ReadingKind.OUTSIDE, "l_s", mm(15, 120), "", "output shaft usable length", "shaft end to the shoulder that stops the clutch"),
    OUTPUT_SHAFT_KEYWAY("keyway_width", Part.OUTPUT_SHAFT, ReadingKind.OUTSIDE, "b_s", mm(1.5, 13), "", "output shaft keyway", "width of the keyway the clutch or pulley is driven by"),
    VALVES("valves_per_cylinder", Part.WHOLE, ReadingKind.COUNT, "z_v", si(2, 4), "", "valves per cylinder", "intake and exhaust valves together"),
    ENGINE_MASS("mass", Part.WHOLE, ReadingKind.HEAVY_MASS, "m_e", si(4, 400), "", "engine mass", "whole engine as it sits on its mount, oil in"),
    // ---- ignition, flywheel
    COIL_GAP("coil_gap", Part.IGNITION, ReadingKind.GAP, "g_c", mm(0.1, 1.5), "", "coil gap", "coil foot to flywheel"),
    BASE_TIMING("base_timing", Part.IGNITION, ReadingKind.EVENT, "θ_s", deg(0, 60), "before top dead centre positive", "base timing", "spark with the straight key"),
    KEY_OFFSET("key_offset", Part.IGNITION, ReadingKind.OUTSIDE, "o_k", mm(-4, 4), "positive fires earlier", "key offset", "sideways step of the flywheel key between shaft and wheel"),
    TAPER_DIAMETER("taper_diameter", Part.FLYWHEEL, ReadingKind.OUTSIDE, "d_t", mm(8, 50), "", "taper diameter at mid key", "crankshaft taper diameter halfway along the key"),
    FLYWHEEL_DIAMETER("diameter", Part.FLYWHEEL, ReadingKind.TAPE, "d_f", mm(80, 1200), "", "flywheel diameter", "over the rim"),
    FLYWHEEL_TAPER_BORE("taper_bore", Part.FLYWHEEL, ReadingKind.OUTSIDE, "d_tb", mm(8, 50), "", "flywheel taper bore", "bore of the wheel halfway along its keyway"),
    FLYWHEEL_KEYWAY("keyway_width", Part.FLYWHEEL, ReadingKind.OUTSIDE, "b_f", mm(1.5, 10), "", "flywheel keyway", "width of the keyway in the wheel"),
    FLYWHEEL_RATED_SPEED("rated_speed", Part.FLYWHEEL, ReadingKind.SPEED, "n_f", rpm(100, 20000), "", "flywheel rated speed", "highest speed the wheel's maker approves for it, undamaged: off its sheet or its stamp"),
    FLYWHEEL_MASS("mass", Part.FLYWHEEL, ReadingKind.HEAVY_MASS, "m_f", si(0.3, 80), "", "flywheel mass", "bare wheel"),
    FLYWHEEL_INERTIA("inertia", Part.FLYWHEEL, ReadingKind.INERTIA, "J_f", si(1e-4, 8), "", "flywheel inertia", "about the shaft"),
    RIM_INSIDE("rim_inside_diameter", Part.FLYWHEEL, ReadingKind.TAPE, "d_fi", mm(20, 1150), "", "rim inside diameter", "inside of the flywheel rim"),
    TAPER_LENGTH("taper_length", Part.FLYWHEEL, ReadingKind.SHAPE, "l_t", mm(6, 90), "", "taper length", "length over which wheel and taper touch, by marking blue"),
    FLYWHEEL_NUT_TORQUE("nut_torque", Part.FLYWHEEL, ReadingKind.TORQUE, "T_f", si(5, 400), "", "flywheel nut torque", "torque the nut is or will be tightened to"),
    FLYWHEEL_NUT_THREAD("nut_thread_diameter", Part.FLYWHEEL, ReadingKind.OUTSIDE, "d_fn", mm(6, 40), "", "flywheel nut thread", "outside diameter of the thread the nut runs on"),
    // ---- cylinder assembled
    VOLUME_IN_ASSEMBLY("volume_in_assembly", Part.WHOLE, ReadingKind.FILL_ASSEMBLED, "V_a", cc(4, 90), "", "volume in assembly", "fluid taken through the plug hole at top dead centre, down to the top ring"),
    SQUISH_FLYWHEEL_END("squish_flywheel_end", Part.WHOLE, ReadingKind.SOLDER, "h_s1", mm(0.2, 8), "", "squish, flywheel end", "piston to head by solder at the flywheel end of the pin line"),
    SQUISH_OUTPUT_END("squish_output_end", Part.WHOLE, ReadingKind.SOLDER, "h_s2", mm(0.2, 8), "", "squish, output end", "piston to head by solder at the output end of the pin line"),
    VALVE_TO_HEAD("valve_to_head", Part.WHOLE, ReadingKind.CLAY, "h_v", mm(0.1, 8), "", "valve to head", "side-valve: least gap between an open valve and the head, by clay"),
    // ---- head, gasket
    CHAMBER_VOLUME("chamber_volume", Part.HEAD, ReadingKind.FILL, "V_h", cc(3, 80), "", "chamber volume", "head face down to the plate, plug in, valves in"),
    CHAMBER_AREA("chamber_area", Part.HEAD, ReadingKind.AREA, "A_h", mm2(800, 12000), "", "chamber plan area", "area of the chamber opening in the head face"),
    VALVE_SPACING("valve_spacing", Part.HEAD, ReadingKind.OUTSIDE, "e_v", mm(15, 80), "", "valve spacing", "centre to centre of the two valves at their heads"),
    INTAKE_FROM_AXIS("intake_from_axis", Part.HEAD, ReadingKind.OUTSIDE, "e_i", mm(0, 60), "", "intake valve from bore axis", "centre of the intake valve head to the bore axis, seen along the bore; overhead valves only"),
    EXHAUST_FROM_AXIS("exhaust_from_axis", Part.HEAD, ReadingKind.OUTSIDE, "e_e", mm(0, 60), "", "exhaust valve from bore axis", "centre of the exhaust valve head to the bore axis, seen along the bore; overhead valves only"),
    PLUG_TO_WALL("plug_to_wall", Part.HEAD, ReadingKind.SHAPE, "l_z", mm(15, 130), "", "plug to farthest wall", "gap of the plug to the edge of the chamber farthest from it, along the head face; over the valves of a side-valve, too"),
    HEAD_FLATNESS("flatness", Part.HEAD, ReadingKind.GAP, "f_h", mm(0, 0.5), "", "head flatness", "largest feeler under a straightedge"),
    GASKET_THICKNESS("thickness", Part.GASKET, ReadingKind.GASKET, "t_g", mm(0.05, 4), "", "gasket thickness", "crushed thickness"),
    GASKET_BORE("bore", Part.GASKET, ReadingKind.OUTSIDE, "B_g", mm(40, 110), "", "gasket bore", "diameter of the hole in the gasket"),
    // ---- cam and valves
    INTAKE_OPENS("intake_opens", Part.CAMSHAFT, ReadingKind.EVENT, "IO", deg(-60, 100), "before top dead centre positive", "intake opens", "at the checking lift"),
    INTAKE_CLOSES("intake_closes", Part.CAMSHAFT, ReadingKind.EVENT, "IC", deg(-40, 120), "after bottom dead centre positive", "intake closes", "at the checking lift"),
    EXHAUST_OPENS("exhaust_opens", Part.CAMSHAFT, ReadingKind.EVENT, "EO", deg(-40, 120), "before bottom dead centre positive", "exhaust opens", "at the checking lift"),
    EXHAUST_CLOSES("exhaust_closes", Part.CAMSHAFT, ReadingKind.EVENT, "EC", deg(-60, 100), "after top dead centre positive", "exhaust closes", "at the checking lift"),
    CHECKING_LIFT("checking_lift", Part.CAMSHAFT, ReadingKind.LIFT, "y_c", mm(0, 3), "", "checking lift", "lift at which events are read"),
    CAM_END_PLAY("end_play", Part.CAMSHAFT, ReadingKind.FLOAT, "e_n", mm(0, 1.5), "", "cam end play", "axial float of the camshaft"),
    CAM_GEAR_TEETH("gear_teeth", Part.CAMSHAFT, ReadingKind.COUNT, "z_n", si(12, 120), "", "teeth of the camshaft's wheel", "of its gear, or of its sprocket for chain or toothed belt; tells how far one tooth out is"),
    CAM_SPROCKET("sprocket_pitch_diameter", Part.CAMSHAFT, ReadingKind.PITCH_CIRCLE, "D_cs", mm(25, 160), "", "cam sprocket pitch diameter", "overhead camshaft: circle on which chain or toothed belt runs on its sprocket, teeth times pitch over π"),
    CAM_AXIS_UP("axis_up", Part.CAMSHAFT, ReadingKind.HEIGHT, "y_n", mm(-160, 360), "towards the head positive", "camshaft axis, up", "camshaft axis over the crankshaft axis, along the cylinder"),
    CAM_AXIS_ACROSS("axis_across", Part.CAMSHAFT, ReadingKind.HEIGHT, "x_n", mm(-160, 160), "towards the anti-thrust side positive", "camshaft axis, across", "camshaft axis beside the crankshaft axis, across the cylinder"),
    CAM_CORE("core_diameter", Part.CAMSHAFT, ReadingKind.SHAPE, "d_n", mm(4, 60), "", "camshaft core diameter", "shaft between the lobes, where the rod passes"),
    CAM_BASE_CIRCLE("base_circle_diameter", Part.CAMSHAFT, ReadingKind.JOURNAL, "D_n", mm(8, 60), "", "base circle diameter", "across the lobe at right angles to its nose, where both sides are base circle"),
    LOBE_WIDTH("lobe_width", Part.CAMSHAFT, ReadingKind.OUTSIDE, "w_n", mm(3, 40), "", "lobe width", "along the camshaft"),
    INTAKE_LOBE_PLACE("intake_lobe_place", Part.CAMSHAFT, ReadingKind.SHAPE, "z_i", mm(-80, 80), "towards the flywheel positive", "intake lobe, place along the shaft", "middle of the crankpin to the middle of the lobe, along the crankshaft"),
    EXHAUST_LOBE_PLACE("exhaust_lobe_place", Part.CAMSHAFT, ReadingKind.SHAPE, "z_e", mm(-80, 80), "towards the flywheel positive", "exhaust lobe, place along the shaft", "middle of the crankpin to the middle of the lobe, along the crankshaft"),
    RELEASE_REACH("release_reach", Part.CAMSHAFT, ReadingKind.SHAPE, "R_x", mm(0, 70), "", "compression release reach", "camshaft axis to the outermost point of its weight, swung out; 0 where there is no weight"),
    RELEASE_ANGLE("release_angle", Part.CAMSHAFT, ReadingKind.SECTOR, "φ_x", deg(-180, 180), "with the camshaft's turning positive", "compression release, where on the camshaft", "exhaust lobe nose to the middle of the weight, camshaft degrees"),
    RELEASE_SPAN("release_span", Part.CAMSHAFT, ReadingKind.SECTOR, "ψ_x", deg(5, 300), "", "compression release span", "angle its weight takes up about the camshaft"),
    RELEASE_PLACE("release_place", Part.CAMSHAFT, ReadingKind.SHAPE, "z_x", mm(-80, 80), "towards the flywheel positive", "compression release, place along the shaft", "middle of the crankpin to the middle of the weight"),
    RELEASE_THICKNESS("release_thickness", Part.CAMSHAFT, ReadingKind.SHAPE, "w_x", mm(0.5, 30), "", "compression release thickness", "its weight along the shaft"),
    RELEASE_LIFT("release_lift", Part.CAMSHAFT, ReadingKind.LIFT, "y_x", mm(0.05, 3), "", "compression release lift", "how far it holds the exhaust valve open at starting speed"),
    LIFTER_MASS("lifter_mass", Part.CAMSHAFT, ReadingKind.MASS, "m_l", grams(4, 250), "", "lifter mass", "one lifter or tappet"),
    INTAKE_LIFT("lift", Part.INTAKE_VALVE, ReadingKind.LIFT, "y_i", mm(2, 16), "", "intake valve lift", "full lift at the valve"),
    INTAKE_LASH("lash", Part.INTAKE_VALVE, ReadingKind.GAP, "λ_i", mm(0, 1), "", "intake lash", "cold gap"),
    INTAKE_HEAD("head_diameter", Part.INTAKE_VALVE, ReadingKind.OUTSIDE, "D_i", mm(12, 60), "", "intake valve head", "head diameter"),
    INTAKE_STEM("stem_diameter", Part.INTAKE_VALVE, ReadingKind.JOURNAL, "s_i", mm(3, 12), "", "intake valve stem", "stem diameter"),
    INTAKE_SEAT_WIDTH("seat_width", Part.INTAKE_VALVE, ReadingKind.OUTSIDE, "w_i", mm(0.3, 5), "", "intake seat width", "width of the sealing ring"),
    INTAKE_THROAT("throat_diameter", Part.INTAKE_VALVE, ReadingKind.OUTSIDE, "d_ti", mm(8, 56), "", "intake throat", "port just inside the seat"),
    INTAKE_PORT_LENGTH("port_length", Part.INTAKE_VALVE, ReadingKind.TAPE, "l_ti", mm(10, 250), "", "intake port length", "valve seat to the face of the port's flange, along the middle of the port"),
    INTAKE_TILT("tilt", Part.INTAKE_VALVE, ReadingKind.TILT, "τ_i", deg(-45, 45), "end of the stem farther from the cylinder axis than the valve head positive", "intake valve tilt", "valve axis to cylinder axis"),
    INTAKE_RECESS("recess", Part.INTAKE_VALVE, ReadingKind.DEPTH, "c_vi", mm(-3, 40), "into the head (side-valve: the block) positive", "intake valve recess", "head face (side-valve: deck face) to the rim of the shut valve, square to that face, mean of two opposite places on the rim"),
    INTAKE_MARGIN("margin", Part.INTAKE_VALVE, ReadingKind.OUTSIDE, "b_vi", mm(0.2, 5), "", "intake valve margin", "thickness of the edge of the valve head"),
    INTAKE_MASS("mass", Part.INTAKE_VALVE, ReadingKind.MASS, "m_vi", grams(4, 200), "", "intake valve mass", "bare valve"),
    EXHAUST_LIFT("lift", Part.EXHAUST_VALVE, ReadingKind.LIFT, "y_e", mm(2, 16), "", "exhaust valve lift", "full lift at the valve"),
    EXHAUST_LASH("lash", Part.EXHAUST_VALVE, ReadingKind.GAP, "λ_e", mm(0, 1), "", "exhaust lash", "cold gap, taken past the compression release"),
    EXHAUST_HEAD("head_diameter", Part.EXHAUST_VALVE, ReadingKind.OUTSIDE, "D_e", mm(12, 60), "", "exhaust valve head", "head diameter"),
    EXHAUST_STEM("stem_diameter", Part.EXHAUST_VALVE, ReadingKind.JOURNAL, "s_e", mm(3, 12), "", "exhaust valve stem", "stem diameter"),
    EXHAUST_SEAT_WIDTH("seat_width", Part.EXHAUST_VALVE, ReadingKind.OUTSIDE, "w_e", mm(0.3, 5), "", "exhaust seat width", "width of the sealing ring"),
    EXHAUST_THROAT("throat_diameter", Part.EXHAUST_VALVE, ReadingKind.OUTSIDE, "d_te", mm(8, 56), "", "exhaust throat", "port just inside the seat"),
    EXHAUST_PORT_LENGTH("port_length", Part.EXHAUST_VALVE, ReadingKind.TAPE, "l_te", mm(10, 250), "", "exhaust port length", "valve seat to the face of the port's flange, along the middle of the port"),
    EXHAUST_TILT("tilt", Part.EXHAUST_VALVE, ReadingKind.TILT, "τ_e", deg(-45, 45), "end of the stem farther from the cylinder axis than the valve head positive", "exhaust valve tilt", "valve axis to cylinder axis"),
    EXHAUST_RECESS("recess", Part.EXHAUST_VALVE, ReadingKind.DEPTH, "c_ve", mm(-3, 40), "into the head (side-valve: the block) positive", "exhaust valve recess", "head face (side-valve: deck face) to the rim of the shut valve, square to that face, mean of two opposite places on the rim"),
    EXHAUST_MARGIN("margin", Part.EXHAUST_VALVE, ReadingKind.OUTSIDE, "b_ve", mm(0.2, 5), "", "exhaust valve margin", "thickness of the edge of the valve head"),
    EXHAUST_MASS("mass", Part.EXHAUST_VALVE, ReadingKind.MASS, "m_ve", grams(4, 200), "", "exhaust valve mass", "bare valve"),
    SPRING_INSTALLED_HEIGHT("installed_height", Part.SPRING, ReadingKind.SPRING_LENGTH, "h_0", mm(10, 80), "", "spring installed height", "seat to retainer, valve shut"),
    SPRING_FREE_HEIGHT("free_height", Part.SPRING, ReadingKind.SPRING_LENGTH, "h_f", mm(12, 100), "", "spring free height", "standing loose"),
    SPRING_SOLID_HEIGHT("solid_height", Part.SPRING, ReadingKind.SPRING_LENGTH, "h_b", mm(5, 60), "", "spring solid height", "pressed until the coils touch"),
    SPRING_SEAT_LOAD("seat_load", Part.SPRING, ReadingKind.SPRING_LOAD, "F_0", si(5, 600), "", "spring seat load", "force at the installed height"),
    SPRING_OPEN_LOAD("open_load", Part.SPRING, ReadingKind.SPRING_LOAD, "F_1", si(10, 1500), "", "spring open load", "force at installed height less full lift"),
    SPRING_WIRE("wire_diameter", Part.SPRING, ReadingKind.JOURNAL, "d_w", mm(0.8, 7), "", "spring wire diameter", "wire of the outer spring"),
    SPRING_OUTSIDE("outside_diameter", Part.SPRING, ReadingKind.OUTSIDE, "D_w", mm(8, 60), "", "spring outside diameter", "over the coils"),
    SPRING_COILS("working_coils", Part.SPRING, ReadingKind.COILS, "N_w", si(1.5, 25), "", "spring working coils", "coils free to move: all less those lying on at the ends"),
    SPRING_MASS("mass", Part.SPRING, ReadingKind.MASS, "m_s", grams(3, 300), "", "spring mass", "one valve's springs"),
    RETAINER_MASS("retainer_mass", Part.SPRING, ReadingKind.MASS, "m_k", grams(2, 120), "", "retainer mass", "retainer and locks of one valve"),
    RETAINER_TO_SEAL("retainer_to_seal", Part.SPRING, ReadingKind.SHAPE, "y_s", mm(0, 25), "", "retainer to seal", "travel from the shut valve until the retainer meets the seal or guide"),
    RETAINER_OUTSIDE("retainer_diameter", Part.SPRING, ReadingKind.OUTSIDE, "D_k", mm(8, 60), "", "retainer diameter", "over its rim"),
    RETAINER_BELOW_TIP("retainer_below_tip", Part.SPRING, ReadingKind.DEPTH, "h_k'", mm(-8, 20), "tip standing proud of the rim positive", "retainer below the valve tip", "end of the valve's stem down to the upper edge of the retainer's rim, along the stem"),
    ROCKER_PUSHROD_ARM("pushrod_arm", Part.ROCKER, ReadingKind.ARM, "a_p", mm(8, 60), "", "rocker, pivot to pushrod", "pivot centre to the centre of the pushrod cup or of the ball in it"),
    ROCKER_VALVE_ARM("valve_arm", Part.ROCKER, ReadingKind.ARM, "a_v", mm(10, 80), "", "rocker, pivot to valve", "pivot centre to where the tip touches the valve"),
    ROCKER_MASS("effective_mass", Part.ROCKER, ReadingKind.MASS, "m_a", grams(1, 250), "", "rocker mass at the valve", "its inertia about the pivot over the square of its valve arm; an even bar with like arms: one third of its mass"),
    ROCKER_PUSHROD_LOW("pushrod_arm_low", Part.ROCKER, ReadingKind.TILT, "β_p", deg(-45, 45), "pushrod end low positive", "rocker, how low its pushrod end stands", "valve shut: line from pivot centre to pushrod cup off square to the pushrod's tube"),
    ROCKER_OVER_RETAINER("retainer_gap_shut", Part.ROCKER, ReadingKind.GAP, "g_k0", mm(0, 15), "", "rocker over retainer, valve shut", "least gap all round between the rocker and the retainer or its locks, the rocker pressed down on the stem"),
    ROCKER_OVER_RETAINER_OPEN("retainer_gap_open", Part.ROCKER, ReadingKind.GAP, "g_k1", mm(0, 15), "", "rocker over retainer, full lift", "with the valve at full lift: least gap all round between the rocker and the retainer or its locks"),
    PUSHROD_LENGTH("length", Part.PUSHROD, ReadingKind.OUTSIDE, "l_p", mm(60, 260), "", "pushrod length", "over the ends"),
    PUSHROD_OUTSIDE("outside_diameter", Part.PUSHROD, ReadingKind.OUTSIDE, "D_q", mm(3, 16), "", "pushrod outside diameter", "at its middle"),
    PUSHROD_WALL("wall", Part.PUSHROD, ReadingKind.OUTSIDE, "t_q", mm(0.3, 8), "", "pushrod wall", "of a tube; half the outside diameter for a solid rod"),
    PUSHROD_MASS("mass", Part.PUSHROD, ReadingKind.MASS, "m_q", grams(3, 300), "", "pushrod mass", "one pushrod with its ends"),
    TUBE_INSIDE("tube_inside_diameter", Part.PUSHROD, ReadingKind.OUTSIDE, "D_t", mm(4, 40), "", "pushrod tube, inside diameter", "narrowest of the tube or hole that the pushrod passes, guide plate in place; a slot that is made to steer the rod is left out"),
    TUBE_FROM("tube_lower_end", Part.PUSHROD, ReadingKind.SHAPE, "z_t1", mm(-40, 250), "above the rod's lower end positive", "pushrod tube, lower end", "valve shut: lower end of the pushrod up to the lower end of tube or hole, along it"),
    TUBE_TO("tube_upper_end", Part.PUSHROD, ReadingKind.SHAPE, "z_t2", mm(2, 280), "", "pushrod tube, upper end", "valve shut: lower end of the pushrod up to the upper end of tube or hole, along it"),
    PUSHROD_FOOT_OFF("foot_off", Part.PUSHROD, ReadingKind.SHAPE, "x_q1", mm(-15, 15), "away from the rocker's pivot positive", "pushrod foot off its tube", "valve shut: centre of the lifter's cup from the middle line of the tube, in the plane the rocker swings in"),
    PUSHROD_FOOT_BESIDE("foot_beside", Part.PUSHROD, ReadingKind.SHAPE, "y_q1", mm(-15, 15), "towards the flywheel positive", "pushrod foot beside its tube", "valve shut: centre of the lifter's cup from the middle line of the tube, square to the plane the rocker swings in"),
    PUSHROD_TIP_OFF("tip_off", Part.PUSHROD, ReadingKind.SHAPE, "x_q2", mm(-15, 15), "away from the rocker's pivot positive", "pushrod tip off its tube", "valve shut: centre of the rocker's cup or ball from the middle line of the tube, in the plane the rocker swings in"),
    PUSHROD_TIP_BESIDE("tip_beside", Part.PUSHROD, ReadingKind.SHAPE, "y_q2", mm(-15, 15), "towards the flywheel positive", "pushrod tip beside its tube", "valve shut: centre of the rocker's cup or ball from the middle line of the tube, square to the plane the rocker swings in"),
    // ---- cylinder
    BORE_TOP_THRUST("bore_top_thrust", Part.CYLINDER, ReadingKind.BORE, "B_tt", mm(30, 110), "", "bore, top, thrust", "just below the top of the ring travel, across the pin axis"),
    BORE_MIDDLE_THRUST("bore_middle_thrust", Part.CYLINDER, ReadingKind.BORE, "B_mt", mm(30, 110), "", "bore, middle, thrust", "middle of the travel, across the pin axis"),
    BORE_BOTTOM_THRUST("bore_bottom_thrust", Part.CYLINDER, ReadingKind.BORE, "B_bt", mm(30, 110), "", "bore, bottom, thrust", "bottom of the travel, across the pin axis"),
    BORE_TOP_AXIS("bore_top_axis", Part.CYLINDER, ReadingKind.BORE, "B_ta", mm(30, 110), "", "bore, top, axis", "just below the top of the ring travel, along the pin axis"),
    BORE_MIDDLE_AXIS("bore_middle_axis", Part.CYLINDER, ReadingKind.BORE, "B_ma", mm(30, 110), "", "bore, middle, axis", "middle of the travel, along the pin axis"),
    BORE_BOTTOM_AXIS("bore_bottom_axis", Part.CYLINDER, ReadingKind.BORE, "B_ba", mm(30, 110), "", "bore, bottom, axis", "bottom of the travel, along the pin axis"),
    BORE("bore", Part.CYLINDER, ReadingKind.BORE, "B", mm(30, 110), "", "bore", "cylinder diameter that counts for the swept volume; with a bore map, the mean of the map"),
    SLEEVE_OUTSIDE_TOP("sleeve_outside_top", Part.CYLINDER, ReadingKind.OUTSIDE, "D_lt", mm(35, 130), "", "sleeve outside, top", "outside diameter of the sleeve, top end"),
    SLEEVE_OUTSIDE_BOTTOM("sleeve_outside_bottom", Part.CYLINDER, ReadingKind.OUTSIDE, "D_lb", mm(35, 130), "", "sleeve outside, bottom", "outside diameter of the sleeve, bottom end"),
    SLEEVE_LENGTH("sleeve_length", Part.CYLINDER, ReadingKind.OUTSIDE, "l_c", mm(40, 260), "", "sleeve length", "deck face down to the lower end of the running surface"),
    CASE_BELOW("case_below", Part.CYLINDER, ReadingKind.SHAPE, "R_g", mm(20, 250), "", "case below the crankshaft", "crankshaft axis down to the case wall under the big end, along the cylinder"),
    CASE_THRUST("case_thrust_side", Part.CYLINDER, ReadingKind.SHAPE, "R_gt", mm(20, 250), "", "case, thrust side", "crankshaft axis across to the case wall where the big end passes, thrust side"),
    CASE_ANTITHRUST("case_antithrust_side", Part.CYLINDER, ReadingKind.SHAPE, "R_ga", mm(20, 250), "", "case, anti-thrust side", "crankshaft axis across to the case wall where the big end passes, anti-thrust side"),
    DECK_FLATNESS("deck_flatness", Part.CYLINDER, ReadingKind.GAP, "f_d", mm(0, 0.5), "", "deck flatness", "largest feeler under a straightedge"),
    DECK_HEIGHT("deck_height", Part.CYLINDER, ReadingKind.HEIGHT, "H", mm(70, 260), "", "deck height", "crankshaft axis to deck face"),
    BORE_OFFSET("bore_offset", Part.CYLINDER, ReadingKind.HEIGHT, "e_c", mm(-20, 20), "towards the anti-thrust side positive", "bore offset", "cylinder axis from the crankshaft axis"),
    DECK_CLEARANCE("deck_clearance", Part.CYLINDER, ReadingKind.DECK, "c", mm(-4, 12), "piston below the deck positive, proud negative", "deck clearance", "crown rim to deck at top dead centre, on the pin axis"),
    DECK_CLEARANCE_THRUST("deck_clearance_thrust_side", Part.CYLINDER, ReadingKind.DECK, "c_t", mm(-4, 12), "piston below the deck positive, proud negative", "deck clearance, thrust side", "the same on the thrust side of the pin axis"),
    DECK_CLEARANCE_ANTITHRUST("deck_clearance_antithrust_side", Part.CYLINDER, ReadingKind.DECK, "c_a", mm(-4, 12), "piston below the deck positive, proud negative", "deck clearance, anti-thrust side", "the same on the other side, at the same distance from the pin axis"),
    DECK_CLEARANCE_FLYWHEEL_END("deck_clearance_flywheel_end", Part.CYLINDER, ReadingKind.DECK, "c_f", mm(-4, 12), "piston below the deck positive, proud negative", "deck clearance, flywheel end", "the same on the pin axis at its flywheel end"),
    DECK_CLEARANCE_OUTPUT_END("deck_clearance_output_end", Part.CYLINDER, ReadingKind.DECK, "c_o", mm(-4, 12), "piston below the deck positive, proud negative", "deck clearance, output end", "the same on the pin axis at its output end"),
    // ---- piston
    PISTON_DIAMETER("diameter", Part.PISTON, ReadingKind.JOURNAL, "D_p", mm(30, 110), "", "piston diameter", "across the skirt at the maker's gauge point"),
    COMPRESSION_HEIGHT("compression_height", Part.PISTON, ReadingKind.PIN_CENTRE, "h_c", mm(8, 70), "", "compression height", "pin centre to crown rim"),
    PIN_TOP_TO_CROWN("pin_top_to_crown", Part.PISTON, ReadingKind.CROWN, "h_t", mm(2, 60), "", "pin top to crown", "top of the pin (or of the pin bore) to crown rim: not the compression height"),
    PIN_BOTTOM_TO_CROWN("pin_bottom_to_crown", Part.PISTON, ReadingKind.CROWN, "h_u", mm(12, 80), "", "pin bottom to crown", "bottom of the pin bore to crown rim, through the bore"),
    PIN_DIAMETER("pin_diameter", Part.PISTON, ReadingKind.JOURNAL, "d_p", mm(6, 32), "", "pin diameter", "wrist pin outside diameter"),
    PISTON_PIN_BORE("pin_bore", Part.PISTON, ReadingKind.SMALL_BORE, "d_b", mm(6, 32), "", "piston pin bore", "bore in the piston bosses"),
    PIN_LENGTH("pin_length", Part.PISTON, ReadingKind.OUTSIDE, "l_w", mm(20, 100), "", "pin length", "over the ends of the piston pin"),
    CLIP_SPAN("clip_span", Part.PISTON, ReadingKind.OUTSIDE, "l_k", mm(20, 105), "", "clip span", "inner face to inner face of the two pin clips, fitted"),
    BOSS_GAP("boss_gap", Part.PISTON, ReadingKind.OUTSIDE, "g_b", mm(8, 60), "", "boss gap", "inner face to inner face of the pin bosses"),
    PIN_OFFSET("pin_offset", Part.PISTON, ReadingKind.OUTSIDE, "e_p", mm(-4, 4), "towards the anti-thrust side positive", "pin offset", "pin axis from the piston centre line"),
    CROWN_VOLUME("crown_volume", Part.PISTON, ReadingKind.FILL, "V_d", cc(-25, 25), "dish positive, dome negative", "crown volume", "dish and valve pockets less dome, from the rim"),
    TOP_LAND_HEIGHT("top_land_height", Part.PISTON, ReadingKind.OUTSIDE, "h_l", mm(1, 20), "", "top land height", "crown rim to top ring"),
    TOP_LAND_DIAMETER("top_land_diameter", Part.PISTON, ReadingKind.JOURNAL, "D_l", mm(30, 110), "", "top land diameter", "piston diameter above the top ring"),
    OIL_GROOVE_TO_CROWN("oil_groove_to_crown", Part.PISTON, ReadingKind.OUTSIDE, "h_og", mm(5, 60), "", "oil groove to crown", "crown rim down to the lower edge of the oil-ring groove"),
    CROWN_RISE("crown_rise", Part.PISTON, ReadingKind.CROWN, "h_cr", mm(0, 20), "", "crown rise", "highest point of the crown above its rim; 0 for a flat or dished crown"),
    SKIRT_BELOW_PIN("skirt_below_pin", Part.PISTON, ReadingKind.OUTSIDE, "h_k", mm(2, 70), "", "skirt below pin", "pin centre to the lowest edge of the skirt"),
    BOSS_BELOW_PIN("boss_below_pin", Part.PISTON, ReadingKind.OUTSIDE, "h_b", mm(2, 40), "", "boss below pin", "pin centre down to the lowest point of the pin bosses, where the counterweight passes under them"),
    SKIRT_WIDTH("skirt_width", Part.PISTON, ReadingKind.SHAPE, "w_k", mm(10, 110), "", "skirt width", "lower edge of the skirt along the pin"),
    PIN_INSIDE("pin_inside_diameter", Part.PISTON, ReadingKind.OUTSIDE, "d_pi", mm(0, 28), "", "pin inside diameter", "hole through the pin; 0 for a solid one"),
    CROWN_THICKNESS("crown_thickness", Part.PISTON, ReadingKind.SHAPE, "t_c", mm(1.5, 20), "", "crown thickness", "at the middle of the crown"),
    INTAKE_POCKET("intake_pocket_depth", Part.PISTON, ReadingKind.DEPTH, "h_pi", mm(0, 12), "", "intake valve pocket depth", "crown rim down to the floor of the pocket, along the cylinder; 0 where there is none"),
    EXHAUST_POCKET("exhaust_pocket_depth", Part.PISTON, ReadingKind.DEPTH, "h_pe", mm(0, 12), "", "exhaust valve pocket depth", "crown rim down to the floor of the pocket, along the cylinder; 0 where there is none"),
    PISTON_MASS("mass", Part.PISTON, ReadingKind.MASS, "m_p", grams(20, 900), "", "piston mass", "bare piston"),
    PIN_MASS("pin_mass", Part.PISTON, ReadingKind.MASS, "m_w", grams(8, 350), "", "pin mass", "pin and clips"),
    // ---- rings
    TOP_RING_GAP("top_gap", Part.RINGS, ReadingKind.GAP, "g_1", mm(0, 4), "", "top ring gap", "ring square in the bore, unworn depth"),
    SECOND_RING_GAP("second_gap", Part.RINGS, ReadingKind.GAP, "g_2", mm(0, 4), "", "second ring gap", "ring square in the bore, unworn depth"),
    TOP_RING_SIDE_CLEARANCE("top_side_clearance", Part.RINGS, ReadingKind.GAP, "s_1", mm(0, 0.8), "", "top ring side clearance", "ring in its clean groove"),
    TOP_RING_THICKNESS("top_thickness", Part.RINGS, ReadingKind.JOURNAL, "b_1", mm(0.5, 6), "", "top ring thickness", "axial"),
    RING_MASS("mass", Part.RINGS, ReadingKind.MASS, "m_r", grams(2, 120), "", "ring mass", "all rings"),
    // ---- rod
    ROD_LENGTH("length", Part.ROD, ReadingKind.ROD_CENTRES, "l", mm(40, 260), "", "rod length", "centre to centre"),
    ROD_INSIDE_EDGES("inside_edges", Part.ROD, ReadingKind.CENTRES, "l_e", mm(20, 230), "", "rod, inside edge to inside edge", "nearest edges of the two bores: not the rod length"),
    BIG_END_BORE("big_end_bore", Part.ROD, ReadingKind.SMALL_BORE, "D_b", mm(12, 70), "", "big-end bore", "cap torqued"),
    BIG_END_WIDTH("big_end_width", Part.ROD, ReadingKind.OUTSIDE, "W_b", mm(8, 60), "", "big-end width", "over the faces"),
    SMALL_END_BORE("small_end_bore", Part.ROD, ReadingKind.SMALL_BORE, "D_s", mm(6, 34), "", "small-end bore", "bush in place"),
    SMALL_END_WIDTH("small_end_width", Part.ROD, ReadingKind.OUTSIDE, "b_w", mm(6, 55), "", "small-end width", "across the small end, along the pin"),
    BIG_END_STRIP("big_end_strip", Part.ROD, ReadingKind.STRIP, "c_b'", mm(0.01, 0.4), "", "big-end clearance by strip", "plastic strip, cap torqued"),
    ROD_SIDE_CLEARANCE("side_clearance", Part.ROD, ReadingKind.GAP, "s_r", mm(0, 3), "", "rod side clearance", "cheek to rod by feeler"),
    ROD_RATED_SPEED("rated_speed", Part.ROD, ReadingKind.SPEED, "n_r", rpm(100, 20000), "", "rod rated speed", "highest speed the rod's maker approves with this stroke and piston: off its sheet"),
    ROD_MASS("mass", Part.ROD, ReadingKind.MASS, "m_c", grams(50, 2500), "", "rod mass", "whole rod with cap, bolts and dipper"),
    ROD_BIG_END_MASS("big_end_mass", Part.ROD, ReadingKind.ROD_END_MASS, "m_cb", grams(30, 2000), "", "rod big-end mass", "big end on the scale, small end hung"),
    ROD_SMALL_END_MASS("small_end_mass", Part.ROD, ReadingKind.ROD_END_MASS, "m_cs", grams(10, 900), "", "rod small-end mass", "small end on the scale, big end hung"),
    ROD_SWING("swing_period", Part.ROD, ReadingKind.PERIOD, "T_c", si(0.2, 2), "", "rod swing period", "hung in the small-end bore on a knife edge: time of one swing to and fro"),
    BEAM_WIDTH("beam_width", Part.ROD, ReadingKind.OUTSIDE, "h_b'", mm(4, 60), "", "rod beam width", "narrowest place of the beam, in the plane the rod swings in"),
    BEAM_THICKNESS("beam_thickness", Part.ROD, ReadingKind.OUTSIDE, "b_b", mm(3, 40), "", "rod beam thickness", "narrowest place of the beam, along the crankshaft"),
    BEAM_WEB("web_thickness", Part.ROD, ReadingKind.OUTSIDE, "t_b", mm(1, 40), "", "rod web thickness", "thinnest part between the flanges, along the crankshaft; the beam thickness for a plain beam"),
    BEAM_FLANGE("flange_thickness", Part.ROD, ReadingKind.OUTSIDE, "f_b", mm(1, 30), "", "rod flange thickness", "each flange, in the plane the rod swings in; half the beam width for a plain beam"),
    BIG_END_REACH("big_end_reach", Part.ROD, ReadingKind.SHAPE, "R_b", mm(10, 80), "", "big-end reach", "crankpin axis to the outermost point of the big end, in the plane the rod swings in, bolts left out"),
    CAP_BELOW("cap_below", Part.ROD, ReadingKind.SHAPE, "h_a", mm(8, 80), "", "cap below the crankpin", "crankpin axis down to the lowest point of the cap, dipper left out"),
    BOLT_OUT("bolt_out", Part.ROD, ReadingKind.SHAPE, "x_b", mm(8, 80), "", "rod bolt, out", "rod centre line to the outer edge of a bolt head or nut"),
    BOLT_UP("bolt_up", Part.ROD, ReadingKind.SHAPE, "y_b+", mm(-40, 80), "towards the small end positive", "rod bolt, upper end", "crankpin axis to the upper end of bolt or nut, along the rod"),
    BOLT_DOWN("bolt_down", Part.ROD, ReadingKind.SHAPE, "y_b-", mm(-40, 80), "away from the small end positive", "rod bolt, lower end", "crankpin axis to the lower end of bolt or nut, along the rod"),
    BOLT_ACROSS("bolt_head_width", Part.ROD, ReadingKind.OUTSIDE, "w_b", mm(4, 30), "", "rod bolt head width", "bolt head or nut along the crankshaft"),
    DIPPER_REACH("dipper_reach", Part.ROD, ReadingKind.SHAPE, "R_d", mm(0, 120), "", "dipper reach", "crankpin axis down to the tip of the dipper; 0 where there is none"),
    DIPPER_THICKNESS("dipper_thickness", Part.ROD, ReadingKind.SHAPE, "t_d", mm(0.5, 20), "", "dipper thickness", "along the crankshaft"),
    DIPPER_WIDTH("dipper_width", Part.ROD, ReadingKind.SHAPE, "w_d", mm(1, 40), "", "dipper width", "in the plane the rod swings in"),
    ROD_BOLT_DIAMETER("bolt_thread_diameter", Part.ROD, ReadingKind.OUTSIDE, "d_q", mm(3, 16), "", "rod bolt thread", "outside diameter of its thread"),
    ROD_BOLT_PITCH("bolt_thread_pitch", Part.ROD, ReadingKind.OUTSIDE, "p_q", mm(0.35, 2.5), "", "rod bolt thread pitch", "crest to crest: over ten threads, divided by ten"),
    ROD_BOLT_GRIP("bolt_grip", Part.ROD, ReadingKind.OUTSIDE, "l_q", mm(6, 90), "", "rod bolt grip", "under the head to the first thread that holds"),
    ROD_BOLT_TORQUE("bolt_torque", Part.ROD, ReadingKind.TORQUE, "T_q", si(1, 120), "", "rod bolt torque", "torque each bolt is or will be tightened to"),
    ROD_BOLT_USES("bolt_tightenings", Part.ROD, ReadingKind.COUNT, "n_q", si(1, 50), "", "rod bolt tightenings", "how often these bolts were tightened, this time counted"),
    ROD_BOLT_ENGAGEMENT("bolt_engagement", Part.ROD, ReadingKind.OUTSIDE, "l_f", mm(2, 60), "", "rod bolt engagement", "full thread that holds, in the nut or in the rod"),
    // ---- crankshaft
    STROKE("stroke", Part.CRANKSHAFT, ReadingKind.TRAVEL, "S", mm(25, 130), "", "stroke", "piston travel; twice the throw"),
    THROW("throw", Part.CRANKSHAFT, ReadingKind.OUTSIDE, "r", mm(12, 65), "", "throw", "crank axis to crankpin axis: half the stroke"),
    DONOR_STROKE("donor_stroke", Part.CRANKSHAFT, ReadingKind.TRAVEL, "S_d", mm(25, 130), "", "donor's own stroke", "piston travel with the crankshaft that the case, cam and dipper were made for"),
    CRANKPIN_DIAMETER("crankpin_diameter", Part.CRANKSHAFT, ReadingKind.JOURNAL, "d_c", mm(12, 70), "", "crankpin diameter", "mean of the places read"),
    CRANKPIN_LARGEST("crankpin_largest", Part.CRANKSHAFT, ReadingKind.JOURNAL, "d_c+", mm(12, 70), "", "crankpin, largest", "largest of two places and two directions"),
    CRANKPIN_SMALLEST("crankpin_smallest", Part.CRANKSHAFT, ReadingKind.JOURNAL, "d_c-", mm(12, 70), "", "crankpin, smallest", "smallest of two places and two directions"),
    CRANKPIN_WIDTH("crankpin_width", Part.CRANKSHAFT, ReadingKind.OUTSIDE, "W_c", mm(8, 60), "", "crankpin width", "cheek to cheek"),
    MAIN_JOURNAL("main_journal", Part.CRANKSHAFT, ReadingKind.JOURNAL, "d_m", mm(10, 70), "", "main journal", "diameter"),
    MAIN_BORE("main_bore", Part.CRANKSHAFT, ReadingKind.SMALL_BORE, "D_m", mm(10, 75), "", "main bearing bore", "plain bearing bore"),
    MAIN_SPAN("main_span", Part.CRANKSHAFT, ReadingKind.OUTSIDE, "L_m", mm(25, 260), "", "main bearing span", "middle of one main bearing to the middle of the other, along the crankshaft"),
    CRANK_RUN_OUT("run_out", Part.CRANKSHAFT, ReadingKind.RUN_OUT, "ρ", mm(0, 2), "", "crank run-out", "total indicator movement at the shaft end"),
    CRANK_END_PLAY("end_play", Part.CRANKSHAFT, ReadingKind.FLOAT, "e_k", mm(0, 3), "", "crank end play", "axial float, gasket in place"),
    COUNTERWEIGHT_RADIUS("counterweight_radius", Part.CRANKSHAFT, ReadingKind.OUTSIDE, "R_w", mm(15, 120), "", "counterweight radius", "crank axis to the outermost point"),
    COUNTERWEIGHT_SPAN("counterweight_span", Part.CRANKSHAFT, ReadingKind.SECTOR, "ψ_w", deg(30, 360), "", "counterweight span", "angle its outer edge takes up about the crankshaft"),
    COUNTERWEIGHT_FACES("counterweight_faces", Part.CRANKSHAFT, ReadingKind.OUTSIDE, "g_w", mm(8, 90), "", "counterweights, face to face", "inner face to inner face, along the crankshaft"),
    COUNTERWEIGHT_THICKNESS("counterweight_thickness", Part.CRANKSHAFT, ReadingKind.OUTSIDE, "t_w", mm(3, 60), "", "counterweight thickness", "one counterweight along the crankshaft"),
    BOB_WEIGHT("bob_weight", Part.CRANKSHAFT, ReadingKind.MASS, "m_b", grams(10, 4000), "", "bob weight", "mass on the crankpin with which the bare crankshaft stays at any angle on knife edges"),
    DRILL_RADIUS("drill_radius", Part.CRANKSHAFT, ReadingKind.SHAPE, "R_o", mm(8, 120), "", "drilling radius", "crankshaft axis to where a hole in the counterweight would have its centre"),
    CRANK_TAPER("taper_diameter", Part.CRANKSHAFT, ReadingKind.OUTSIDE, "d_ct", mm(8, 50), "", "crank taper diameter", "flywheel end of the crankshaft, taper diameter halfway along the key"),
    CRANK_KEYWAY("keyway_width", Part.CRANKSHAFT, ReadingKind.OUTSIDE, "b_c", mm(1.5, 10), "", "crank keyway", "width of the keyway at the flywheel end"),
    SEAL_FLYWHEEL_END("seal_flywheel_end", Part.CRANKSHAFT, ReadingKind.JOURNAL, "d_s1", mm(10, 60), "", "seal diameter, flywheel end", "shaft where the seal runs"),
    SEAL_OUTPUT_END("seal_output_end", Part.CRANKSHAFT, ReadingKind.JOURNAL, "d_s2", mm(10, 60), "", "seal diameter, output end", "shaft where the seal runs"),
    BIG_END_SHIM("big_end_shim_removed", Part.CRANKSHAFT, ReadingKind.JOURNAL, "t_s", mm(0, 1), "", "shim removed each side", "thickness taken out on each side of the big-end cap"),
    // ---- crankcase, intake
    CASE_VOLUME("free_volume", Part.CRANKCASE, ReadingKind.FILL_LARGE, "V_kg", cc(50, 6000), "", "crankcase free volume", "room under the piston at bottom dead centre, parts and oil taken out"),
    BREATHER_HOLE("breather_hole", Part.CRANKCASE, ReadingKind.PLUG, "d_br", mm(1, 40), "", "breather hole", "narrowest hole on the crankcase's way to the air, its valve open"),
    FILTER_DROP("filter_drop", Part.INTAKE, ReadingKind.DROP, "Δp_f", si(0, 10e3), "", "drop over the air filter", "at full throttle, at the speed said beside it"),
    FILTER_DROP_SPEED("filter_drop_speed", Part.INTAKE, ReadingKind.SPEED, "n_p", rpm(500, 14000), "", "speed of that drop", "engine speed at which the drop over the air filter was read"),
    AIRBOX_VOLUME("airbox_volume", Part.INTAKE, ReadingKind.FILL_LARGE, "V_ab", cc(20, 15000), "", "airbox volume", "room between air filter and carburettor"),
    INTAKE_RESTRICTOR("restrictor_bore", Part.INTAKE, ReadingKind.PLUG, "d_ri", mm(4, 60), "", "intake restrictor", "hole of the restrictor plate under the carburettor; empty where none is fitted"),
    RUNNER_LENGTH("runner_length", Part.INTAKE, ReadingKind.TAPE, "l_r", mm(0, 500), "", "runner length", "flange of the intake port to the carburettor, along the middle; 0 where nothing is between"),
    RUNNER_BORE("runner_bore", Part.INTAKE, ReadingKind.OUTSIDE, "d_r", mm(8, 70), "", "runner bore", "inside of the runner between port and carburettor"),
    // ---- carburettor, exhaust, use
    VENTURI("venturi", Part.CARBURETTOR, ReadingKind.PLUG, "d_v", mm(5, 60), "", "venturi", "narrowest diameter"),
    THROTTLE_BORE("throttle_bore", Part.CARBURETTOR, ReadingKind.PLUG, "d_th", mm(6, 70), "", "throttle bore", "diameter at the throttle"),
    CARBURETTOR_LENGTH("length", Part.CARBURETTOR, ReadingKind.OUTSIDE, "l_v", mm(20, 200), "", "carburettor length", "flange to the mouth of its bore, filter and horn off"),
    MAIN_JET_DRILL("main_jet_drill", Part.CARBURETTOR, ReadingKind.PLUG, "d_j", mm(0.2, 5), "", "main jet, bore", "narrowest place of the main jet"),
    MAIN_JET_NUMBER("main_jet_number", Part.CARBURETTOR, ReadingKind.STAMP, "N_j", si(5, 2000), "", "main jet, number", "stamped on the main jet; what it counts is said beside it, or it says nothing of the size"),
    MAIN_JET_FLOW("main_jet_flow", Part.CARBURETTOR, ReadingKind.JET_FLOW, "Q_j", si(1e-7, 2e-5), "", "main jet, flow", "of the liquid said beside it, under the height of it said beside it"),
    MAIN_JET_HEAD("main_jet_head", Part.CARBURETTOR, ReadingKind.TAPE, "h_j", mm(20, 3000), "", "main jet, height over it", "outlet of the main jet to the level of the liquid while its flow was read"),
    JETTED_PRESSURE("jetted_pressure", Part.CARBURETTOR, ReadingKind.AIR_PRESSURE, "p_j", si(55e3, 108e3), "", "air pressure where the jet was right", "of the place itself, on the day when the present main jet was right; not reduced to sea level"),
    JETTED_TEMPERATURE("jetted_temperature", Part.CARBURETTOR, ReadingKind.HEAT, "ϑ_j", si(243.15, 323.15), "", "air temperature where the jet was right", "in the shade, on the day when the present main jet was right"),
    JETTED_HUMIDITY("jetted_humidity", Part.CARBURETTOR, ReadingKind.HUMIDITY, "φ_j", si(0, 1), "", "relative humidity where the jet was right", "of the same air, at its temperature"),
    EXHAUST_RESTRICTOR("restrictor_bore", Part.EXHAUST, ReadingKind.PLUG, "d_rx", mm(4, 60), "", "exhaust restrictor", "hole of the restrictor plate between port and pipe; empty where none is fitted"),
    PRIMARY_DIAMETER("primary_diameter", Part.EXHAUST, ReadingKind.OUTSIDE, "d_x", mm(10, 70), "", "primary diameter", "inside of the first pipe"),
    PRIMARY_LENGTH("primary_length", Part.EXHAUST, ReadingKind.TAPE, "l_x", mm(50, 1500), "", "primary length", "port face to the first change of section, along the centre line"),
    SILENCER_VOLUME("silencer_volume", Part.EXHAUST, ReadingKind.FILL_LARGE, "V_x", cc(50, 15000), "", "silencer volume", "room in the silencer, packing left out"),
    SILENCER_HOLE("silencer_hole", Part.EXHAUST, ReadingKind.PLUG, "d_xh", mm(3, 70), "", "silencer, smallest hole", "narrowest hole of the inner pipe, that all the gas passes"),
    LIMITER_SPEED("cut_speed", Part.LIMITER, ReadingKind.SPEED, "n_l", rpm(500, 16000), "", "limiter speed", "speed above which it cuts the spark"),
    CLUTCH_BORE("bore", Part.CLUTCH, ReadingKind.OUTSIDE, "d_k", mm(10, 40), "", "clutch bore", "bore that goes on the output shaft"),
    CLUTCH_KEYWAY("keyway_width", Part.CLUTCH, ReadingKind.OUTSIDE, "b_k", mm(1.5, 13), "", "clutch keyway", "width of its keyway"),
    CLUTCH_HUB_LENGTH("hub_length", Part.CLUTCH, ReadingKind.OUTSIDE, "l_h", mm(15, 120), "", "clutch hub length", "shaft that it takes up"),
    ENGAGEMENT_SPEED("engagement_speed", Part.CLUTCH, ReadingKind.SPEED, "n_k", rpm(800, 8000), "", "engagement speed", "speed at which it begins to drive"),
    TEETH("teeth", Part.SPROCKET, ReadingKind.COUNT, "z", si(6, 120), "", "teeth", "of the sprocket"),
    CHAIN_PITCH("pitch", Part.SPROCKET, ReadingKind.OUTSIDE, "p_k", mm(5, 20), "", "chain pitch", "rivet to rivet of the chain it takes"),
    GOVERNED_SPEED("governed_speed", Part.USE, ReadingKind.SPEED, "n_g", rpm(100, 9000), "", "governed or rated speed", "the maker's"),
    WANTED_SPEED("wanted_speed", Part.USE, ReadingKind.SPEED, "n", rpm(100, 16000), "", "wanted speed", "highest speed you mean to run to"),
    IDLE_SPEED("idle_speed", Part.USE, ReadingKind.SPEED, "n_i", rpm(100, 4000), "", "idle speed", "lowest speed it is let run at"),
    OIL_TEMPERATURE("oil_temperature", Part.USE, ReadingKind.HEAT, "ϑ_o", si(250, 450), "", "oil temperature", "in the case after a quarter of an hour at work"),
    PISTON_TEMPERATURE("piston_temperature", Part.USE, ReadingKind.HEAT, "ϑ_p", si(290, 700), "", "piston temperature", "mean of the skirt at work"),
    ROD_TEMPERATURE("rod_temperature", Part.USE, ReadingKind.HEAT, "ϑ_r", si(270, 520), "", "rod temperature", "beam of the rod at work"),
    CYLINDER_TEMPERATURE("cylinder_temperature", Part.USE, ReadingKind.HEAT, "ϑ_c", si(270, 600), "", "cylinder temperature", "mean of the barrel at work"),
    MOUNT_SPEED("mount_resonance", Part.USE, ReadingKind.SPEED, "n_m", rpm(60, 12000), "", "speed at which the mount shakes most", "engine on its mount, run slowly through its speeds"),
    OCTANE_NUMBER("octane_number", Part.USE, ReadingKind.OCTANE, "N_o", si(70, 125), "", "octane number", "as the pump prints it, by the scale said beside it"),
    LIFE_WANTED("hours_wanted", Part.USE, ReadingKind.CLOCK, "L", si(600, 1.8e7), "", "hours wanted", "running time between rebuilds"),
    // ---- day and place
    AIR_PRESSURE("air_pressure", Part.PLACE, ReadingKind.AIR_PRESSURE, "p_a", si(55e3, 108e3), "", "air pressure", "of the place itself, not reduced to sea level"),
    AIR_TEMPERATURE("air_temperature", Part.PLACE, ReadingKind.HEAT, "ϑ_a", si(243.15, 323.15), "", "air temperature", "in the shade, where the engine draws its air"),
    HUMIDITY("relative_humidity", Part.PLACE, ReadingKind.HUMIDITY, "φ_a", si(0, 1), "", "relative humidity", "of the same air, at its temperature"),
    // ---- worked out
    SWEPT_VOLUME("swept_volume", Part.CYLINDER, Dimension.VOLUME, "V_s", "", "swept volume", "bore area times stroke"),
    GASKET_VOLUME("gasket_volume", Part.GASKET, Dimension.VOLUME, "V_g", "", "gasket volume", "of the hole, crushed"),
    DECK_VOLUME("deck_volume", Part.CYLINDER, Dimension.VOLUME, "V_c", "piston below the deck positive, proud negative", "deck volume", "bore area times deck clearance"),
    CREVICE_VOLUME("crevice_volume", Part.PISTON, Dimension.VOLUME, "V_k", "", "ring-land crevice", "ring of space above the top ring"),
    CLEARANCE_VOLUME("clearance_volume", Part.WHOLE, Dimension.VOLUME, "V_0", "", "clearance volume", "all the space above the piston at top dead centre"),
    COMPRESSION_RATIO("compression_ratio", Part.WHOLE, Dimension.RATIO, "ε", "", "static compression ratio", "(swept + clearance) / clearance, ring-land crevice left out"),
    COMPRESSION_RATIO_WITH_CREVICE("compression_ratio_with_crevice", Part.WHOLE, Dimension.RATIO, "ε_k", "", "static ratio with crevice", "the same with the measured ring-land crevice counted"),
    EFFECTIVE_RATIO("effective_ratio", Part.WHOLE, Dimension.RATIO, "ε_e", "", "effective compression ratio", "cylinder volume where the intake closes at the checking lift over clearance volume; geometry alone"),
    SQUISH("squish", Part.WHOLE, Dimension.LENGTH, "h_s", "", "squish", "piston rim to head at top dead centre, cold: deck clearance plus gasket"),
    SQUISH_SMALLER_END("squish_smaller_end", Part.WHOLE, Dimension.LENGTH, "h_s-", "", "squish, smaller end", "the tighter end of the pin line"),
    DECK_TILT_SIDES("deck_tilt_sides", Part.CYLINDER, Dimension.LENGTH, "Δ_t", "thrust side deeper positive", "deck difference, thrust to anti-thrust", "rock of the piston and tilt of the deck together"),
    DECK_TILT_ENDS("deck_tilt_ends", Part.CYLINDER, Dimension.LENGTH, "Δ_e", "flywheel end deeper positive", "deck difference along the pin axis", "tilt of the deck to the crankshaft"),
    ROD_RATIO("rod_ratio", Part.ROD, Dimension.RATIO, "l/S", "", "rod ratio", "rod length / stroke"),
    ROD_LENGTH_WANTED("length_wanted", Part.ROD, Dimension.LENGTH, "l_w", "", "rod length for the squish aimed at", "length that gives the squish aimed at with this gasket"),
    BORE_TAPER_THRUST("bore_taper_thrust", Part.CYLINDER, Dimension.LENGTH, "τ_t", "wider at the top positive", "taper, thrust", "top less bottom, across the pin axis"),
    BORE_TAPER_AXIS("bore_taper_axis", Part.CYLINDER, Dimension.LENGTH, "τ_a", "wider at the top positive", "taper, axis", "top less bottom, along the pin axis"),
    BORE_TAPER("bore_taper", Part.CYLINDER, Dimension.LENGTH, "τ", "", "bore taper", "larger of the two tapers"),
    OUT_OF_ROUND_TOP("out_of_round_top", Part.CYLINDER, Dimension.LENGTH, "o_t", "wider across the pin axis positive", "out-of-round, top", "thrust less axis"),
    OUT_OF_ROUND_MIDDLE("out_of_round_middle", Part.CYLINDER, Dimension.LENGTH, "o_m", "wider across the pin axis positive", "out-of-round, middle", "thrust less axis"),
    OUT_OF_ROUND_BOTTOM("out_of_round_bottom", Part.CYLINDER, Dimension.LENGTH, "o_b", "wider across the pin axis positive", "out-of-round, bottom", "thrust less axis"),
    OUT_OF_ROUND("out_of_round", Part.CYLINDER, Dimension.LENGTH, "o", "", "out-of-round", "largest of the three depths"),
    SLEEVE_WALL("sleeve_wall", Part.CYLINDER, Dimension.LENGTH, "t_w", "", "sleeve wall left", "(outside - bore) / 2, thinner end; core shift not included"),
    PISTON_TO_WALL("piston_to_wall", Part.PISTON, Dimension.LENGTH, "c_p", "", "piston to wall", "bore less piston diameter, same temperature"),
    PIN_CLEARANCE("pin_clearance", Part.PISTON, Dimension.LENGTH, "c_w", "", "pin clearance in rod", "small-end bore less pin"),
    PIN_BOSS_CLEARANCE("pin_boss_clearance", Part.PISTON, Dimension.LENGTH, "c_pb", "", "pin clearance in piston", "piston pin bore less pin"),
    BIG_END_CLEARANCE("big_end_clearance", Part.ROD, Dimension.LENGTH, "c_b", "", "big-end clearance", "bore less crankpin, or by strip"),
    MAIN_CLEARANCE("main_clearance", Part.CRANKSHAFT, Dimension.LENGTH, "c_m", "", "main bearing clearance", "bore less journal"),
    CRANKPIN_WEAR("crankpin_wear", Part.CRANKSHAFT, Dimension.LENGTH, "w_c", "", "crankpin wear", "largest less smallest diameter"),
    SIDE_CLEARANCE_BY_WIDTH("side_clearance_by_width", Part.ROD, Dimension.LENGTH, "s_w", "", "rod side clearance by width", "crankpin width less big-end width"),
    BOSS_CLEARANCE("boss_clearance", Part.ROD, Dimension.LENGTH, "s_b", "", "small end between bosses", "boss gap less small-end width, both sides together"),
    PIN_FLOAT("pin_float", Part.PISTON, Dimension.LENGTH, "s_k", "", "pin float", "clip span less pin length"),
    OIL_GROOVE_TO_PIN("oil_groove_to_pin", Part.PISTON, Dimension.LENGTH, "t_og", "metal left positive, groove cut open negative", "oil groove above pin bore", "upper edge of the pin bore less lower edge of the oil-ring groove"),
    TOP_RING_TO_DECK("top_ring_to_deck", Part.PISTON, Dimension.LENGTH, "h_r", "ring in the bore positive, out of it negative", "top ring below deck", "at top dead centre: deck clearance plus top land"),
    SKIRT_OUT_OF_SLEEVE("skirt_out_of_sleeve", Part.PISTON, Dimension.LENGTH, "h_k", "skirt out of the sleeve positive", "skirt out of the sleeve", "at bottom dead centre: skirt end below the lower end of the sleeve"),
    GASKET_OVER_BORE("over_bore", Part.GASKET, Dimension.LENGTH, "Δ_g", "gasket hole larger positive", "gasket over bore", "gasket bore less cylinder bore"),
    VALVE_TO_VALVE("valve_to_valve", Part.HEAD, Dimension.LENGTH, "g_vv", "", "valve to valve", "rim to rim of the two heads, both shut"),
    INTAKE_TO_WALL("intake_to_wall", Part.HEAD, Dimension.LENGTH, "g_iw", "", "intake valve to bore wall", "rim of the head to the bore, valve shut, overhead valves"),
    EXHAUST_TO_WALL("exhaust_to_wall", Part.HEAD, Dimension.LENGTH, "g_ew", "", "exhaust valve to bore wall", "rim of the head to the bore, valve shut, overhead valves"),
    FLYWHEEL_ON_TAPER("on_taper", Part.FLYWHEEL, Dimension.LENGTH, "Δ_ft", "wheel bore larger positive", "flywheel bore over taper", "wheel's taper bore less the crankshaft's taper, both halfway along the key"),
    CLUTCH_ON_SHAFT("on_shaft", Part.CLUTCH, Dimension.LENGTH, "c_k", "", "clutch on shaft", "clutch bore less output shaft"),
    CLUTCH_OVERHANG("shaft_left", Part.CLUTCH, Dimension.LENGTH, "l_kl", "", "shaft left over the clutch", "usable length of the output shaft less what the hub takes up"),
    FLYWHEEL_KEY_STEP("keyway_step", Part.FLYWHEEL, Dimension.LENGTH, "Δ_fk", "wheel's keyway wider positive", "flywheel keyway over crank keyway", "width of the wheel's keyway less that of the crankshaft"),
    CLUTCH_KEY_STEP("keyway_step", Part.CLUTCH, Dimension.LENGTH, "Δ_kk", "clutch keyway wider positive", "clutch keyway over shaft keyway", "width of the clutch's keyway less that of the output shaft"),
    TOP_RING_GAP_WANTED("top_gap_wanted", Part.RINGS, Dimension.LENGTH, "g_w", "", "top ring gap wanted", "bore times the factor of the duty"),
    SKIRT_TO_COUNTERWEIGHT("skirt_to_counterweight", Part.PISTON, Dimension.LENGTH, "c_kw", "", "skirt to counterweight", "at bottom dead centre: rod less throw less skirt less counterweight radius"),
    BOSS_TO_COUNTERWEIGHT("boss_to_counterweight", Part.PISTON, Dimension.LENGTH, "c_bw", "", "pin boss to counterweight", "at bottom dead centre: rod less throw less boss less counterweight"),
    INTAKE_LOBE_CENTRE("intake_lobe_centre", Part.CAMSHAFT, Dimension.ANGLE, "φ_i", "after top dead centre positive", "intake lobe centre", "halfway between opening and closing at the checking lift"),
    INTAKE_DURATION("intake_duration", Part.CAMSHAFT, Dimension.ANGLE, "δ_i", "", "intake duration", "opening to closing at the checking lift, crank degrees"),
    EXHAUST_LOBE_CENTRE("exhaust_lobe_centre", Part.CAMSHAFT, Dimension.ANGLE, "φ_e", "before top dead centre positive", "exhaust lobe centre", "halfway between opening and closing at the checking lift"),
    EXHAUST_DURATION("exhaust_duration", Part.CAMSHAFT, Dimension.ANGLE, "δ_e", "", "exhaust duration", "opening to closing at the checking lift, crank degrees"),
    LOBE_SEPARATION("lobe_separation", Part.CAMSHAFT, Dimension.ANGLE, "σ", "", "lobe separation", "cam angle between exhaust and intake peaks"),
    OVERLAP("overlap", Part.CAMSHAFT, Dimension.ANGLE, "ω_o", "", "overlap", "intake opening to exhaust closing at the checking lift"),
    SPRING_RATE("rate", Part.SPRING, Dimension.STIFFNESS, "k", "", "spring rate", "load gained per length from seat to full lift"),
    COIL_BIND_MARGIN("coil_bind_margin", Part.SPRING, Dimension.LENGTH, "m_b", "", "coil bind margin", "installed height less lift less solid height"),
    KEY_SHIFT("key_shift", Part.IGNITION, Dimension.ANGLE, "Δθ", "positive fires earlier", "key shift", "crank degrees that the key offset moves the spark"),
    TIMING_WITH_KEY("timing_with_key", Part.IGNITION, Dimension.ANGLE, "θ_k", "before top dead centre positive", "timing with the offset key", "base timing plus key shift"),
    MEAN_PISTON_SPEED("mean_piston_speed", Part.USE, Dimension.SPEED, "v_m", "", "mean piston speed", "2 x stroke x wanted speed"),
    TDC_ACCELERATION("tdc_acceleration", Part.USE, Dimension.ACCELERATION, "a_t", "", "acceleration at top dead centre", "throw x speed squared x (1 + throw / rod), at the wanted speed"),
    RING_BEARS("ring_bears", Part.RINGS, Dimension.ACCELERATION, "a_r", "", "acceleration the top ring bears", "beyond it a ring of this thickness may flutter"),
    RING_SPEED("flutter_speed", Part.RINGS, Dimension.ROTATIONAL_SPEED, "n_r", "", "ring flutter speed", "speed at which the acceleration at top dead centre is what the top ring bears"),
    RIM_SPEED("rim_speed", Part.FLYWHEEL, Dimension.SPEED, "v_r", "", "flywheel rim speed", "at the wanted speed"),
    HEAD_CUT("head_cut", Part.HEAD, Dimension.LENGTH, "x_h", "", "head cut left", "depth that may come off the head before the clearance volume meets its rule"),
    RATIO_AFTER_CUT("ratio_after_cut", Part.HEAD, Dimension.RATIO, "ε_x", "", "ratio after that cut", "static ratio with the head cut by that depth"),
    VALVE_TO_HEAD_AFTER_CUT("valve_to_head_after_cut", Part.HEAD, Dimension.LENGTH, "h_vx", "", "valve to head after that cut", "side-valve gap less the cut"),
    RECIPROCATING_MASS("reciprocating_mass", Part.PISTON, Dimension.MASS, "m_rec", "", "reciprocating mass", "piston, pin, rings and small end of the rod"),
    ROTATING_MASS("rotating_mass", Part.ROD, Dimension.MASS, "m_rot", "", "rotating rod mass", "big end of the rod");
    // spotless:on

    private static final Map<String, Term> BY_PATH =
            Arrays.stream(values()).collect(Collectors.toUnmodifiableMap(Term::path, Function.identity()));

    /** What nothing but the prediction of torque and power asks for. */
    private static final Set<Term> POWER_ALONE = EnumSet.of(
            VALVES,
            PLUG_TO_WALL,
            INTAKE_THROAT,
            INTAKE_PORT_LENGTH,
            EXHAUST_THROAT,
            EXHAUST_PORT_LENGTH,
            CASE_VOLUME,
            BREATHER_HOLE,
            FILTER_DROP,
            FILTER_DROP_SPEED,
            AIRBOX_VOLUME,
            INTAKE_RESTRICTOR,
            RUNNER_LENGTH,
            RUNNER_BORE,
            CARBURETTOR_LENGTH,
            MAIN_JET_DRILL,
            MAIN_JET_NUMBER,
            MAIN_JET_FLOW,
            MAIN_JET_HEAD,
            EXHAUST_RESTRICTOR,
            SILENCER_VOLUME,
            SILENCER_HOLE,
            OCTANE_NUMBER,
            AIR_PRESSURE,
            AIR_TEMPERATURE,
            HUMIDITY,
            JETTED_PRESSURE,
            JETTED_TEMPERATURE,
            JETTED_HUMIDITY);

    private final String key;
    private final Part part;
    private final @Nullable ReadingKind reading;
    private final Dimension dimension;
    private final String symbol;
    private final boolean read;
    private final double least;
    private final double most;
    private final String sign;
    private final String label;
    private final String meaning;

    Term(
            String key,
            Part part,
            ReadingKind reading,
            String symbol,
            Believable believable,
            String sign,
            String label,
            String meaning) {
        this.key = key;
        this.part = part;
        this.reading = reading;
        this.dimension = reading.dimension();
        this.symbol = symbol;
        this.read = true;
        this.least = believable.least();
        this.most = believable.most();
        this.sign = sign;
        this.label = label;
        this.meaning = meaning;
    }

    Term(String key, Part part, Dimension dimension, String symbol, String sign, String label, String meaning) {
        this.key = key;
        this.part = part;
        this.reading = null;
        this.dimension = dimension;
        this.symbol = symbol;
        this.read = false;
        this.least = Double.NaN;
        this.most = Double.NaN;
        this.sign = sign;
        this.label = label;
        this.meaning = meaning;
    }

    /** The term at {@code section.key} of a build file. */
    public static Optional<Term> at(String path) {
        return Optional.ofNullable(BY_PATH.get(path));
    }

    /** Terms that may be read on the bench, in stripping order. */
    public static List<Term> read() {
        return Arrays.stream(values()).filter(Term::isRead).toList();
    }

    /** Key within its section, lower case with underscores. */
    public String key() {
        return key;
    }

    /** Unique name, {@code section.key}: the place in the build file, the JSON key, the input name in formulas. */
    public String path() {
        return part.key() + "." + key;
    }

    public Part part() {
        return part;
    }

    public Dimension dimension() {
        return dimension;
    }

    public String symbol() {
        return symbol;
    }

    /** What positive and negative mean; empty when it cannot be negative. */
    public String sign() {
        return sign;
    }

    public String label() {
        return label;
    }

    public String meaning() {
        return meaning;
    }

    /** Whether an owner may enter it; the others are only worked out. */
    public boolean isRead() {
        return reading != null;
    }

    /**
     * Whether nothing but the prediction of torque and power asks for it: who does not want that loses nothing by leaving it out, so no page counts it
     * among what is missing or leads on to it.
     */
    public boolean isForPowerAlone() {
        return POWER_ALONE.contains(this);
    }

    /** Whether it is decided rather than read: no instrument shows it, and reading it again tells nothing. */
    public boolean isWish() {
        return this == WANTED_SPEED;
    }

    /**
     * How it is read.
     * @throws IllegalStateException for a term that is only worked out
     */
    public ReadingKind reading() {
        if (reading == null) {
            throw new IllegalStateException(path() + " is worked out, not read");
        }
        return reading;
    }

    /**
     * Believable range.
     * @throws IllegalStateException for a term that is only worked out
     */
    public Believable believable() {
        if (!read) {
            throw new IllegalStateException(path() + " is worked out, not read");
        }
        return new Believable(least, most);
    }
}
