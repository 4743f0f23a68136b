package longthrow.workshop.web.clear;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Clearance.State;
import longthrow.core.answer.Rung;
import longthrow.core.clear.Clear;
import longthrow.core.clear.Drawn;
import longthrow.core.clear.ReliefCut;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.term.MovingPair;
import longthrow.workshop.draw.GapChart;
import longthrow.workshop.draw.MovingSection;
import longthrow.workshop.draw.PlanePicture;
import longthrow.workshop.web.Around;
import longthrow.workshop.web.Clearances;
import longthrow.workshop.web.ToRead;

/**
 * What may touch, laid out.
 * @param base      address of the build
 * @param verdict   what it comes to, in a sentence
 * @param summary   in a line
 * @param suspects  readings and entries that do not agree, and what to do
 * @param picture   where it can be drawn
 * @param trouble   why there is no picture; empty where there is one
 * @param readFirst what most of the unknown wait for, that of most pairs first
 * @param unknown   pairs of which something is missing
 * @param told      all others, the gravest first
 * @param around    what stands around every answer
 */
public record ClearAnswer(
        String base,
        String verdict,
        String summary,
        List<String> suspects,
        Optional<Picture> picture,
        String trouble,
        List<ToRead.Awaited> readFirst,
        List<Unknown> unknown,
        List<Told> told,
        Around around) {
    /** So many readings are named to begin with; layout. */
    private static final int MOST_FIRST = 6;

    /** So many unknown pairs stand open; the rest is folded; layout. */
    private static final int MOST_OPEN = 6;

    public ClearAnswer {
        suspects = List.copyOf(suspects);
        readFirst = List.copyOf(readFirst);
        unknown = List.copyOf(unknown);
        told = List.copyOf(told);
    }

    /**
     * The engine, turning.
     * @param angle   of the crank [degrees]
     * @param pair    key of the pair shown; empty for none
     * @param pairs   that can be shown
     * @param drawing as SVG
     */
    public record Picture(int angle, String pair, List<Shown> pairs, String drawing) {
        public Picture {
            pairs = List.copyOf(pairs);
        }
    }

    /**
     * A pair that can be shown.
     * @param angle at which its gap is least [degrees]
     * @param least the gap there [mm]
     * @param gaps  every so many degrees, millimetres to a hundredth, with blanks between
     */
    public record Shown(String key, String name, int angle, String least, String gaps) {}

    /**
     * The mock-up of one pair.
     * @param pair key
     * @param said what was mocked up
     */
    public record MockUp(String pair, List<String> said) {
        public MockUp {
            said = List.copyOf(said);
        }

        private static MockUp of(Clearance told) {
            return new MockUp(
                    told.key(), told.mocked().stream().map(MockUpPage::said).toList());
        }
    }

    /** Pairs that touch or may, the gravest first. */
    public List<Told> grave() {
        return told.stream().filter(ClearAnswer::isGrave).toList();
    }

    /** Whether a pair touches, whatever is not known. */
    public boolean touches() {
        return told.stream().anyMatch(pair -> pair.state().equals(State.TOUCHES.key()));
    }

    /** What the pairs that touch or may come to, in a heading. */
    public String graveSaid() {
        long touch = told.stream()
                .filter(pair -> pair.state().equals(State.TOUCHES.key()))
                .count();
        long may = grave().size() - touch;
        return Stream.of(
                                touch == 0 ? "" : touch == 1 ? "1 pair touches" : touch + " pairs touch",
                                may == 0 ? "" : may == 1 ? "1 pair may touch" : may + " pairs may touch")
                        .filter(said -> !said.isEmpty())
                        .collect(Collectors.joining(", "))
                + ": do not turn it with the starter";
    }

    /** Unknown pairs that stand there at once, those with the least missing. */
    public List<Unknown> unknownFirst() {
        return unknown.subList(0, Math.min(MOST_OPEN, unknown.size()));
    }

    /** The other unknown pairs. */
    public List<Unknown> unknownMore() {
        return unknown.subList(unknownFirst().size(), unknown.size());
    }

    /** How many they are. */
    public String unknownMoreSaid() {
        return counted(unknownMore().size(), "more pair is unknown", "more pairs are unknown");
    }

    /** The one with the least missing; empty where only mocking up tells any. */
    public String unknownMoreLeast() {
        return unknownMore().stream()
                .filter(pair -> !pair.readings().isEmpty())
                .findFirst()
                .map(pair -> "the nearest to being known: " + pair.name() + ", "
                        + counted(pair.readings().size(), "reading", "readings") + " missing")
                .orElse("only mocking up tells them");
    }

    /** Pairs that do not clear, or not surely. */
    public List<Told> open() {
        return told.stream().filter(pair -> !isClear(pair)).toList();
    }

    /** Pairs that clear. */
    public List<Told> clears() {
        return told.stream().filter(ClearAnswer::isClear).toList();
    }

    /** How many clear, and how many of them cold alone. */
    public String clearsSaid() {
        long coldOnly = clears().stream()
                .filter(pair -> pair.state().equals(State.CLEARS_COLD.key()))
                .count();
        String all = counted(clears().size(), "pair clears", "pairs clear");
        return coldOnly == 0
                ? all
                : coldOnly == clears().size()
                        ? all + " cold, running not known"
                        : all + ", " + coldOnly + " of them cold, running not known";
    }

    /** The narrowest of those that clear. */
    public String clearsLeast() {
        return "the narrowest: "
                + clears().stream()
                        .min(Comparator.comparingDouble(Told::narrowest))
                        .map(pair -> pair.name() + ", " + pair.gap())
                        .orElseThrow();
    }

    private static String counted(int count, String one, String many) {
        return count + " " + (count == 1 ? one : many);
    }

    private static boolean isClear(Told pair) {
        return pair.state().equals(State.CLEARS.key()) || pair.state().equals(State.CLEARS_COLD.key());
    }

    private static boolean isGrave(Told pair) {
        return pair.state().equals(State.TOUCHES.key()) || pair.state().equals(State.MAY_TOUCH.key());
    }

    /** A pair that is unknown until mocked up. */
    public record Unknown(String name, String why, List<ToRead> readings, String how, MockUp mock) {
        public Unknown {
            readings = List.copyOf(readings);
        }
    }

    /**
     * A pair that is told.
     * @param state as a key for the style sheet
     * @param label of the state, for people
     * @param narrowest its smaller gap, cold or running [m]
     * @param gap   the same with its doubt, in words
     * @param angle at which its gap is least [degrees]; below 0 where none decides
     * @param mend  what to do; empty when it clears
     * @param lines what else there is to say
     * @param chart as SVG; empty where it is not of the plane
     * @param cut   where the chart ends, in words; empty where it shows all
     * @param shaped part of which something is cut to an outline; empty where none is
     * @param span  where the two turns begin and end on it
     * @param mock  what was mocked up of it
     */
    public record Told(
            String key,
            String name,
            String state,
            String label,
            String why,
            double narrowest,
            String gap,
            int angle,
            String mend,
            List<String> lines,
            String chart,
            String cut,
            String shaped,
            String span,
            String plane,
            MockUp mock) {
        public Told {
            lines = List.copyOf(lines);
        }

        /** What the picture of its own plane shows, and from where. */
        public String planeSays() {
            String seen = key.equals(MovingPair.PUSHROD_TO_TUBE.key())
                    ? "Seen along the tube, at that end of it where the rod is nearer its wall, and turned so that it is nearest to the right: the pushrod is the disc inside."
                    : key.equals(MovingPair.RETAINER_TO_ROCKER.key())
                            ? "Seen along the rocker's axis, with its pivot to the left: the retainer below, the rocker above it."
                            : "Seen from above, along the cylinder.";
            return seen
                    + " To scale, cold, where they come nearest; the ring marks it. What is not measured of a shape is drawn larger than it can be.";
        }
    }

    static ClearAnswer of(Answer measure, Clearances.Seen seen, ClearPage.View view, String base) {
        Answer clear = seen.answer();
        Optional<Picture> picture = Optional.empty();
        String trouble = "";
        try {
            picture = Optional.of(picture(MovingSection.of(measure, clear, seen.drawn()), view));
        } catch (IllegalArgumentException cannotTurn) {
            trouble = String.valueOf(cannotTurn.getMessage());
        }
        List<Clearance> pairs = clear.clearances();
        return new ClearAnswer(
                base,
                verdict(clear),
                summary(pairs),
                Around.suspects(clear),
                picture,
                trouble,
                ToRead.first(pairs.stream().map(Clearance::missing), base, MOST_FIRST),
                pairs.stream()
                        .filter(p -> p.state() == State.UNKNOWN)
                        .map(p -> unknown(p, base))
                        .toList(),
                pairs.stream()
                        .filter(p -> p.state() != State.UNKNOWN)
                        .map(p -> told(p, new FigurePrinter(clear.units()), seen.drawn()))
                        .toList(),
                Around.of(clear, base));
    }

    private static String verdict(Answer clear) {
        String said = Clear.inShort(clear);
        return said.isEmpty() ? "" : Character.toUpperCase(said.charAt(0)) + said.substring(1) + ".";
    }

    private static Picture picture(MovingSection section, ClearPage.View view) {
        List<Clearance> shown = section.shown();
        Optional<String> selected =
                shown.stream().map(Clearance::key).filter(view.pair()::equals).findFirst();
        return new Picture(
                view.angle(),
                selected.orElse(""),
                shown.stream()
                        .map(p -> new Shown(
                                p.key(),
                                name(p) + (MovingSection.isInAnotherPlane(p.key()) ? " (figures only)" : ""),
                                angle(p),
                                least(p),
                                gaps(p)))
                        .toList(),
                section.at(view.angle(), selected, "turning"));
    }

    private static String gaps(Clearance pair) {
        return pair.curve().stream().map(at -> millimetres(at.gap())).collect(Collectors.joining(" "));
    }

    private static String least(Clearance pair) {
        return pair.cold().map(gap -> millimetres(gap.value())).orElse("");
    }

    private static String millimetres(double metres) {
        return String.format(Locale.ROOT, "%.2f", 1e3 * metres + 0.0);
    }

    private static String summary(List<Clearance> pairs) {
        List<String> parts = new ArrayList<>();
        for (State state :
                List.of(State.TOUCHES, State.MAY_TOUCH, State.CLOSE, State.UNKNOWN, State.CLEARS_COLD, State.CLEARS)) {
            long count = pairs.stream().filter(p -> p.state() == state).count();
            if (count > 0) {
                parts.add(count + " " + state.label());
            }
        }
        return pairs.size() + " pairs looked at: " + String.join("; ", parts) + ".";
    }

    private static String name(Clearance pair) {
        return pair.one() + " to " + pair.other();
    }

    private static int angle(Clearance pair) {
        return pair.cold()
                .map(Clearance.Gap::angle)
                .filter(Double::isFinite)
                .map(a -> (int) Math.round(Math.toDegrees(a)))
                .orElse(-1);
    }

    private static Unknown unknown(Clearance pair, String base) {
        return new Unknown(name(pair), pair.why(), ToRead.of(pair.missing(), base), pair.how(), MockUp.of(pair));
    }

    private static Clearance.Gap narrowest(Clearance pair) {
        Clearance.Gap cold = pair.cold().orElseThrow();
        return pair.running().filter(warm -> warm.value() < cold.value()).orElse(cold);
    }

    private static String words(Clearance pair, FigurePrinter printer) {
        Clearance.Gap gap = narrowest(pair);
        String size = printer.print(
                        Dimension.LENGTH, gap.value(), Math.max(gap.high() - gap.value(), gap.value() - gap.low()))
                .first()
                .text();
        return (gap.way() == Clearance.Way.AT_LEAST ? "at least " : "")
                + size
                + (pair.running().filter(gap::equals).isPresent() ? " running" : " cold");
    }

    private static Told told(Clearance pair, FigurePrinter printer, List<Drawn> drawn) {
        List<String> lines = new ArrayList<>();
        pair.removal()
                .flatMap(Clearance.Removal::leaves)
                .ifPresent(left -> lines.add(String.format(Locale.ROOT, "That leaves %.2f mm.", 1e3 * left)));
        if (ReliefCut.isIntoTheUnknown(pair)) {
            lines.add("What that leaves is " + ReliefCut.LEAVES_UNKNOWN + ".");
        }
        if (!pair.phases().isEmpty()) {
            lines.add("Camshaft late by: "
                    + pair.phases().stream().map(Clearance.AtPhase::said).collect(Collectors.joining(", "))
                    + ".");
        }
        if (!pair.notWarm().isEmpty()) {
            lines.add("For the running gap: "
                    + pair.notWarm().stream().map(Rung.Missing::what).collect(Collectors.joining(", ")) + ".");
        }
        boolean isInAnotherPlane = MovingSection.isInAnotherPlane(pair.key());
        if (isInAnotherPlane) {
            lines.add(
                    "Its gap lies in another plane than the turning picture, which does not show it: its figures, its chart and a picture of its own tell it.");
        }
        lines.add("Check it: " + pair.how() + ".");
        return new Told(
                pair.key(),
                name(pair),
                pair.state().key(),
                pair.state().label(),
                pair.why(),
                narrowest(pair).value(),
                words(pair, printer),
                pair.curve().isEmpty() || isInAnotherPlane ? -1 : angle(pair),
                pair.mend(),
                lines,
                pair.curve().isEmpty() ? "" : GapChart.of(pair, "gap-" + pair.key()),
                GapChart.cutAt(pair).orElse(""),
                ReliefCut.isFor(pair) ? pair.removal().orElseThrow().shaped() : "",
                GapChart.span(),
                isInAnotherPlane
                        ? PlanePicture.of(pair, drawn, "plane-" + pair.key()).orElse("")
                        : "",
                MockUp.of(pair));
    }
}
