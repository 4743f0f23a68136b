package longthrow.core.clear;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Clearance.Gap;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.build.Decided;
import longthrow.core.build.Instrument;
import longthrow.core.build.MockedUp;
import longthrow.core.build.MockedUp.EndPlay;
import longthrow.core.catalogue.PartKind;
import longthrow.core.life.Known;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.measurement.StudentT;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.MovingPair;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.Term;

/** What the mock-up told of each pair: a gap with its doubt, and whether it still tells of the engine as it is. */
final class MockUps {
    /** Sizes that are no farther apart are of the same part: what is written down of one is rounded [m]. A judgement. */
    private static final double SAME_PART = 0.05e-3;

    /** What touched with less of it comes nearer by more of it, never away. */
    private static final Set<Term> NEARER_BY_MORE = EnumSet.of(Term.STROKE, Term.INTAKE_LIFT, Term.EXHAUST_LIFT);

    private static final String USUAL = "table of pooled repeatability; common practice, no source";

    private final Known known;
    private final Build build;

    MockUps(Known known) {
        this.known = known;
        this.build = known.build();
    }

    /**
     * One entry, looked at.
     * @param place    in the build file
     * @param gap      as read; empty where it tells no more
     * @param touches  whether they touched
     * @param angle    of the crank where it is least [rad]; NaN where that was not read
     * @param reserves why it does not tell all that is to be known; empty where it does
     * @param said     how it was taken, or why it tells no more
     * @param taken    for granted
     * @param findings what was noticed
     */
    record Told(
            String place,
            MockedUp mocked,
            Optional<Measured> gap,
            boolean touches,
            double angle,
            List<String> reserves,
            List<String> said,
            List<DefaultUsed> taken,
            List<Finding> findings) {
        Told {
            reserves = List.copyOf(reserves);
            said = List.copyOf(said);
            taken = List.copyOf(taken);
            findings = List.copyOf(findings);
        }

        /** Whether it was read at one place of two parts that another may be nearer at: of what is traced with its bolts, at the bolts. */
        boolean isOfOnePlace(Plan plan) {
            return mocked.pair() != plan.head().pair();
        }

        /** The same with something that it leaves open. */
        Told withReserve(String reserve) {
            return touches
                    ? this
                    : new Told(
                            place,
                            mocked,
                            gap,
                            false,
                            angle,
                            Stream.concat(reserves.stream(), Stream.of(reserve)).toList(),
                            said,
                            taken,
                            findings);
        }

        boolean isFree() {
            return mocked.found() instanceof MockedUp.Free;
        }

        /** In a sentence. */
        String sentence() {
            return Stream.concat(said.stream(), reserves.stream()).collect(Collectors.joining("; "));
        }

        /** In a sentence that stands behind others. */
        String brief() {
            String what = "by " + mocked.way().label();
            return sentence().isEmpty() ? what : what + ": " + sentence();
        }

        /** How to take it again so that nothing is left open. */
        String again(String how) {
            return mocked.pair().hangsOnEndPlay() && mocked.endPlay() != EndPlay.BOTH_WAYS
                    ? "push crankshaft and camshaft one way of their end play and then the other; " + how
                    : how;
        }

        /** The gap as an answer tells it; where it is least is taken from the drawing where it was not read. */
        Gap gap(Optional<Gap> drawn) {
            Measured read = gap.orElseThrow();
            double at = Double.isNaN(angle) ? drawn.map(Gap::angle).orElse(Double.NaN) : angle;
            return new Gap(
                    read.value(),
                    read.low(),
                    read.high(),
                    Math.min(Sourced.worst(read), read.low()),
                    at,
                    touches ? 1 : isFree() ? 0 : 1 - read.probabilityAtLeast(0),
                    isFree() ? Clearance.Way.AT_LEAST : Clearance.Way.MOCKED_UP,
                    drawn.flatMap(Gap::place),
                    read.shares());
        }

        /** How probable it is that each limit is kept. */
        List<Double> keeps(Wanted want) {
            Measured read = gap.orElseThrow();
            return want.leasts().stream()
                    .map(least -> touches ? 0 : read.probabilityAtLeast(least))
                    .toList();
        }
    }

    /** Of the entries that still tell: one that touches, else the smallest gap that was read, else what passed free by most. */
    static Optional<Told> counting(List<Told> all) {
        List<Told> tell = all.stream().filter(t -> t.gap().isPresent()).toList();
        return tell.stream()
                .filter(Told::touches)
                .findFirst()
                .or(() -> tell.stream()
                        .filter(t -> !t.isFree())
                        .min(Comparator.comparingDouble(
                                t -> t.gap().orElseThrow().value())))
                .or(() -> tell.stream()
                        .max(Comparator.comparingDouble(
                                t -> t.gap().orElseThrow().value())));
    }

