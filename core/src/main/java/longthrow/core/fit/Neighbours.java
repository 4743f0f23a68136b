package longthrow.core.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import longthrow.core.answer.Sureness;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.engine.Rule;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/** What each part meets: the other parts of the stack, and those of the engine that stay. */
final class Neighbours {
    /** A shaft in a bearing or a seal is of the same size when it differs by no more than this [m]; common practice, no source. */
    static final double SAME_SHAFT = 0.03e-3;
    /** A shaft with more play than this in its bearing is of another size [m]; common practice, no source. */
    private static final double MOST_PLAY = 0.2e-3;
    /** Shafts that must be as those of the crankshaft they replace. */
    static final List<Term> SHAFTS = List.of(Term.MAIN_JOURNAL, Term.SEAL_FLYWHEEL_END, Term.SEAL_OUTPUT_END);

    private static final List<Gap> ON_CRANK =
            List.of(Gap.FLYWHEEL_ON_TAPER, Gap.FLYWHEEL_KEY, Gap.CLUTCH_ON_SHAFT, Gap.CLUTCH_KEY, Gap.CLUTCH_LENGTH);

    private final Assembly assembly;
    private final RuleWindows windows;
    private final Row engine;

    Neighbours(Assembly assembly, RuleWindows windows) {
        this.assembly = assembly;
        this.windows = windows;
        this.engine = assembly.whole();
    }

    /** The crankshaft in its case, and what sits on its ends. */
    Pairing crank(Row crank) {
        if (crank.isOwn()) {
            return Pairing.FREE;
        }
        Pairing all = Pairing.FREE;
        for (Term shaft : SHAFTS) {
            all = all.and(sameShaft(crank, shaft));
        }
        for (Gap gap : ON_CRANK) {
            all = all.and(onCrank(crank, gap));
        }
        return all;
    }

    private Pairing sameShaft(Row crank, Term shaft) {
        Optional<Dim> there = engine.dim(shaft);
        Optional<Dim> offered = crank.dim(shaft);
        if (there.isEmpty()) {
            return shaft == Term.MAIN_JOURNAL ? inBearing(crank) : Pairing.FREE; // seals: the candidate says so
        }
        if (offered.isEmpty()) {
            return new Pairing(Sureness.SURE, 1, 0, 0, null);
        }
        return Math.abs(there.get().value() - offered.get().value()) <= SAME_SHAFT + 1e-12
                ? Pairing.FREE
                : Pairing.never(Obstacle.CRANK_IN_CASE);
    }

    /** Where the engine's own shaft was not read, its bearing may tell; where neither was, it is not known whether the crankshaft goes in. */
    private Pairing inBearing(Row crank) {
        Optional<Dim> bearing = engine.dim(Term.MAIN_BORE);
        Optional<Dim> journal = crank.dim(Term.MAIN_JOURNAL);
        if (bearing.isEmpty() || journal.isEmpty()) {
            return new Pairing(Sureness.SURE, 1, 0, 0, null);
        }
        double play = bearing.get().value() - journal.get().value();
        return play >= -SAME_SHAFT && play <= MOST_PLAY ? Pairing.FREE : Pairing.never(Obstacle.CRANK_IN_CASE);
    }

    /** Flywheel and clutch that stay; those that may be bought are chosen afterwards, to suit. */
    private Pairing onCrank(Row crank, Gap gap) {
        boolean flywheel = gap.obstacle() == Obstacle.FLYWHEEL;
        boolean wheelOnCrank = flywheel || gap == Gap.CLUTCH_ON_SHAFT || gap == Gap.CLUTCH_KEY;
        Term other = wheelOnCrank ? gap.wide() : gap.inner();
        PartKind kind = flywheel ? PartKind.FLYWHEEL : PartKind.CLUTCH;
        if (assembly.kinds().contains(kind)
                && (assembly.offered(kind).stream().anyMatch(row -> goesOn(row, crank, gap, wheelOnCrank))
                        || engine.dim(other).isEmpty())) {
            return Pairing.FREE; // one of those on offer goes on: it is chosen afterwards
        }
        if (engine.dim(other).isEmpty()) {
            return Pairing.FREE;
        }
        return between(engine, crank, gap, wheelOnCrank);
    }

    private boolean goesOn(Row offered, Row crank, Gap gap, boolean wheelOnCrank) {
        return between(offered, crank, gap, wheelOnCrank).fits();
    }

