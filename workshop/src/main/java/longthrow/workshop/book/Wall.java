package longthrow.workshop.book;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.book.Book;

/**
 * The page for the wall, in two columns: what it is set to stands on the left, and goes on under the rest on the right where that is shorter.
 * @param left    gaps to set
 * @param right   those that go on
 * @param notRead names of those of which nothing is read, where there is no room for a row each; empty for none
 */
public record Wall(List<Book.Target> left, List<Book.Target> right, String notRead) {
    /** Characters to a line of a column, at the size that the two are compared at; layout. */
    private static final int LINE = 62;

    /** Lines that a heading with its rule and its head of a table takes; layout. */
    private static final int HEADING = 3;

    public Wall {
        left = List.copyOf(left);
        right = List.copyOf(right);
    }

    /** Every gap on the left, in its own row: a screen has room. */
    public static Wall whole(Book book) {
        return new Wall(toSet(book), List.of(), "");
    }

    /**
     * For one sheet of paper.
     * @param brief gaps that are not read in one line
     */
    static Wall onPaper(Book book, boolean brief) {
        List<Book.Target> all = toSet(book);
        List<Book.Target> rows =
                all.stream().filter(t -> !brief || isRead(t) || isOwn(t)).toList();
        String notRead = all.stream()
                .filter(t -> brief && !isRead(t) && !isOwn(t))
                .map(Book.Target::label)
                .collect(Collectors.joining(", "));
        int right = beside(book) + lines(notRead);
        int left = HEADING + rows.stream().mapToInt(Wall::lines).sum();
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
        return new Wall(rows.subList(0, split), rows.subList(split, rows.size()), notRead);
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
