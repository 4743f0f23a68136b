package longthrow.workshop.draw;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.clear.Drawn;
import longthrow.core.clearance.Body;
import longthrow.core.clearance.Motion;
import longthrow.core.clearance.Outline;
import longthrow.core.motion.CrankMotion;
import longthrow.core.term.MovingPair;
import longthrow.core.term.OutlinedPart;

/**
 * The engine cut along the cylinder with all that may touch in it, to scale, through two turns. Everything that moves together is one group that carries
 * where it stands every two degrees; whoever shows it needs only to move groups, and works out nothing.
 */
public final class MovingSection {
    private static final int SHORTEST = 560;
    private static final int NARROWEST = 330;
    private static final double MARGIN = 22;
    /** From one place of a group to the next [degrees]; between them it goes straight, off by less than 0.01 mm. */
    private static final int STEP = 2;

    private static final int TURNS = 720;
    private static final int PLACES = 2;

    /** What the section itself shows; in the sums they are drawn larger than they are, and shown so with their pair only. */
    private static final Set<String> IN_THE_SECTION = Set.of(
            "piston skirt",
            "pin boss",
            "piston crown",
            "piston",
            "counterweight",
            "sleeve",
            "rod",
            "big end",
            "head",
            "case");

    /** Of these a body in the sums is a band right across the engine; between the walls of the bore it stands for the part. */
    private static final Set<String> IN_THE_BORE = Set.of("piston skirt", "pin boss", "piston crown", "piston", "head");

    /** So is this one, and stands for the part in the walls. */
    private static final String IN_THE_WALLS = "sleeve";

    /** Their gap is seen from above or across: they stand in a plane that this section does not show. */
    private static final Set<String> IN_ANOTHER_PLANE = Set.of(
            MovingPair.INTAKE_VALVE_TO_WALL.key(),
            MovingPair.EXHAUST_VALVE_TO_WALL.key(),
            MovingPair.VALVE_TO_VALVE.key(),
            MovingPair.RETAINER_TO_ROCKER.key(),
            MovingPair.PUSHROD_TO_TUBE.key());

    /** The rod as it was traced, in place of the one that is drawn of a few readings. */
    private static final String TRACED_ROD = Drawn.traced(OutlinedPart.ROD);

    /** Names are never wider than this [pixels]; layout. */
    private static final double NAME_WIDE = 60;

    private final CrossSection section;
    private final CrossSection.Place start;
    private final List<Drawn> drawn;
    private final Map<String, Clearance> pairs = new LinkedHashMap<>();
    private final Map<String, Group> groups = new LinkedHashMap<>();
    private final String title;
    private final int width;
    private final int height;

    /** What moves together, by where it stands. */
    private record Group(Course course, List<Shape> shapes) {}

    /** One outline in the frame of its group, pixels; its pairs by key. */
    private record Shape(String name, String path, Set<String> pairs) {}

    /** Where a frame stands every {@link #STEP} degrees [pixel, degree], turns unbroken. */
    private record Course(List<Double> x, List<Double> y, List<Double> turn) {
        String text() {
            return text(x) + ";" + text(y) + ";" + text(turn);
        }

        private static String text(List<Double> values) {
            boolean same = values.stream().allMatch(v -> number(v).equals(number(values.get(0))));
            return same
                    ? number(values.get(0))
                    : values.stream().map(MovingSection::number).collect(Collectors.joining(" "));
        }

        /** The transform that puts a group where it stands. */
        String at(int degrees) {
            int k = Math.floorMod(degrees, TURNS) / STEP;
            return transform(x.get(k), y.get(k), turn.get(k));
        }

        /** What takes something drawn as it stands at firing top dead centre back into the frame. */
        String back() {
            return "rotate(" + number(-turn.get(0)) + ") translate(" + number(-x.get(0)) + " " + number(-y.get(0))
                    + ")";
        }

        private static String transform(double x, double y, double turn) {
            return "translate(" + number(x) + " " + number(y) + ") rotate(" + number(turn) + ")";
        }
    }