    private Pairing between(Row other, Row crank, Gap gap, boolean wheelOnCrank) {
        return wheelOnCrank
                ? gap.of(other, crank, windows, assembly.operations())
                : gap.of(crank, other, windows, assembly.operations());
    }

    /** The piston in its bore, its pin between its clips. */
    Pairing piston(Row piston) {
        Pairing clips = piston.dim(Term.CLIP_SPAN).isEmpty()
                        && piston.dim(Term.PIN_LENGTH).isEmpty()
                ? Pairing.FREE
                : Gap.PIN_IN_CLIPS.of(piston, piston, windows, assembly.operations());
        if (piston.dim(Term.PISTON_PIN_BORE).isPresent()
                && piston.dim(Term.PIN_DIAMETER).isPresent()) {
            clips = clips.and(Gap.PIN_IN_PISTON.of(piston, piston, windows, assembly.operations()));
        }
        if (piston.isOwn()) {
            return Pairing.FREE;
        }
        if (isPinPastBore(piston)) {
            return Pairing.never(Obstacle.PIN_PAST_BORE);
        }
        if (isGrooveCutOpen(piston)) {
            return Pairing.never(Obstacle.OIL_GROOVE);
        }
        if (boredFor(piston).isPresent()) {
            Operation bore = boredFor(piston).get();
            boolean vague = bore.tolerance() == null;
            return clips.and(new Pairing(
                    vague ? Sureness.SELECTION : Sureness.SURE,
                    (bore.offer().price().isPresent() ? 0 : 1) + (vague ? 1 : 0),
                    1,
                    bore.offer().price().orElse(0) + bore.offer().shipping().orElse(0),
                    null));
        }
        return inBore(piston).and(clips);
    }

    /** A pin, or the room between its clips, as long as the bore is wide stands out of the piston. */
    private boolean isPinPastBore(Row piston) {
        Optional<Dim> bore = boreFor(piston);
        return bore.isPresent()
                && Stream.of(Term.PIN_LENGTH, Term.CLIP_SPAN)
                        .flatMap(t -> piston.dim(t).stream())
                        .anyMatch(d -> d.value() >= bore.get().value());
    }

    /** Upper edge of the pin bore above the lower edge of the oil-ring groove; by the sizes as stated. */
    private static boolean isGrooveCutOpen(Row piston) {
        Optional<Dim> height = piston.dim(Term.COMPRESSION_HEIGHT);
        Optional<Dim> pin = piston.dim(Term.PISTON_PIN_BORE).or(() -> piston.dim(Term.PIN_DIAMETER));
        Optional<Dim> groove = piston.dim(Term.OIL_GROOVE_TO_CROWN);
        return height.isPresent()
                && pin.isPresent()
                && groove.isPresent()
                && height.get().value() - pin.get().value() / 2 - groove.get().value() < 0;
    }

    private Pairing inBore(Row piston) {
        return Gap.PISTON_IN_BORE.of(withAlloy(piston), piston, windows, assembly.operations());
    }

    private Row withAlloy(Row piston) {
        return new Row(PartKind.DONOR_ENGINE, null, List.of(), engine.dims(), piston.words());
    }

    /** The cheapest boring on offer that makes the cylinder suit a piston that is too large for it. */
    Optional<Operation> boredFor(Row piston) {
        Optional<Dim> bore = engine.dim(Term.BORE);
        Optional<Dim> wanted = boreWanted(piston);
        if (bore.isEmpty()
                || wanted.isEmpty()
                || piston.isOwn()
                || inBore(piston).fits()) {
            return Optional.empty();
        }
        double to = wanted.get().value();
        return assembly.operations().stream()
                .filter(o -> o.kind() == Operation.Kind.BORE_AND_HONE || o.kind() == Operation.Kind.SLEEVE)
                .filter(o ->
                        o.kind() == Operation.Kind.SLEEVE || to > bore.get().value())
                .filter(o -> to >= o.least().metres() && to <= o.most().metres())
                .filter(o -> o.tolerance() == null
                        || o.tolerance().metres() <= wanted.get().half() + 1e-12)
                .min(Comparator.comparingLong(o -> o.offer().price().orElse(0)));
    }

