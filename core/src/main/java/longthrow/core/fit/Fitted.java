package longthrow.core.fit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.answer.Candidate;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.build.TracedOutline;
import longthrow.core.build.Whose;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.catalogue.Operation;
import longthrow.core.measure.Appraisal;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.Units;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/** The build as it would be with the parts of a combination in it: readings of parts that go are taken out, what sheets say of the new ones is put in. */
final class Fitted {
    /** How far the piston comes: of no worth once crank, rod, piston or deck is another. */
    static final Set<Term> REACH = Set.of(
            Term.DECK_CLEARANCE,
            Term.DECK_CLEARANCE_THRUST,
            Term.DECK_CLEARANCE_ANTITHRUST,
            Term.DECK_CLEARANCE_FLYWHEEL_END,
            Term.DECK_CLEARANCE_OUTPUT_END);

    /** What is left under the head: of no worth once any part of the stack is another. */
    static final Set<Term> UNDER_THE_HEAD =
            Set.of(Term.SQUISH_FLYWHEEL_END, Term.SQUISH_OUTPUT_END, Term.VOLUME_IN_ASSEMBLY, Term.VALVE_TO_HEAD);

    /** Of the engine as it was put together: of no worth once it was apart. */
    static final Set<Term> PUT_TOGETHER = Set.of(Term.CRANKING_PRESSURE, Term.LEAK_DOWN);

    /** Read between two parts: of no worth once either is another. */
    static final Map<Term, Set<Part>> BETWEEN = Map.of(
            Term.ROD_SIDE_CLEARANCE, EnumSet.of(Part.CRANKSHAFT, Part.ROD),
            Term.BIG_END_STRIP, EnumSet.of(Part.CRANKSHAFT, Part.ROD),
            Term.CRANK_END_PLAY, EnumSet.of(Part.CRANKSHAFT),
            Term.TOP_RING_GAP, EnumSet.of(Part.PISTON, Part.CYLINDER),
            Term.SECOND_RING_GAP, EnumSet.of(Part.PISTON, Part.CYLINDER),
            Term.TOP_RING_SIDE_CLEARANCE, EnumSet.of(Part.PISTON));

    /** By the sizes alone a length is taken as good to half its usual last digit [mm]. */
    static final String AS_STATED = "0.005";

    /** How whose word it is begins for a size that a job is to give. */
    static final String AFTER_MACHINING = "after machining: ";

    /** What is kept is written no finer than a tenth of a micrometre; common practice, no source. */
    private static final int MOST_PLACES = 4;

    private final Build build;
    private final Appraisal own;
    private final Purpose purpose;
    private final boolean bySizes;
    private final Decisions decisions;
    private final Map<Term, List<Given>> given = new EnumMap<>(Term.class);
    private final Map<Choice, String> words = new LinkedHashMap<>();
    private final List<TracedOutline> outlines = new ArrayList<>();

    /** What the build is wanted for. */
    private enum Purpose {
        /** To be held against every rule, with its doubt. */
        APPRAISED,
        /** As if sizes without a tolerance were exactly what they say. */
        BY_SIZES,
        /** To be kept: figures cut to what their tolerance supports, and what is bought and machined written down. */
        TAKEN
    }

    private Fitted(Build build, Appraisal own, Found found, Purpose purpose) {
        this.purpose = purpose;
        this.bySizes = purpose == Purpose.BY_SIZES;
        this.decisions = new Decisions(build, found);
        this.build = build;
        this.own = own;
        given.putAll(build.given());
        words.putAll(build.choices());
        outlines.addAll(build.outlines());
    }

    /** By the sizes alone: as if those without a tolerance were exactly what they say. */
    static Build bySizes(Build build, Appraisal own, Found found) {
        return new Fitted(build, own, found, Purpose.BY_SIZES).put(found);
    }

    static Build with(Build build, Appraisal own, Found found) {
        return isAsItIs(found) ? build : new Fitted(build, own, found, Purpose.APPRAISED).put(found);
    }

    /**
     * As {@link #with}, to be kept.
     * @param followers parts that are bought with it, though nothing of the stack depends on them
     */
    static Build taken(Build build, Appraisal own, Found found, List<Candidate.Piece> followers) {
        Fitted fitted = new Fitted(build, own, found, Purpose.TAKEN);
        Build taken = isAsItIs(found) ? build : fitted.put(found);
        followers.forEach(fitted.decisions::buy);
        return taken.withTaken(fitted.decisions.all());
    }

