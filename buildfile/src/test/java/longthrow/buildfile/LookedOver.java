package longthrow.buildfile;

/** What an owner writes of an engine that he looked over and whose bolts are new. */
final class LookedOver {
    /** Of the parts that let go through the case. */
    static final String SEEN = """

            seen:
              - {part: flywheel, damage: none, where: 'dyed, hub and rim'}
              - {part: connecting_rod, damage: none, where: dyed}
              - {part: crankshaft, damage: none, where: 'dyed, fillets and taper'}
              - {part: piston, damage: none, where: by eye}
            """;

    private LookedOver() {}

    /** The third acceptance case held to its governed speed, as it is approved. */
    static String springsAtTheMakersSpeed() {
        return Repository.text("examples/scenarios/s3-springs.yaml")
                        .replace("wanted_speed: 6000 rpm", "wanted_speed: 3600 rpm")
                        .replace(
                                "  stroke: 62.0 mm ± 0.001 mm\n",
                                "  stroke: 62.0 mm ± 0.001 mm\n  donor_stroke: 62.0 mm ± 0.001 mm\n")
                        .replace("intake_valve:\n", "exhaust_valve:\n  lift: 8.20 mm ± 0.03 mm\n\nintake_valve:\n")
                        .replace("  metal: cast_aluminium\n", "  metal: cast_aluminium\n  bolt_tightenings: 1\n")
                + SEEN;
    }
}