    /** Entries of one pair that do not go with the one that counts. */
    static List<Finding> quarrels(Told counting, List<Told> all, GapWords words) {
        Measured least = counting.gap().orElseThrow();
        return all.stream()
                .filter(t -> !t.place().equals(counting.place()) && t.gap().isPresent())
                .filter(t -> {
                    Measured other = t.gap().orElseThrow();
                    return other.value() - least.value() > Math.hypot(other.expanded(), least.expanded());
                })
                .map(t -> new Finding(
                        Finding.Kind.SUSPECT,
                        t.place(),
                        t.mocked().pair().label() + " was mocked up twice and the two do not agree: "
                                + words.length(counting.gap(Optional.empty())) + " (" + counting.place() + ") and "
                                + words.length(t.gap(Optional.empty())) + " (" + t.place() + "). The smaller counts",
                        "mock it up once more, and take out the one that is of another engine or was read wrong"))
                .toList();
    }

    /** The pair that a traced rod, which holds its bolts, makes of one of the bolts; empty of any other. */
    private static Optional<MovingPair> inTracedRod(MovingPair pair) {
        return switch (pair) {
            case ROD_BOLTS_TO_CAM_CORE -> Optional.of(MovingPair.BIG_END_TO_CAM_CORE);
            case ROD_BOLTS_TO_INTAKE_LOBE -> Optional.of(MovingPair.BIG_END_TO_INTAKE_LOBE);
            case ROD_BOLTS_TO_EXHAUST_LOBE -> Optional.of(MovingPair.BIG_END_TO_EXHAUST_LOBE);
            case ROD_BOLTS_TO_RELEASE -> Optional.of(MovingPair.BIG_END_TO_RELEASE);
            case ROD_BOLTS_TO_CASE -> Optional.of(MovingPair.BIG_END_TO_CASE);
            case ROD_BOLTS_TO_SLEEVE -> Optional.of(MovingPair.ROD_TO_SLEEVE);
            default -> Optional.empty();
        };
    }

    /** The pair that an entry is counted for: its own, or that of the traced rod with its bolts. */
    static MovingPair countsFor(Build build, MovingPair pair) {
        return inTracedRod(pair)
                .filter(rod -> build.outline(OutlinedPart.ROD).isPresent())
                .orElse(pair);
    }

    /** Entries of pairs that an engine of this layout does not have. */
    static List<Finding> ofNoPair(Build build, List<Plan> plans) {
        Set<MovingPair> has = plans.stream().map(p -> p.head().pair()).collect(Collectors.toSet());
        List<Finding> findings = new ArrayList<>();
        for (int k = 0; k < build.mockedUp().size(); k++) {
            MovingPair pair = build.mockedUp().get(k).pair();
            MovingPair counted = countsFor(build, pair);
            if (counted != pair && has.contains(counted)) {
                findings.add(new Finding(
                        Finding.Kind.NOTE,
                        place(k),
                        pair.label() + " was mocked up, and the traced rod holds its bolts: counted for "
                                + counted.key() + ", of which it is one place",
                        "write it under " + counted.key() + " once the rest of the rod is read there too"));
            } else if (!has.contains(pair)) {
                findings.add(new Finding(
                        Finding.Kind.WARNING,
                        place(k),
                        pair.label() + " was mocked up, and an engine as this one is said to be has no such pair",
                        "look at the words for valve layout, cam drive, compression release and dipper;"
                                + " write it under a pair that is there, or take the entry out"));
            }
        }
        return findings;
    }

    private static String place(int index) {
        return "mocked_up[" + (index + 1) + "]";
    }

    /**
     * Every entry of a pair.
     * @param hangsOn places that the drawing of the pair asks
     */
    List<Told> of(Plan plan, Collection<String> hangsOn) {
        List<Told> told = new ArrayList<>();
        for (int k = 0; k < build.mockedUp().size(); k++) {
            MockedUp mocked = build.mockedUp().get(k);
            if (countsFor(build, mocked.pair()) == plan.head().pair()) {
                told.add(told(plan, mocked, place(k), hangsOn));
            }
        }
        return told;
    }

    private Told told(Plan plan, MockedUp mocked, String place, Collection<String> hangsOn) {
        Optional<String> over = over(mocked, hangsOn);
        return over.map(why -> past(mocked, place, why)).orElseGet(() -> {
            Looking looking = new Looking(mocked, place);
            looking.look(plan);
            return looking.told();
        });
    }