    private MovingSection(Answer measure, Answer clear, List<Drawn> drawn) {
        this.section = CrossSection.of(measure);
        this.start = section.place(0);
        this.drawn = drawn;
        this.title = "Everything that may touch, through two turns: " + clear.engine()
                + (clear.invented() ? " (invented)" : "");
        clear.clearances().forEach(pair -> pairs.put(pair.key(), pair));
        for (Drawn pair : drawn) {
            if (isInAnotherPlane(pair.key())) {
                continue;
            }
            for (Body body : List.of(pair.one(), pair.other())) {
                add(body, pair.key());
            }
        }
        width = size(NARROWEST, farthest(Course::x));
        height = size(SHORTEST, farthest(Course::y));
    }

    /** Whether the gap of a pair lies in a plane that the section does not show: its figures tell it, and no picture. */
    public static boolean isInAnotherPlane(String key) {
        return IN_ANOTHER_PLANE.contains(key);
    }

    /**
     * The section of an engine.
     * @param measure answer to measure: the sizes of the section
     * @param clear   answer to clear: the gaps
     * @param drawn   pairs as they are drawn
     * @throws IllegalArgumentException when the rod is too short for the crank to turn
     */
    public static MovingSection of(Answer measure, Answer clear, List<Drawn> drawn) {
        return new MovingSection(measure, clear, drawn);
    }

    private void add(Body body, String pair) {
        Group group = group(course(body.motion()));
        String path = body.outlines().stream().map(this::path).collect(Collectors.joining(" "));
        for (Shape shape : group.shapes()) {
            if (shape.path().equals(path)) {
                shape.pairs().add(pair);
                return;
            }
        }
        group.shapes().add(new Shape(body.name(), path, new LinkedHashSet<>(List.of(pair))));
    }

    private Group group(Course course) {
        return groups.computeIfAbsent(course.text(), text -> new Group(course, new ArrayList<>()));
    }

    /** Of an outline, pixels from the origin of its frame. */
    private String path(Outline outline) {
        StringBuilder path = new StringBuilder();
        for (String piece : outline.svgPath(1 / start.scale()).split(" ", -1)) {
            boolean isNumber = piece.matches("-?[0-9.]+");
            path.append(path.length() == 0 ? "" : " ").append(isNumber ? number(Double.parseDouble(piece)) : piece);
        }
        return path.toString();
    }

    private Course course(Motion motion) {
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        List<Double> turn = new ArrayList<>();
        for (int degrees = 0; degrees <= TURNS; degrees += STEP) {
            Motion.Standing at = motion.standing(Math.toRadians(degrees));
            double now = Math.toDegrees(at.turn());
            if (!turn.isEmpty()) {
                double before = turn.get(turn.size() - 1);
                now = before + Math.IEEEremainder(now - before, 360);
            }
            x.add(start.x(at.x()));
            y.add(section.y(start, at.y()));
            turn.add(now);
        }
        return new Course(x, y, turn);
    }

    private static String number(double value) {
        BigDecimal shown =
                BigDecimal.valueOf(value).setScale(PLACES, RoundingMode.HALF_UP).stripTrailingZeros();
        return shown.signum() == 0 ? "0" : shown.toPlainString();
    }

    /** Pairs whose gap is shown, in the order of the answer. */
    public List<Clearance> shown() {
        return pairs.values().stream()
                .filter(pair -> !pair.curve().isEmpty()
                        && drawn.stream().anyMatch(d -> d.key().equals(pair.key())))
                .toList();
    }

