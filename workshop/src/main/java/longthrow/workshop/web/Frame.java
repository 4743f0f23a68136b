package longthrow.workshop.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What every page has around its own content.
 * @param title    of the page
 * @param build    name of the build; empty on pages of no build
 * @param base     address of the build; empty on pages of no build
 * @param revision that the page shows; 0 on pages of no build
 * @param rail     the ten questions; empty on pages of no build
 * @param ways     what stands in the way
 * @param token    that changes must carry
 * @param notice   what the last change did, or why it was not made; empty for nothing
 * @param invented whether the build says that it is made up
 * @param damage   what is broken in the data, on top of every page; empty for nothing
 */
public record Frame(
        String title,
        String build,
        String base,
        int revision,
        List<Rail.Entry> rail,
        List<Way> ways,
        String token,
        String notice,
        boolean invented,
        String damage) {
    public Frame {
        rail = List.copyOf(rail);
        ways = List.copyOf(ways);
    }

    /** A page of no build. */
    public static Frame plain(String title, String token, String notice, String damage) {
        return new Frame(title, "", "", 0, List.of(), List.of(), token, notice, false, damage);
    }

    /**
     * One thing in the way, with the field that mends it.
     * @param kind    stop, doubt or unknown, for people
     * @param text    what it is
     * @param mend    what to do; may be empty
     * @param address of the field; empty when there is none
     * @param others  further places that may mend it
     * @param refused whether it is a stop that refuses
     */
    public record Way(String kind, String text, String mend, String address, List<Place> others, boolean refused) {
        public Way {
            others = List.copyOf(others);
        }
    }

    /** A place to go to. */
    public record Place(String label, String address) {}

    /** Where rail and list as they are by now are asked for; null where nothing of them is being worked out. */
    public @Nullable String asks() {
        boolean isComing = rail.stream().anyMatch(entry -> entry.state() == Rail.State.COMING);
        String here = rail.stream()
                .filter(Rail.Entry::here)
                .map(entry -> entry.question().page())
                .findFirst()
                .orElse("");
        return isComing ? base + Ahead.PATH + "?revision=" + revision + "&here=" + here : null;
    }

    /** Whether the page is of a build. */
    public boolean isOfABuild() {
        return !base.isEmpty();
    }
}