    private static Told past(MockedUp mocked, String place, String why) {
        return new Told(
                place,
                mocked,
                Optional.empty(),
                false,
                Double.NaN,
                List.of(),
                List.of("tells no more: " + why),
                List.of(),
                List.of(new Finding(
                        Finding.Kind.WARNING,
                        place,
                        mocked.pair().label() + ": the mock-up tells no more, " + why,
                        "if it was mocked up with the parts that are to run, say so in the entry: "
                                + with(mocked)
                                + "; else mock it up again with them")));
    }

    /** The words that say which parts were in it. */
    private static String with(MockedUp mocked) {
        return MockedUp.sizes(mocked.pair()).stream()
                .filter(size -> !mocked.with().containsKey(size))
                .map(size -> MockedUp.key(size) + ": the " + size.label())
                .collect(Collectors.joining(", "));
    }

    // ---- whether it still tells

    /** Why an entry tells no more; empty where it does. */
    private Optional<String> over(MockedUp mocked, Collection<String> hangsOn) {
        for (Term size : MockedUp.sizes(mocked.pair())) {
            Optional<String> other = another(mocked, size);
            boolean isTouchOfLess = isTouch(mocked.found()) && NEARER_BY_MORE.contains(size) && isMore(mocked, size);
            if (other.isPresent() && !isTouchOfLess) {
                return other;
            }
        }
        // a touch counts until somebody says that it was of other parts
        return isTouch(mocked.found()) ? Optional.empty() : unsaid(mocked, hangsOn);
    }

    /** Whether throw or lift is more now than it was mocked up with. */
    private boolean isMore(MockedUp mocked, Term size) {
        return Optional.ofNullable(mocked.with().get(size))
                .flatMap(was -> known.figure(size).filter(now -> now.value() - now.expanded() > was.si()))
                .isPresent();
    }

    private static boolean isTouch(MockedUp.Found found) {
        return found instanceof MockedUp.Touching
                || (found instanceof MockedUp.Read read && read.gaps().stream().anyMatch(gap -> gap.si() == 0));
    }

    /** Why it may be of other parts than those that are to run. */
    private Optional<String> unsaid(MockedUp mocked, Collection<String> hangsOn) {
        Set<Term> matter = new LinkedHashSet<>(MockedUp.sizes(mocked.pair()));
        hangsOn.forEach(path -> Term.at(path).ifPresent(matter::add));
        for (Term term : matter) {
            if (!mocked.with().containsKey(term) && build.pendingOn(term).isPresent()) {
                return Optional.of(term.label() + " is planned and not machined yet");
            }
        }
        for (Term size : MockedUp.sizes(mocked.pair())) {
            if (!mocked.with().containsKey(size) && isMachined(size)) {
                return Optional.of(size.label()
                        + " was machined since, or before it was mocked up: the entry does not say which it was");
            }
        }
        Optional<String> donor = donor(mocked);
        if (donor.isPresent()) {
            return donor;
        }
        return build.taken().stream()
                .flatMap(d -> d instanceof Decided.Bought bought ? Stream.of(bought.kind()) : Stream.empty())
                .filter(kind -> isOf(kind, mocked.pair()) && !isThere(kind, mocked))
                .findFirst()
                .map(kind -> "another " + kind.label()
                        + " was taken since, or before it was mocked up: the entry does not say which was in it");
    }

    /** Whether work that was decided on makes it another. */
    private boolean isMachined(Term size) {
        return build.taken().stream()
                .anyMatch(d -> d instanceof Decided.Work work
                        && work.kind().allChanged().contains(size));
    }

    /** An engine that has another throw than its donor had was apart in between: what was mocked up may be of either. */
    private Optional<String> donor(MockedUp mocked) {
        if (!mocked.pair().hangsOnStack() || mocked.with().containsKey(Term.STROKE)) {
            return Optional.empty();
        }
        return known.figure(Term.DONOR_STROKE)
                .flatMap(donor -> known.figure(Term.STROKE)
                        .filter(now -> Math.abs(donor.value() - now.value())
                                > Math.hypot(donor.expanded(), now.expanded()) + SAME_PART)
                        .map(now -> "the donor's stroke is " + GapWords.length(donor.value()) + ", it is "
                                + GapWords.length(now.value()) + " now, and the entry does not say which it was"));
    }