    /**
     * The drawing, a whole SVG element.
     * @param degrees  of the crank from firing top dead centre
     * @param selected key of the pair to be shown; empty for none
     */
    public String at(int degrees, Optional<String> selected, String idPrefix) {
        Svg svg = new Svg(
                idPrefix,
                width,
                height,
                title,
                "Crank, rod, piston, cylinder and camshaft to scale at " + degrees + "° of crank"
                        + selected.flatMap(key -> Optional.ofNullable(pairs.get(key)))
                                .map(pair -> (isInAnotherPlane(pair.key())
                                                ? "; not shown, for it lies in another plane: "
                                                : "; shown: ")
                                        + pair.one() + " to " + pair.other() + ", " + pair.why())
                                .orElse("")
                        + ". Named in it: " + String.join(", ", names()) + ".");
        Sketch s = new Sketch(svg, width, height);
        section.cylinder(s, start);
        CrankMotion crank = section.motion();
        moving(svg, degrees, course(Motion.piston(crank, 0)), () -> section.piston(s, start));
        moving(svg, degrees, course(Motion.crank()), () -> section.web(s, start));
        moving(svg, degrees, course(Motion.rod(crank)), () -> rod(s, svg));
        int shapes = 0;
        for (Group group : groups.values()) {
            open(svg, degrees, group.course());
            for (Shape shape : group.shapes()) {
                boolean isOn = selected.filter(shape.pairs()::contains).isPresent();
                boolean isHidden = IN_THE_SECTION.contains(shape.name());
                String clip = clip(svg, group.course(), shape, idPrefix + "-clip-" + shapes++);
                shape(svg, shape, (isHidden ? "body hid" : "body") + (isOn ? " on" : ""), clip);
            }
            svg.close();
        }
        shown().stream()
                .filter(pair -> !isInAnotherPlane(pair.key()))
                .forEach(pair -> pair.cold()
                        .flatMap(Clearance.Gap::place)
                        .ifPresent(place -> nearest(
                                svg,
                                pair,
                                place,
                                selected.filter(pair.key()::equals).isPresent(),
                                degrees)));
        names(svg, s, degrees, crank);
        return svg.finished();
    }

    // ---- names

    /** What is named in the picture, from above. */
    private List<String> names() {
        List<String> names = new ArrayList<>(List.of("head", "cylinder", "piston", "rod", "counterweight"));
        camshaft().ifPresent(group -> names.add("camshaft"));
        return names;
    }

    /** Names of what moves go with it and never turn; those of what stands are at its side. */
    private void names(Svg svg, Sketch s, int degrees, CrankMotion crank) {
        double top = section.y(start, section.deckLevel());
        double beside = Math.max(NAME_WIDE / 2, section.boreLeft(start) - CrossSection.WALL - 4 - NAME_WIDE / 2);
        name(s, "head", beside, top - CrossSection.WALL);
        name(s, "cylinder", beside, top + 40);
        Course piston = course(Motion.piston(crank, 0));
        Course rod = course(Motion.rod(crank));
        named(svg, s, degrees, "piston", upright(piston, 0, section.pistonMiddle(start)));
        named(svg, s, degrees, "rod", between(rod, piston, 0.4));
        named(svg, s, degrees, "counterweight", turned(course(Motion.crank()), section.counterweightMiddle(start)));
        camshaft()
                .ifPresent(group -> name(
                        s,
                        "camshaft",
                        Math.min(group.course().x().get(0), width - NAME_WIDE / 2),
                        group.course().y().get(0)
                                - group.shapes().stream()
                                        .mapToDouble(shape -> reach(shape.path()))
                                        .max()
                                        .orElse(0)
                                - 6));
    }

    /** What turns with the camshaft and reaches farthest from its axis. */
    private Optional<Group> camshaft() {
        return groups.values().stream()
                .filter(group ->
                        group.shapes().stream().anyMatch(shape -> shape.name().contains("lobe")))
                .findFirst();
    }

    private static void name(Sketch s, String name, double x, double y) {
        s.words("quiet", name, x, y, Sketch.Anchor.MIDDLE, Sketch.SMALL, false);
    }

    /** Written where it stands at firing top dead centre, in a group that moves by how far it has gone from there. */
    private static void named(Svg svg, Sketch s, int degrees, String name, Course course) {
        double x = course.x().get(0);
        double y = course.y().get(0);
        open(svg, degrees, upright(course, -x, -y));
        name(s, name, x, y + 4);
        svg.close();
    }