    static boolean isAsItIs(Found found) {
        return found.rows().allMatch(r -> r.isOwn() && r.cuts().isEmpty())
                && found.deckCut() == null
                && found.honed().isEmpty();
    }

    private Build put(Found found) {
        keepDonorStroke(found);
        takeOutWhatWasRead(found);
        found.rows().forEach(this::put);
        found.honed().forEach(this::hone);
        shiftCam(found);
        moveGapOfOpenValves(found);
        shortenSleeve(found.deckCut());
        return build.withGiven(given).withChoices(words).withOutlines(outlines).withTaken(decisions.all());
    }

    /** What was read of parts that stay as they are stands: a reading is not thrown away for a part it says nothing of. */
    private void takeOutWhatWasRead(Found found) {
        Set<Part> other = EnumSet.noneOf(Part.class);
        found.rows()
                .filter(r -> !r.isOwn() || !r.cuts().isEmpty())
                .forEach(r -> other.add(r.kind().part()));
        found.honed().forEach(h -> other.add(h.operation().kind().changes().part()));
        boolean reachIsOther = found.deckCut() != null
                || other.contains(Part.CRANKSHAFT)
                || other.contains(Part.ROD)
                || other.contains(Part.PISTON);
        boolean reachWasRead = build.has(Term.DECK_HEIGHT) || REACH.stream().anyMatch(build::has);
        if (reachIsOther || !reachWasRead) {
            keep(Term.DECK_HEIGHT, found.deckCut());
            REACH.forEach(given::remove);
        }
        UNDER_THE_HEAD.forEach(given::remove);
        PUT_TOGETHER.forEach(given::remove);
        BETWEEN.forEach((term, parts) -> {
            if (parts.stream().anyMatch(other::contains)) {
                given.remove(term);
            }
        });
    }

    private void keepDonorStroke(Found found) {
        boolean newCrank = !found.crank().isOwn() || !found.crank().cuts().isEmpty();
        if (newCrank && !build.has(Term.DONOR_STROKE)) {
            own.figure(Term.STROKE).ifPresent(s -> given.put(Term.DONOR_STROKE, typed(Term.DONOR_STROKE, s)));
        }
    }

    /** An overhead camshaft on chain or belt runs ahead or behind once its head has moved; where that is not known, its events are not. */
    private void shiftCam(Found found) {
        HeadMove move = HeadMove.of(own, found);
        if (!HeadMove.isOverheadCam(build) || (move.stands() && !move.isOpen())) {
            return;
        }
        Optional<Measured> advance = move.isVague() && !bySizes ? Optional.empty() : move.advance(own);
        for (Term event : HeadMove.EVENTS) {
            Optional<Measured> shifted =
                    advance.flatMap(a -> own.figure(event).map(old -> HeadMove.event(event, old, a)));
            boolean wasRead = given.remove(event) != null;
            if (wasRead && shifted.isPresent()) {
                given.put(event, typed(event, shifted.get(), "the head moved, and with it the chain or belt"));
            }
        }
    }

    /** On a side-valve the open valves keep their place in the block, so their gap to the head moves with it; under another head it is not known. */
    private void moveGapOfOpenValves(Found found) {
        HeadMove move = HeadMove.of(own, found);
        Optional<Measured> gap = own.figure(Term.VALVE_TO_HEAD);
        if (!build.chose(Choice.VALVE_LAYOUT, "side")
                || gap.isEmpty()
                || !found.head().isOwn()
                || move.isOpen()) {
            return;
        }
        Measured now = HeadMove.sum(gap.get(), 1, move.up(), 1);
        String why = "as it was before the head moved";
        given.put(
                Term.VALVE_TO_HEAD,
                move.isVague() && !bySizes
                        ? specified(Term.VALVE_TO_HEAD, new Dim(now.value(), 0, 0, true), why)
                        : typed(Term.VALVE_TO_HEAD, now, why));
    }

    /** The sleeve is read from the deck: what comes off the deck comes off its upper end, and the lower end stays. */
    private void shortenSleeve(Row.@Nullable Cut deckCut) {
        Optional<Measured> sleeve = own.figure(Term.SLEEVE_LENGTH);
        if (deckCut != null && sleeve.isPresent()) {
            Measured left = HeadMove.sum(sleeve.get(), 1, Measured.exact(deckCut.amount()), -1);
            given.put(Term.SLEEVE_LENGTH, typed(Term.SLEEVE_LENGTH, left, deckCut.text()));
        }
    }

