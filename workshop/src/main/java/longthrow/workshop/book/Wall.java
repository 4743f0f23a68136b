package longthrow.workshop.book;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Stop;
import longthrow.core.answer.Verdict;
import longthrow.core.book.Book;
import longthrow.core.book.LimitChapter;
import longthrow.core.book.ShakeChapter;
import longthrow.core.book.TouchChapter;
import longthrow.core.engine.GapStops;

/**
 * The page for the wall: its blocks in two columns of about the same height, in the order of the job. Where the gaps to set alone are longer than all
 * the rest they go on under it.
 * @param left    blocks of the one column
 * @param right   blocks of the other
 * @param set     gaps to set
 * @param goesOn  those that go on
 * @param notRead how many more there are of which nothing is read
 * @param figures of the engine
 * @param again   what to measure again
 * @param room    what had none
 */
public record Wall(
        List<Block> left,
        List<Block> right,
        List<Book.Target> set,
        List<Book.Target> goesOn,
        int notRead,
        List<Book.RecipeLine> figures,
        List<Book.ReadAgain> again,
        NoRoom room) {
    /** Characters to a line of a column, at the size that the two are compared at; layout. */
    private static final int LINE = 62;

    /** Lines that a heading with its rule and its head of a table takes; layout. */
    private static final int HEADING = 3;

    /** So many pairs that are not known are named, and no more; layout. */
    private static final int MOST_PAIRS = 3;

    /** So many pairs that hold a run back or are close, and so many places of damage, are named, and no more; layout. */
    private static final int MOST_NAMED = 4;

    /** The pairs that a stop names, and how many more there are. */
    private static final Pattern NOT_KNOWN =
            Pattern.compile("not known: (.+?)(?: and (\\d+) more, which clear lists)?$");

    /** What stands under one heading. */
    public enum Block {
        CHOSEN,
        SET,
        MOVING,
        ENGINE,
        TORQUES,
        AGAIN,
        ARRIVAL,
        STEPS,
        SET_GOES_ON
    }

    public Wall {
        left = List.copyOf(left);
        right = List.copyOf(right);
        set = List.copyOf(set);
        goesOn = List.copyOf(goesOn);
        figures = List.copyOf(figures);
        again = List.copyOf(again);
    }

    /**
     * What has no room on one page and stands in the full sheet, counted here.
     * @param gaps    that are read
     * @param figures of the engine
     * @param again   readings to take again
     * @param isBrief whether a stop is said without its why and its safe way, and what is read when parts are there is a count
     */
    public record NoRoom(int gaps, int figures, int again, boolean isBrief) {
        /** All of it has room. */
        static final NoRoom NONE = new NoRoom(0, 0, 0, false);

        /** So many that can go, in the order in which they go: what is read and kept, figures, what to read again, what is read and not kept, the words behind stops. */
        static int most(Book book) {
            return rows(book).size() + book.headline().size() + book.before().size() + 1;
        }

        /** @param without so many, from 0 to {@link #most} */
        static NoRoom of(Book book, int without) {
            int kept = (int) rows(book).stream().filter(Wall::isKept).count();
            int figures = book.headline().size();
            int again = book.before().size();
            int gapsKept = Math.min(without, kept);
            int noFigures = clamp(without - kept, figures);
            int noAgain = clamp(without - kept - figures, again);
            int others = clamp(without - kept - figures - again, rows(book).size() - kept);
            return new NoRoom(gapsKept + others, noFigures, noAgain, without == most(book));
        }

        private static int clamp(int some, int most) {
            return Math.max(0, Math.min(some, most));
        }
    }

    /** Of a Book. */
    public static Wall of(Book book) {
        return of(book, 0);
    }

    /**
     * Of a Book, with less on it.
     * @param without so many of what can go, from 0 to {@link NoRoom#most}
     */
    static Wall of(Book book, int without) {
        NoRoom room = NoRoom.of(book, without);
        List<Book.Target> rows = without(rows(book), room.gaps());
        List<Block> left = left(book, rows);
        List<Block> right = new ArrayList<>(blocks(book));
        right.removeAll(left);
        int kept = left.get(left.size() - 1) == Block.SET ? kept(book, left, right, rows) : rows.size();
        if (kept < rows.size()) {
            right.add(Block.SET_GOES_ON);
        }
        List<Book.RecipeLine> figures = book.headline();
        List<Book.ReadAgain> again = book.before();
        return new Wall(
                left,
                right,
                rows.subList(0, kept),
                rows.subList(kept, rows.size()),
                notRead(book),
                figures.subList(0, figures.size() - room.figures()),
                again.subList(0, again.size() - room.again()),
                room);
    }

    /** Those that are kept go first, from the end; the order of the others stays. */
    private static List<Book.Target> without(List<Book.Target> rows, int some) {
        List<Book.Target> left = new ArrayList<>(rows);
        for (boolean alsoOthers : new boolean[] {false, true}) {
            for (int k = left.size() - 1; k >= 0 && left.size() > rows.size() - some; k--) {
                if (alsoOthers || isKept(left.get(k))) {
                    left.remove(k);
                }
            }
        }
        return left;
    }

    /** Whether every limit that counts is surely kept. */
    private static boolean isKept(Book.Target target) {
        return target.counting().stream().allMatch(l -> l.state() == Verdict.State.MEETS);
    }

    private static List<Block> blocks(Book book) {
        return Stream.of(Block.values())
                .filter(b -> switch (b) {
                    case CHOSEN -> !book.chosen().isEmpty();
                    case ARRIVAL -> !book.onArrival().isEmpty();
                    case SET_GOES_ON -> false;
                    case SET, MOVING, ENGINE, TORQUES, AGAIN, STEPS -> true;
                })
                .toList();
    }

    /** Blocks of the left column, so that the taller one is the least tall: what is chosen and set to is there, any of the others may be. */
    private static List<Block> left(Book book, List<Book.Target> rows) {
        List<Block> blocks = blocks(book);
        int first = blocks.indexOf(Block.SET) + 1;
        List<Block> best = blocks.subList(0, first);
        int least = Integer.MAX_VALUE;
        for (int some = 0; some < (1 << (blocks.size() - first)) - 1; some++) {
            List<Block> left = new ArrayList<>();
            List<Block> right = new ArrayList<>();
            for (int k = 0; k < blocks.size(); k++) {
                boolean isLeft = k < first || (some >> (k - first) & 1) == 1;
                (isLeft ? left : right).add(blocks.get(k));
            }
            int taller = Math.max(lines(book, left, rows), lines(book, right, rows));
            if (taller < least) {
                least = taller;
                best = left;
            }
        }
        return best;
    }

    /** Rows that stay on the left, so that neither column is much longer. */
    private static int kept(Book book, List<Block> leftBlocks, List<Block> rightBlocks, List<Book.Target> rows) {
        int left = lines(book, leftBlocks, rows);
        int right = lines(book, rightBlocks, rows);
        int kept = rows.size();
        while (kept > 0) {
            int moved = lines(rows.get(kept - 1));
            int head = kept == rows.size() ? HEADING : 0;
            if (right + moved + head >= left) {
                break;
            }
            right += moved + head;
            left -= moved;
            kept--;
        }
        return kept;
    }

    private static int lines(Book book, List<Block> blocks, List<Book.Target> rows) {
        return blocks.stream().mapToInt(b -> lines(book, b, rows)).sum();
    }

    private static int lines(Book book, Block block, List<Book.Target> rows) {
        return HEADING
                + switch (block) {
                    case CHOSEN -> book.chosen().stream().mapToInt(Wall::lines).sum();
                    case SET -> Math.max(1, rows.stream().mapToInt(Wall::lines).sum()) + (notRead(book) > 0 ? 2 : 0);
                    case MOVING ->
                        Stream.concat(warned(book).stream(), moving(book).stream())
                                .mapToInt(Wall::lines)
                                .sum();
                    case ENGINE ->
                        Math.max(
                                1,
                                book.headline().stream().mapToInt(Wall::lines).sum());
                    case TORQUES ->
                        lines(book.torques().stream()
                                .map(t -> t.joint() + ": " + t.torque() + ". ")
                                .collect(Collectors.joining()));
                    case AGAIN ->
                        book.before().stream()
                                .mapToInt(a -> lines(a.what() + ": " + a.why()))
                                .sum();
                    case ARRIVAL ->
                        lines(book.onArrival().stream()
                                .map(a -> a.what() + "; ")
                                .collect(Collectors.joining(
                                        "", "Parts not in hand, work not done, and what is read with them in: ", "")));
                    case STEPS ->
                        book.steps().stream().mapToInt(s -> lines(s.step())).sum();
                    case SET_GOES_ON -> 0;
                };
    }

    /** Why a stop is there, of one for a gap the gap alone; where it would name more pairs than the wall has room for, how many they are: the page Clear and the full sheet name each. */
    public static String why(Book book, Stop stop) {
        if (GapStops.isOfAGap(stop)) { // its gap; what the trade wants of it is on the full sheet
            int end = stop.why().indexOf("; ");
            return end < 0 ? stop.why() : stop.why().substring(0, end);
        }
        Matcher named = NOT_KNOWN.matcher(stop.why());
        if (!GapStops.isOfTheUnknown(stop) || book.touching().isEmpty() || !named.find()) {
            return stop.why();
        }
        TouchChapter chapter = book.touching().get();
        int open =
                named.group(1).split(", ", -1).length + (named.group(2) == null ? 0 : Integer.parseInt(named.group(2)));
        int all = chapter.unknown().size() + chapter.told().size();
        return open <= MOST_PAIRS
                ? stop.why()
                : named.replaceFirst("not known: " + open + " of " + all + " pairs, see Clear");
    }

    /** What holds a run back though it is known, and damage that no stop names: the worst first, a few by name and the rest as a count. */
    public static List<String> warned(Book book) {
        List<String> lines = new ArrayList<>();
        List<TouchChapter.Told> told = book.touching().map(TouchChapter::told).orElse(List.of());
        List<String> held = told.stream()
                .filter(TouchChapter.Told::isHeld)
                .map(pair -> pair.pair() + " " + pair.least() + ", " + pair.state())
                .toList();
        if (!held.isEmpty()) {
            lines.add("Hold a run back: " + few(held, "pairs", "see Clear") + ".");
        }
        List<String> close = told.stream()
                .filter(pair -> !pair.isHeld() && pair.state().equals(Clearance.State.CLOSE.label()))
                .map(pair -> pair.pair() + " " + pair.least())
                .toList();
        if (!close.isEmpty()) {
            lines.add("Close, and hold nothing back: " + few(close, "pairs", "see Clear") + ".");
        }
        if (!book.damage().isEmpty()) {
            lines.add("Damage was seen: " + few(book.damage(), "places", "see Life") + ".");
        }
        return lines;
    }

    private static String few(List<String> all, String many, String where) {
        int more = all.size() - MOST_NAMED;
        return String.join("; ", all.subList(0, Math.min(MOST_NAMED, all.size())))
                + (more > 0 ? "; and " + more + " more " + many + ", " + where : "");
    }

    /** One line for each question of the moving engine that was asked. */
    public static List<String> moving(Book book) {
        return Stream.of(
                        book.touching().map(TouchChapter::least),
                        book.limits().map(LimitChapter::line),
                        book.shaking().map(ShakeChapter::line))
                .flatMap(Optional::stream)
                .toList();
    }

    /** What is read, and the owner's own; of the others the full sheet has each. */
    private static List<Book.Target> rows(Book book) {
        return toSet(book).stream().filter(t -> isRead(t) || isOwn(t)).toList();
    }

    private static int notRead(Book book) {
        return (int) toSet(book).stream().filter(t -> !isRead(t) && !isOwn(t)).count();
    }

    /** The owner's own limits first, whatever they are of. */
    private static List<Book.Target> toSet(Book book) {
        return Stream.concat(
                        book.targets().stream().filter(Wall::isOwn),
                        book.targets().stream().filter(t -> !t.limit() && !isOwn(t)))
                .toList();
    }

    private static boolean isOwn(Book.Target target) {
        return target.whose() == Book.Target.Whose.OWNERS;
    }

    private static boolean isRead(Book.Target target) {
        return !target.now().isEmpty();
    }

    private static int lines(Book.Target target) {
        boolean several = target.counting().size() > 1;
        return Math.max(
                1 + Math.max(target.label().length() / (LINE / 3), target.now().length() / (LINE / 4)),
                target.counting().stream()
                        .mapToInt(l -> 1 + (l.window() + (several ? l.label() : "")).length() / (2 * LINE / 5))
                        .sum());
    }

    private static int lines(Book.RecipeLine line) {
        return 1
                + Math.max(
                        line.label().length() / (LINE / 3),
                        Math.max(
                                (line.figure() + line.other()).length() / (LINE / 2),
                                line.how().length() / (LINE / 3)));
    }

    private static int lines(String words) {
        return (words.length() + LINE - 1) / LINE;
    }
}