    private static Course upright(Course course, double dx, double dy) {
        return new Course(
                course.x().stream().map(x -> x + dx).toList(),
                course.y().stream().map(y -> y + dy).toList(),
                course.x().stream().map(x -> 0.0).toList());
    }

    /** A share of the way from one frame to another. */
    private static Course between(Course from, Course to, double share) {
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (int k = 0; k < from.x().size(); k++) {
            x.add(from.x().get(k) + share * (to.x().get(k) - from.x().get(k)));
            y.add(from.y().get(k) + share * (to.y().get(k) - from.y().get(k)));
        }
        return new Course(x, y, from.x().stream().map(at -> 0.0).toList());
    }

    /** A place below the origin of a frame that turns. */
    private static Course turned(Course course, double below) {
        List<Double> x = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (int k = 0; k < course.x().size(); k++) {
            double turn = Math.toRadians(course.turn().get(k));
            x.add(course.x().get(k) - below * Math.sin(turn));
            y.add(course.y().get(k) + below * Math.cos(turn));
        }
        return new Course(x, y, course.x().stream().map(at -> 0.0).toList());
    }

    /** As traced where it was, else of a few readings. */
    private void rod(Sketch s, Svg svg) {
        Optional<Shape> traced = groups.values().stream()
                .flatMap(group -> group.shapes().stream())
                .filter(shape -> shape.name().equals(TRACED_ROD))
                .findFirst();
        if (traced.isEmpty()) {
            section.rod(s, start);
            return;
        }
        Course frame = course(Motion.rod(section.motion()));
        svg.open(
                "g",
                "transform",
                Course.transform(
                        frame.x().get(0), frame.y().get(0), frame.turn().get(0)));
        svg.add("path", "class", "part", "d", traced.get().path(), "stroke", "currentColor", "stroke-width", "1.6");
        svg.close();
    }

    /**
     * One pair at one angle, for paper: nothing else of what may touch is in it, and nothing moves.
     * @param degrees of the crank from firing top dead centre
     * @param pair    one of those shown
     */
    public String still(int degrees, Clearance pair, String idPrefix) {
        Svg svg = new Svg(
                idPrefix,
                width,
                height,
                title,
                pair.one() + " to " + pair.other() + " to scale at " + degrees + "° of crank; " + pair.why() + ".");
        Sketch s = new Sketch(svg, width, height);
        section.cylinder(s, start);
        CrankMotion crank = section.motion();
        stands(svg, degrees, course(Motion.piston(crank, 0)), () -> section.piston(s, start));
        stands(svg, degrees, course(Motion.crank()), () -> section.web(s, start));
        stands(svg, degrees, course(Motion.rod(crank)), () -> rod(s, svg));
        int shapes = 0;
        for (Group group : groups.values()) {
            for (Shape shape : group.shapes()) {
                if (shape.pairs().contains(pair.key())) {
                    svg.open("g", "transform", group.course().at(degrees));
                    String clip = clip(svg, group.course(), shape, idPrefix + "-clip-" + shapes++);
                    shape(svg, shape, "body on", clip);
                    svg.close();
                }
            }
        }
        pair.cold().flatMap(Clearance.Gap::place).ifPresent(place -> nearest(svg, place));
        return svg.finished();
    }

    private static void stands(Svg svg, int degrees, Course course, Runnable drawnAtStart) {
        svg.open("g", "transform", course.at(degrees));
        svg.open("g", "transform", course.back());
        drawnAtStart.run();
        svg.close();
        svg.close();
    }

    /** Writes what a shape is cut to, in the frame of its group; empty where it is shown as it is. */
    private String clip(Svg svg, Course course, Shape shape, String id) {
        boolean isInTheWalls = shape.name().equals(IN_THE_WALLS);
        if (!isInTheWalls && !IN_THE_BORE.contains(shape.name())) {
            return "";
        }
        double left = section.boreLeft(start) - course.x().get(0);
        double right = section.boreRight(start) - course.x().get(0);
        svg.open("clipPath", "id", id);
        if (isInTheWalls) {
            upright(svg, left - CrossSection.WALL, left);
            upright(svg, right, right + CrossSection.WALL);
        } else {
            upright(svg, left, right);
        }
        svg.close();
        return "url(#" + id + ")";
    }