    /** Piston and the middle of its running clearance. */
    private Optional<Dim> boreWanted(Row piston) {
        return piston.dim(Term.PISTON_DIAMETER).map(d -> {
            RuleWindows.Limits limits = windows.around(piston)
                    .of(
                            Rule.PISTON_TO_WALL,
                            Term.PISTON_TO_WALL,
                            piston.words(),
                            term -> engine.dim(term).map(x -> Measured.exact(x.value())));
            double least = Double.isInfinite(limits.least()) ? 0 : limits.least();
            double most = Double.isInfinite(limits.most()) ? least : limits.most();
            double middle = (least + most) / 2;
            return d.moved(Math.round(middle * 1e6) * 1e-6, (most - least) / 2);
        });
    }

    /** The cylinder with a piston in it: bored to it, or as it is. */
    Optional<Dim> boreFor(Row piston) {
        return boredFor(piston).isPresent() ? boreWanted(piston) : engine.dim(Term.BORE);
    }

    /**
     * A rod that its maker rates below the wanted speed is no rod for it; one without a rating is a matter of stops, and so is the
     * engine's own at no more than the speed its maker governs it to.
     */
    Pairing rod(Row rod) {
        Optional<Double> wanted = engine.dim(Term.WANTED_SPEED).map(Dim::value);
        Optional<Dim> rated = rod.dim(Term.ROD_RATED_SPEED);
        boolean governed = rod.isOwn()
                && engine.dim(Term.GOVERNED_SPEED).isPresent()
                && wanted.isPresent()
                && engine.dim(Term.GOVERNED_SPEED).get().value() >= wanted.get() * (1 - 1e-9);
        boolean tooSlow = !governed
                && wanted.isPresent()
                && rated.isPresent()
                && rated.get().value() < wanted.get() * (1 - 1e-9);
        return tooSlow ? Pairing.never(Obstacle.RATED) : Pairing.FREE;
    }

    /** Needles or rollers stand between a rolling big end and its crankpin; how thick they are no row says. */
    Pairing crankRod(Row crank, Row rod) {
        boolean rolling = "rolling".equals(rod.words().get(Choice.BIG_END_BEARING));
        return (rolling ? new Pairing(Sureness.SURE, 1, 0, 0, null) : known(Gap.ROD_ON_CRANKPIN, rod, crank))
                .and(known(Gap.ROD_BETWEEN_CHEEKS, crank, rod));
    }

    Pairing rodPiston(Row rod, Row piston) {
        Pairing pin = known(Gap.PIN_IN_ROD, rod, piston);
        return pin.and(known(Gap.ROD_IN_PISTON, piston, rod));
    }

    /** Parts that are together already and were not read are not held against a candidate. */
    private Pairing known(Gap gap, Row wide, Row inner) {
        boolean together = wide.isOwn() && inner.isOwn();
        boolean read =
                wide.dim(gap.wide()).isPresent() && inner.dim(gap.inner()).isPresent();
        return together && !read ? Pairing.FREE : gap.of(wide, inner, windows, assembly.operations());
    }

    /** The same with the machining that its pairs need. */
    Found machining(Found found) {
        return new Found(
                found.crank(),
                found.piston(),
                found.rod(),
                found.gasket(),
                found.head(),
                found.deckCut(),
                honed(found.crank(), found.rod(), found.piston()),
                found.combination());
    }

    private List<Row.Cut> honed(Row crank, Row rod, Row piston) {
        List<Row.Cut> cuts = new ArrayList<>();
        Stream.of(
                        cure(Gap.PIN_IN_ROD, rod, piston),
                        cure(Gap.ROD_BETWEEN_CHEEKS, crank, rod),
                        boredFor(piston)
                                .map(o -> new Row.Cut(
                                        o,
                                        boreFor(piston).map(Dim::value).orElse(0.0),
                                        Machining.text(
                                                o,
                                                boreFor(piston).map(Dim::value).orElse(0.0)))))
                .flatMap(Optional::stream)
                .forEach(cuts::add);
        return cuts;
    }

    private Optional<Row.Cut> cure(Gap gap, Row wide, Row inner) {
        if (wide.dim(gap.wide()).isEmpty() || inner.dim(gap.inner()).isEmpty()) {
            return Optional.empty();
        }
        return gap.cure(wide, inner, windows, assembly.operations()).map(o -> {
            Gap.Widening by = gap.widenedBy(wide, inner, windows, o);
            return new Row.Cut(o, by.amount(), Machining.text(o, by.amount()) + ": " + by.words());
        });
    }
}
