package longthrow.workshop.book;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.book.Book;

/**
 * The page for the wall, in two columns: what is chosen and what it is set to stand on the left, and go on under the rest on the right where that is
 * shorter.
 * @param left    gaps to set
 * @param right   those that go on
 * @param notRead how many more there are of which nothing is read
 */
public record Wall(List<Book.Target> left, List<Book.Target> right, int notRead) {
    /** Characters to a line of a column, at the size that the two are compared at; layout. */
    private static final int LINE = 62;

    /** Lines that a heading with its rule and its head of a table takes; layout. */
    private static final int HEADING = 3;

    public Wall {
        left = List.copyOf(left);
        right = List.copyOf(right);
    }

    /** All on the left: a screen goes on. */
    public static Wall whole(Book book) {
        return new Wall(rows(book), List.of(), notRead(book));
    }

    /** For one sheet of paper. */
    static Wall onPaper(Book book) {
        List<Book.Target> rows = rows(book);
        int right = beside(book);
        int left = HEADING
                + rows.stream().mapToInt(Wall::lines).sum()
                + (book.chosen().isEmpty() ? 0 : HEADING)
                + book.chosen().stream().mapToInt(Wall::lines).sum();
        int split = rows.size();
        while (split > 0) {
            int moved = lines(rows.get(split - 1));
            int head = split == rows.size() ? HEADING : 0;
            if (right + moved + head >= left) {
                break;
            }
            right += moved + head;
            left -= moved;
            split--;
        }
        return new Wall(rows.subList(0, split), rows.subList(split, rows.size()), notRead(book));
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

    /** Lines of what stands on the right anyway. */
    private static int beside(Book book) {
        return 4 * HEADING
                + Math.max(1, book.headline().size())
                + lines(book.torques().stream()
                        .map(t -> t.joint() + ": " + t.torque() + ". ")
                        .collect(Collectors.joining()))
                + book.again().stream()
                        .mapToInt(a -> lines(a.what() + ": " + a.why()))
                        .sum()
                + book.steps().stream().mapToInt(s -> lines(s.step())).sum();
    }

    private static int lines(Book.Target target) {
        boolean several = target.counting().size() > 1;
        return Math.max(
                1 + target.label().length() / (LINE / 3),
                target.counting().stream()
                        .mapToInt(l -> 1 + (l.window() + (several ? l.label() : "")).length() / (LINE / 2))
                        .sum());
    }

    private static int lines(String words) {
        return (words.length() + LINE - 1) / LINE;
    }
}