    private Optional<String> another(MockedUp mocked, Term size) {
        return Optional.ofNullable(mocked.with().get(size))
                .flatMap(was -> known.figure(size)
                        .filter(now -> Math.abs(was.si() - now.value()) > now.expanded() + SAME_PART)
                        .map(now -> "it was mocked up with " + size.label() + " " + was.written() + ", and it is "
                                + GapWords.length(now.value()) + " now"));
    }

    /** Whether a part of this kind has to do with the gap. */
    static boolean isOf(PartKind kind, MovingPair pair) {
        return switch (kind) {
            case CRANKSHAFT, CONNECTING_ROD, PISTON -> pair.hangsOnStack();
            case GASKET -> pair.hangsOnStack() && !pair.hangsOnEndPlay();
            case HEAD -> !pair.hangsOnEndPlay();
            case CAMSHAFT -> pair.hangsOnCamshaft();
            case VALVE_SPRING, PUSHROD -> !pair.hangsOnStack();
            case DONOR_ENGINE -> true;
            default -> false;
        };
    }

    /**
     * Whether a part that was taken was in the engine. That its size was read since says nothing of a mock-up that may be from before, so the entry has to say it;
     * of a part of which it can say none, something of it was read since.
     */
    private boolean isThere(PartKind kind, MockedUp mocked) {
        List<Term> sizes = MockedUp.sizes(mocked.pair()).stream()
                .filter(size -> isSizeOf(kind, size))
                .toList();
        return sizes.isEmpty()
                ? Term.read().stream().anyMatch(t -> t.part() == kind.sections().get(0) && build.isRead(t))
                : mocked.with().keySet().containsAll(sizes);
    }

    private static boolean isSizeOf(PartKind kind, Term size) {
        return switch (kind) {
            case CAMSHAFT -> size == Term.INTAKE_LIFT || size == Term.EXHAUST_LIFT || size == Term.CAM_CORE;
            case DONOR_ENGINE -> true;
            default -> size.part() == kind.sections().get(0);
        };
    }

    // ---- what it tells

    /** One entry that tells. */
    private final class Looking {
        private final MockedUp mocked;
        private final String place;
        private final List<String> reserves = new ArrayList<>();
        private final List<String> said = new ArrayList<>();
        private final List<DefaultUsed> taken = new ArrayList<>();
        private final List<Finding> findings = new ArrayList<>();
        private Measured gap = Measured.exact(0);
        private double angle = Double.NaN;
        private boolean touches;

        Looking(MockedUp mocked, String place) {
            this.mocked = mocked;
            this.place = place;
        }

        Told told() {
            return new Told(place, mocked, Optional.of(gap), touches, angle, reserves, said, taken, findings);
        }

        void look(Plan plan) {
            if (mocked.found() instanceof MockedUp.Touching) {
                touches = true;
            } else if (mocked.found() instanceof MockedUp.Free free) {
                free(free.atLeast().si());
            } else if (mocked.found() instanceof MockedUp.Read read) {
                read(read);
            } else if (mocked.found() instanceof MockedUp.Curve curve) {
                curve(plan, curve);
            }
            endPlay();
            parts();
        }

        private void free(double atLeast) {
            if (atLeast == 0) {
                reserves.add("by how much they stay apart was not read");
                return;
            }
            gap = Measured.of(atLeast, errors(1, repeatability()));
            said.add("what went through is the least it can be");
        }

        private void read(MockedUp.Read read) {
            List<Double> gaps = read.gaps().stream().map(Quantity::si).toList();
            double mean =
                    gaps.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
            double least = gaps.stream().mapToDouble(Double::doubleValue).min().orElseThrow();
            double most = gaps.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
            if (least == 0) {
                touches = true;
                return;
            }
            Quantity stated = read.plusMinus();
            if (stated != null) {
                gap = Measured.of(mean, List.of(stated(stated)));
                return;
            }
            double usual = repeatability();
            double apart = StudentT.factor(0.99, ReadingKind.POOLED_DEGREES_OF_FREEDOM) * Math.sqrt(2) * usual
                    + tool().resolution();
            if (most - least > apart) {
                findings.add(new Finding(
                        Finding.Kind.SUSPECT,
                        place,
                        mocked.pair().label() + " was read from " + GapWords.length(least) + " to "
                                + GapWords.length(most) + ", which is farther apart than "
                                + mocked.way().label() + " leaves two readings. The smallest counts",
                        "read it again; gaps at several places are entries of their own"));
                gap = Measured.of(least, errors(1, Math.max(usual, spread(gaps, mean))));
                return;
            }
            gap = Measured.of(mean, errors(gaps.size(), Math.max(usual, spread(gaps, mean))));
        }

