package longthrow.core.dyno;

import java.util.ArrayList;
import java.util.List;

/**
 * What to mind before an engine is run on a bench.
 * <p>Sources: guards of wheels, belts and couplings below 2.1 m from the floor, OSHA 29 CFR 1910.219; carbon monoxide, 35 ppm a shift, 200 ppm ceiling, 1200 ppm immediate danger, NIOSH, and 200 ppm
 * within seconds of a 3.7 kW engine in a room of 28 m3, Earnest and others (1997), American Industrial Hygiene Association Journal; hearing, 85 dBA for 8 h and half the time for each 3 dB more, NIOSH.
 * The rest is common practice, no source.
 */
final class DynoCautions {
    private DynoCautions() {}

    static List<String> of(BenchKind kind) {
        List<String> cautions = new ArrayList<>();
        if (kind == BenchKind.ROAD) {
            cautions.add(
                    "Run on a closed road or a track, with helmet and gloves; never read the logger while you ride, and stop if brakes, wheels or chain are not sound.");
        } else {
            cautions.add(
                    "Nobody in the plane of flywheel, drum, chain or coupling while it turns: what bursts flies that way. Guards on all of them, drum enclosed or railed off; look drum and coupling over for cracks first.");
            cautions.add(
                    "Exhaust led outside and a carbon monoxide alarm running: a small engine fills a shop with a deadly share in under a minute (35 ppm for a shift, 200 the ceiling, 1200 immediate danger; NIOSH).");
        }
        cautions.add("A kill switch in reach that was tried; throttle return tried; no speed that Life refuses.");
        cautions.add(
                "Fuel away from the hot exhaust, a fire extinguisher at hand; methanol burns unseen and water puts it out.");
        cautions.add(
                "Ear muffs: an open pipe of 100 to 115 dBA is too much after minutes or seconds (NIOSH). No loose sleeves, hair or ties.");
        cautions.add("The makers of bench, engine and parts, and what is law where you are, come before this list.");
        return cautions;
    }
}
