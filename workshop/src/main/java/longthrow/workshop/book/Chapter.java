package longthrow.workshop.book;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import longthrow.core.book.Book;

/** Chapters of the full sheet, in its order. */
public enum Chapter {
    CHOSEN("Chosen, and to be machined"),
    RECIPE("Recipe"),
    COST("Cost"),
    TICKETS("Tickets for the machine shop"),
    BEFORE("Measure these again before you buy"),
    ARRIVAL("Measure these when they are there"),
    DRAWINGS("Drawings"),
    READINGS("Readings, with instrument and doubt"),
    PARTS("Parts: what stands, and why"),
    WAYS("Parts that go together"),
    REFUSED("Parts refused, and why"),
    TARGETS("Assembly targets"),
    TORQUES("Torques"),
    TOUCHES("What touches"),
    LETS_GO("What lets go first"),
    SHAKES("Where the shake goes"),
    PROVED("What was proved on the dynamometer"),
    STEPS("First start and running in"),
    CAUTIONS("Cautions"),
    NOTICED("What was noticed"),
    UNKNOWN("Unknown"),
    DEFAULTS("Defaults used"),
    LEFT_OUT("Left out for sharing"),
    SIGNATURES("Signatures");

    /** Heights that the style sheet knows for what is not laid out yet, each twice the one before [lines of a phone]. */
    private static final int LEAST_TALL = 8;

    private static final int MOST_TALL = 2048;

    private final String label;

    Chapter(String label) {
        this.label = label;
    }

    /** Its heading. */
    public String label() {
        return label;
    }

    /** Names its place on the page. */
    public String key() {
        return "chapter-" + name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Those that a sheet has. */
    static List<Chapter> of(Sheet sheet) {
        Book book = sheet.book();
        List<Chapter> chapters = new ArrayList<>(Arrays.asList(values()));
        chapters.removeIf(chapter -> switch (chapter) {
            case CHOSEN -> book.chosen().isEmpty();
            case ARRIVAL -> book.onArrival().isEmpty();
            case DRAWINGS -> sheet.pictures().isEmpty();
            case REFUSED -> !book.searched();
            case LEFT_OUT -> !sheet.shared();
            case RECIPE,
                    COST,
                    TICKETS,
                    BEFORE,
                    READINGS,
                    PARTS,
                    WAYS,
                    TARGETS,
                    TORQUES,
                    TOUCHES,
                    LETS_GO,
                    SHAKES,
                    PROVED,
                    STEPS,
                    CAUTIONS,
                    NOTICED,
                    UNKNOWN,
                    DEFAULTS,
                    SIGNATURES -> false;
        });
        return List.copyOf(chapters);
    }

    /** Class of the style sheet for a chapter of so many lines on a phone, for as long as it is not laid out. */
    String tall(Sheet sheet) {
        int lines = lines(sheet);
        int tall = LEAST_TALL;
        while (tall < MOST_TALL && tall * Math.sqrt(2) < lines) {
            tall *= 2;
        }
        return "tall-" + tall;
    }

    /** About, for a screen of 360 pixels: so many for each row. */
    private int lines(Sheet sheet) {
        Book book = sheet.book();
        return 4
                + switch (this) {
                    case CHOSEN -> 3 * book.chosen().size();
                    case RECIPE -> 5 * book.recipe().size();
                    case COST ->
                        2 * book.cost().lines().size()
                                + 2 * book.cost().unpriced().size();
                    case TICKETS -> 26 * book.tickets().size();
                    case BEFORE -> 6 * book.before().size();
                    case ARRIVAL -> 6 * book.onArrival().size();
                    case DRAWINGS -> 20 * sheet.pictures().size();
                    case READINGS ->
                        9 * book.readings().size() + 4 * book.unread().size();
                    case PARTS -> 4 * book.parts().size();
                    case WAYS -> 30 * book.ways().size();
                    case REFUSED -> 5 * book.refused().size();
                    case TARGETS -> 14 * book.targets().size();
                    case TORQUES -> 8 * book.torques().size();
                    case TOUCHES ->
                        book.touching()
                                .map(c -> 6 * c.unknown().size()
                                        + 25 * c.told().size()
                                        + 20 * sheet.touching().size()
                                        + 25 * sheet.cuts().size())
                                .orElse(0);
                    case LETS_GO ->
                        book.limits()
                                .map(c ->
                                        12 * c.limits().size() + 5 * c.unlocks().size())
                                .orElse(0);
                    case SHAKES ->
                        book.shaking()
                                .map(c -> (sheet.path().isPresent() ? 70 : 15)
                                        + 2 * c.figures().size()
                                        + 4 * c.trade().size())
                                .orElse(0);
                    case PROVED ->
                        book.proved().orElse(List.of()).stream()
                                .mapToInt(c -> 40
                                        + 30 * c.changes().size()
                                        + 6 * c.sessions().size()
                                        + 12 * c.highest().size())
                                .sum();
                    case STEPS -> 6 * book.steps().size();
                    case CAUTIONS -> 5 * book.cautions().size();
                    case NOTICED -> 9 * book.findings().size();
                    case UNKNOWN -> 4 * book.unknowns().size();
                    case DEFAULTS -> 9 * book.defaults().size();
                    case LEFT_OUT ->
                        2 * book.leftOut().size() + 3 * sheet.lookAgain().size();
                    case SIGNATURES -> 3 * book.signatures().size();
                };
    }
}