    /** What was found of it from all readings, so that those of the old stack may go. */
    private void keep(Term term, Row.@Nullable Cut cut) {
        own.figure(term).ifPresent(figure -> {
            if (cut == null && build.pendingOn(term).isPresent()) {
                return; // a plan stays a plan: as a figure with its ± it would look as if it had been read
            }
            if (cut == null) {
                given.put(term, typed(term, figure));
            } else {
                Dim after = Dim.of(figure)
                        .machined(cut.amount(), -1, cut.operation().tolerance());
                plan(cut, Optional.of(written(term, figure.value(), figure.expanded())), term, after, "");
            }
        });
    }

    /** The size as it will be, and the work that gives it. */
    private void plan(Row.Cut cut, Optional<Quantity> before, Term term, Dim after, String note) {
        List<Given> size = specified(term, after, cut.text());
        given.put(term, size);
        if (purpose == Purpose.TAKEN) {
            decisions.work(cut, finest(cut.amount()), before, size.get(0).figure(), note);
        }
    }

    private List<Given> typed(Term term, Measured figure) {
        return typed(term, figure, "as found before the change");
    }

    private List<Given> typed(Term term, Measured figure, String note) {
        Quantity value = written(term, figure.value(), figure.expanded());
        return List.of(new Given.Typed(value, halfWidth(term, figure.expanded()), note));
    }

    private void put(Row row) {
        CataloguePart part = row.part();
        if (part != null) {
            given.keySet().removeIf(t -> replaces(part, t));
            words.keySet().removeIf(c -> c.part() == part.kind().part());
            outlines.removeIf(o -> o.part().part() == part.kind().part()); // of the part that goes
            words.putAll(row.words());
            part.figures().forEach((term, figure) -> {
                if (term.isRead()) {
                    given.put(term, List.of(entry(part, figure)));
                }
            });
        }
        if (purpose == Purpose.TAKEN) {
            decisions.buy(row);
        }
        row.cuts().forEach(cut -> machined(row, cut));
    }

    private Given entry(CataloguePart part, CataloguePart.Figure figure) {
        Quantity tolerance = figure.tolerance();
        if (tolerance == null && bySizes) {
            tolerance = figure.value().dimension() == Dimension.LENGTH
                    ? Quantity.of(AS_STATED, Units.MILLIMETRE)
                    : Quantity.of("0", figure.value().unit());
        }
        // what is kept stays the seller's word; a figure typed with its ± is its owner's
        return tolerance == null || figure.isLimit() || purpose == Purpose.TAKEN
                ? new Given.Specified(figure.value(), tolerance, Whose.by(part), true, "")
                : new Given.Typed(figure.value(), tolerance, part.code());
    }

    /** The donor's throw is what the new one is compared with, and valves stay where only the head's casting goes. */
    private static boolean replaces(CataloguePart part, Term term) {
        return part.kind().mayState(term)
                && term != Term.DONOR_STROKE
                && (term.part() == part.kind().part() || part.figures().containsKey(term));
    }

    private void machined(Row row, Row.Cut cut) {
        Operation.Kind kind = cut.operation().kind();
        CataloguePart part = row.part();
        Optional<Quantity> before = kind.makesAPart() ? Optional.empty() : before(kind.changes(), row.isOwn());
        outlines.removeIf(o -> o.part().instead().stream().anyMatch(kind.allChanged()::contains));
        for (Term term : kind.allChanged()) {
            row.dim(term).ifPresent(dim -> {
                if (term == kind.changes()) {
                    plan(cut, before, term, dim, part != null && kind.makesAPart() ? part.note() : "");
                } else {
                    given.put(term, specified(term, dim, cut.text()));
                }
            });
        }
        if (cut.operation().kind() == Operation.Kind.CROWN_CUT) {
            given.remove(Term.PIN_TOP_TO_CROWN);
            if (row.dim(Term.CROWN_VOLUME).isEmpty()) {
                given.remove(Term.CROWN_VOLUME);
            }
            given.remove(Term.PIN_BOTTOM_TO_CROWN);
        }
        if (cut.operation().kind() == Operation.Kind.CRANKPIN_OFFSET_GRIND) {
            given.remove(Term.THROW);
            given.remove(Term.CRANKPIN_LARGEST);
            given.remove(Term.CRANKPIN_SMALLEST);
        }
    }