        /** A ± closer than one reading of its way comes again is not believed. */
        private Source stated(Quantity stated) {
            double least = Source.NORMAL_95 * rowDoubt();
            if (stated.si() >= least) {
                return Source.at95(place + " ±", Source.Kind.TYPED, label(), stated.si());
            }
            String usual = build.bench().containsKey(kind()) ? "the owner's bench table" : USUAL;
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    place,
                    mocked.pair().label() + " is said to be read within " + stated.written() + "; by "
                            + mocked.way().label() + " one reading comes again within "
                            + GapWords.length(least) + " (" + usual + "), and so it is taken",
                    "read it several times and write them all; who reads closer says so in the bench table (bench: "
                            + kind().key() + ")"));
            taken.add(new DefaultUsed(
                    place,
                    mocked.pair().label() + ": ± " + GapWords.length(least) + ", since the ± written is less than "
                            + mocked.way().label() + " allows",
                    usual));
            return Source.at95(place + " ±", Source.Kind.ASSUMED, label(), least);
        }

        private static double spread(List<Double> gaps, double mean) {
            return gaps.size() < 2
                    ? 0
                    : Math.sqrt(gaps.stream()
                                    .mapToDouble(g -> (g - mean) * (g - mean))
                                    .sum()
                            / (gaps.size() - 1));
        }

        private void curve(Plan plan, MockedUp.Curve curve) {
            MockUpCurve fitted = MockUpCurve.of(plan, known, curve, rowDoubt());
            gap = Measured.of(fitted.least(), errors(1, fitted.doubt()));
            angle = fitted.angle();
            touches = fitted.least() <= 0
                    && curve.rows().stream().anyMatch(row -> row.gap().si() == 0);
            said.add(fitted.said());
            reserves.addAll(fitted.reserves());
            fitted.misfit()
                    .ifPresent(
                            misfit -> findings.add(
                                    new Finding(
                                            Finding.Kind.SUSPECT,
                                            place,
                                            mocked.pair().label() + ": " + misfit,
                                            "read that row again, and check the angle it was read at; the smallest gap read counts till then")));
        }

        private void endPlay() {
            if (!mocked.pair().hangsOnEndPlay() || touches) {
                return;
            }
            if (mocked.endPlay() == EndPlay.ONE_WAY) {
                reserves.add("one way of the end play only");
            } else if (mocked.endPlay() == EndPlay.NOT_SAID) {
                reserves.add("whether it was turned both ways of the end play is not said");
            }
        }

        private void parts() {
            String unsaid = MockedUp.sizes(mocked.pair()).stream()
                    .filter(size -> !mocked.with().containsKey(size)
                            || known.figure(size).isEmpty())
                    .map(Term::label)
                    .collect(Collectors.joining(", "));
            if (!unsaid.isEmpty()) {
                taken.add(new DefaultUsed(
                        place,
                        mocked.pair().label()
                                + " is taken to have been mocked up with the parts that are in the build now;"
                                + " not said, or not known now: " + unsaid,
                        "the owner said nothing of it"));
            }
        }

        // ---- doubt

        private ReadingKind kind() {
            return mocked.way().reading().orElseThrow(); // blue reads nothing, see MockedUp
        }

        private Instrument tool() {
            return Instrument.builtIn(kind().usualInstrument());
        }

        private double repeatability() {
            return build.repeatability(kind());
        }

        private String label() {
            return "mock-up by " + mocked.way().label();
        }

        private double rowDoubt() {
            return Math.hypot(repeatability(), tool().resolution() / Math.sqrt(12));
        }

        /** Of the mean of so many that scatter so much, with what the tool may be off by in all of them. */
        private List<Source> errors(int count, double scatter) {
            Instrument tool = tool();
            taken.add(new DefaultUsed(
                    place,
                    "the usual scatter of " + mocked.way().label() + ", " + GapWords.length(repeatability())
                            + ", and a " + tool.kind().label() + " as usual",
                    build.bench().containsKey(kind()) ? "the owner's bench table" : USUAL));
            return List.of(
                    new Source(
                            place + " scatter",
                            Source.Kind.SCATTER,
                            label(),
                            scatter / Math.sqrt(count),
                            ReadingKind.POOLED_DEGREES_OF_FREEDOM,
                            scatter / Math.sqrt(count)),
                    Source.rectangular(place + " step", Source.Kind.RESOLUTION, label(), tool.resolution() / 2),
                    Source.at95(
                            place + " tool", Source.Kind.INSTRUMENT, tool.kind().label(), tool.statedError()));
        }
    }
}
