package longthrow.workshop.store;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/**
 * What an export cannot take along, for it cannot be read as it was saved.
 *
 * @param contents hashes of attached files and catalogues
 * @param why      a sentence for each of both
 */
record LeftOut(Set<Text> texts, Set<String> contents, List<String> why) {
    /** A revision. */
    record Text(BuildId build, int number) {}

    /** Reads everything once, so that the manifest that goes out first says what comes. */
    static LeftOut of(Handle handle, ContentFiles files) {
        Set<Text> texts = new LinkedHashSet<>();
        Set<String> contents = new LinkedHashSet<>();
        List<String> why = new ArrayList<>();
        BuildTable builds = new BuildTable(handle);
        for (BuildEntry build : builds.list()) {
            for (int number = 1; number <= build.latest(); number++) {
                Optional<StoreFault> damage = Revisions.damage(builds, build.id(), number);
                if (damage.isPresent()) {
                    texts.add(new Text(build.id(), number));
                    why.add(damage.get().what());
                }
            }
        }
        for (ContentTable.Content content : new ContentTable(handle).all()) {
            try {
                files.read(content.sha256(), content.sha256());
            } catch (StoreFault fault) {
                contents.add(content.sha256());
                why.add(fault.what());
            }
        }
        return new LeftOut(texts, contents, why);
    }

    /** For the database: a list of builds with numbers. */
    String textsAsJson() {
        return texts.stream()
                .map(text -> "{\"build\":\"" + text.build() + "\",\"number\":" + text.number() + "}")
                .collect(Collectors.joining(",", "[", "]"));
    }

    /** For the database: a list of hashes. */
    String contentsAsJson() {
        return contents.stream().map(sha256 -> "\"" + sha256 + "\"").collect(Collectors.joining(",", "[", "]"));
    }
}