    /** As high as anything can be drawn. */
    private void upright(Svg svg, double left, double right) {
        String tall = number(4.0 * height);
        svg.add("rect", "x", number(left), "y", number(-2.0 * height), "width", number(right - left), "height", tall);
    }

    private static void shape(Svg svg, Shape shape, String look, String clip) {
        List<String> attributes = new ArrayList<>(
                List.of("class", look, "data-pairs", String.join(" ", shape.pairs()), "d", shape.path()));
        attributes.addAll(List.of("stroke", "currentColor", "stroke-width", "1.4"));
        attributes.addAll(List.of("fill", "currentColor", "fill-opacity", "0.08"));
        if (!clip.isEmpty()) {
            attributes.addAll(List.of("clip-path", clip));
        }
        svg.add("path", attributes.toArray(String[]::new));
    }

    /** As far as anything that is drawn reaches, and a little more; never so far that the rest gets small. */
    private static int size(int least, double farthest) {
        return (int) Math.ceil(Math.max(least, Math.min(farthest + MARGIN, 1.6 * least)));
    }

    private double farthest(Function<Course, List<Double>> along) {
        double farthest = 0;
        for (Group group : groups.values()) {
            double place = along.apply(group.course()).stream()
                    .mapToDouble(at -> at)
                    .max()
                    .orElse(0);
            for (Shape shape : group.shapes()) {
                farthest = Math.max(farthest, IN_THE_SECTION.contains(shape.name()) ? 0 : place + reach(shape.path()));
            }
        }
        return farthest;
    }

    /** How far a path reaches from the origin of its frame, whichever way that is turned. */
    private static double reach(String path) {
        String[] pieces = path.split(" ", -1);
        double most = 0;
        for (int k = 0; k + 1 < pieces.length; k++) {
            if (pieces[k].matches("[ML]?-?[0-9.]+") && pieces[k + 1].matches("-?[0-9.]+")) {
                double x = Double.parseDouble(pieces[k].replaceAll("[ML]", ""));
                most = Math.max(most, Math.hypot(x, Double.parseDouble(pieces[k + 1])));
            }
        }
        return Math.min(most, NARROWEST / 2.0);
    }

    private static void open(Svg svg, int degrees, Course course) {
        svg.open("g", "class", "moves", "data-course", course.text(), "transform", course.at(degrees));
    }

    private static void moving(Svg svg, int degrees, Course course, Runnable drawnAtStart) {
        open(svg, degrees, course);
        svg.open("g", "transform", course.back());
        drawnAtStart.run();
        svg.close();
        svg.close();
    }

    /** The two nearest points where the gap is least. */
    private void nearest(Svg svg, Clearance pair, Clearance.Place place, boolean isOn, int degrees) {
        double at = Math.toDegrees(pair.cold().orElseThrow().angle());
        boolean isHere = isOn && Math.abs(Math.IEEEremainder(at - degrees, TURNS)) <= STEP;
        svg.open("g", "class", isHere ? "nearest on" : "nearest", "data-pair", pair.key(), "data-at", number(at));
        nearest(svg, place);
        svg.close();
    }

    private void nearest(Svg svg, Clearance.Place place) {
        double x1 = start.x(place.acrossOne());
        double y1 = section.y(start, place.upOne());
        double x2 = start.x(place.acrossOther());
        double y2 = section.y(start, place.upOther());
        svg.add(
                "path",
                "class",
                "lit",
                "d",
                Svg.path("M", x1, y1, "L", x2, y2),
                "stroke",
                "currentColor",
                "stroke-width",
                "2.5");
        svg.add(
                "circle",
                "class",
                "lit",
                "cx",
                number((x1 + x2) / 2),
                "cy",
                number((y1 + y2) / 2),
                "r",
                "9",
                "stroke",
                "currentColor",
                "stroke-width",
                "2");
    }
}