    /** Honing and facing of pairs, boring to the piston: from the figure that stands there now. */
    private void hone(Row.Cut cut) {
        Term term = cut.operation().kind().changes();
        List<Given> now = given.getOrDefault(term, List.of());
        boolean toSize = !cut.operation().kind().takesOff();
        Optional<Quantity> bore = before(term, true);
        if (toSize) {
            cut.operation().kind().readAfter().forEach(given::remove);
            Dim size = new Dim(cut.amount(), 0, 0, false)
                    .machined(0, 1, cut.operation().tolerance());
            plan(cut, bore, term, size, "");
        } else if (!now.isEmpty() && now.get(0).figure().isPresent()) {
            double sign = cut.operation().kind() == Operation.Kind.BIG_END_FACE ? -1 : 1;
            Dim before = stated(now.get(0))
                    .orElseGet(() -> own.figure(term).map(Dim::of).orElseThrow());
            plan(
                    cut,
                    Optional.of(written(term, before.value(), before.half())),
                    term,
                    Dim.made(
                            before.value() + sign * cut.amount(),
                            cut.operation().tolerance()),
                    "");
        }
    }

    /** The size there is before the work, as its sheet or its owner has it, or as it was found from what was read. */
    private Optional<Quantity> before(Term term, boolean isOwn) {
        return given.getOrDefault(term, List.of()).stream()
                .filter(g -> g instanceof Given.Specified || g instanceof Given.Typed)
                .findFirst()
                .flatMap(Given::figure)
                .or(() -> isOwn ? own.figure(term).map(f -> written(term, f.value(), f.expanded())) : Optional.empty());
    }

    private static Optional<Dim> stated(Given given) {
        if (given instanceof Given.Specified s) {
            return Optional.of(Dim.of(new CataloguePart.Figure(s.value(), s.tolerance(), true)));
        }
        return given instanceof Given.Typed t
                ? Optional.of(Dim.of(new CataloguePart.Figure(t.value(), t.plusMinus(), false)))
                : Optional.empty();
    }

    private List<Given> specified(Term term, Dim dim, String by) {
        return List.of(new Given.Specified(
                written(term, dim.value(), dim.half()),
                dim.isVague() && !bySizes ? null : halfWidth(term, dim.half()),
                AFTER_MACHINING + by,
                false,
                ""));
    }

    /** Cut to a tenth of what its half-width supports where it is to be kept. */
    private Quantity written(Term term, double si, double half) {
        return purpose == Purpose.TAKEN
                ? quantity(term, si, places(term, half), RoundingMode.HALF_EVEN)
                : quantity(term, si);
    }

    /** Rounded up, so that it promises no more than there is. */
    private Quantity halfWidth(Term term, double half) {
        return purpose == Purpose.TAKEN
                ? quantity(term, half, places(term, half), RoundingMode.CEILING)
                : quantity(term, half);
    }

    /** An amount to be taken off or a size to be made [m], to a tenth of a micrometre and never nothing. */
    static Quantity finest(double length) {
        double least = 1e-3 / Math.pow(10, MOST_PLACES); // [m]
        return quantity(Term.ROD_LENGTH, Math.max(length, least), MOST_PLACES, RoundingMode.HALF_UP);
    }

    /** Decimals of the unit it is written in that go one beyond the first digit of its half-width. */
    private static int places(Term term, double half) {
        double width = Math.abs(unit(term).fromSi(half));
        return width > 0
                ? Math.max(0, Math.min(MOST_PLACES, 1 - (int) Math.floor(Math.log10(width) + 1e-9)))
                : MOST_PLACES;
    }

    private static Quantity quantity(Term term, double si, int places, RoundingMode rounding) {
        BigDecimal number = quantity(term, si).value().toDecimal().setScale(places, rounding);
        return Quantity.of(number.stripTrailingZeros(), unit(term));
    }

    private static Unit unit(Term term) {
        return switch (term.dimension()) {
            case LENGTH -> Units.MILLIMETRE;
            case VOLUME -> Units.CUBIC_CENTIMETRE;
            case ANGLE -> Units.DEGREE;
            default ->
                throw new IllegalArgumentException(term.path() + " is neither a length nor a volume nor an angle");
        };
    }

    /** To a nanometre, a thousandth of a cubic millimetre, a millionth of a degree: far finer than anything that is made. */
    static Quantity quantity(Term term, double si) {
        Unit unit = unit(term);
        BigDecimal number = BigDecimal.valueOf(unit.fromSi(si)).setScale(6, RoundingMode.HALF_EVEN);
        return Quantity.of(number.stripTrailingZeros(), unit);
    }
}
