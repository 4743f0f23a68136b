package longthrow.workshop.web;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import longthrow.buildfile.Edited;
import longthrow.buildfile.Fault;
import longthrow.workshop.store.BuildId;
import longthrow.workshop.store.Revision;
import longthrow.workshop.store.RevisionEntry;
import longthrow.workshop.store.SaveResult;
import longthrow.workshop.store.TextMerge;

/** An edit of a build on its way into the store: kept, faulty, or made on a build that has moved on since. */
public final class Changes {
    private final Workbench bench;

    public Changes(Workbench bench) {
        this.bench = bench;
    }

    /** What an edit makes of a text. */
    @FunctionalInterface
    public interface Edit {
        /** The text with the edit in it, or what is wrong with the edit. */
        Edited on(String text);
    }

    /** What became of it. */
    public sealed interface Outcome {
        /** It is a revision now, or was before where a form came twice. */
        record Kept(RevisionEntry revision) implements Outcome {}

        /** Nothing to change: it says so already. */
        record Same() implements Outcome {}

        /** Not kept; what is wrong. */
        record Faulty(List<String> faults) implements Outcome {
            public Faulty {
                faults = List.copyOf(faults);
            }
        }

        /** Not kept: this came in between. */
        record Outdated(Revision based, Revision latest) implements Outcome {}
    }

    /**
     * Keeps an edit.
     * @param what it does, in a line for the history
     * @param onTop whether an edit made on an older revision may be put on the newest without asking; told both texts
     */
    public Outcome keep(
            BuildId id,
            int based,
            UUID key,
            String what,
            Edit edit,
            java.util.function.BiPredicate<String, String> onTop) {
        Optional<RevisionEntry> known = bench.store().savedBy(key);
        if (known.isPresent()
                && known.get().build().equals(id)
                && isThatEdit(id, known.get().number(), edit)) {
            return new Outcome.Kept(known.get());
        }
        Revision latest = bench.store().latest(id);
        Revision begun = based == latest.number() ? latest : bench.store().at(id, based);
        boolean moved = begun.number() != latest.number();
        Revision under = moved && onTop.test(begun.text(), latest.text()) ? latest : begun;
        Edited edited = edit.on(under.text());
        Optional<String> changed = bench.desk().text(edited);
        if (changed.isEmpty()) {
            return new Outcome.Faulty(
                    edited.faults().stream().map(Changes::words).toList());
        }
        String text = changed.get();
        if (text.equals(latest.text())) {
            return new Outcome.Same();
        }
        // A form that was sent before with something else in it, as from a page seen earlier, is an edit of its own.
        UUID its = known.isPresent() ? UUID.randomUUID() : key;
        SaveResult result = bench.store().save(id, under.number(), text, what, its);
        if (result instanceof SaveResult.Outdated outdated) {
            return new Outcome.Outdated(begun, outdated.latest());
        }
        return new Outcome.Kept(((SaveResult.Saved) result).revision());
    }

    /** Whether the edit makes this revision out of the one before it. */
    private boolean isThatEdit(BuildId id, int revision, Edit edit) {
        return revision == 1
                || edit.on(bench.store().at(id, revision - 1).text())
                        .text()
                        .equals(Optional.of(bench.store().at(id, revision).text()));
    }

    /** A fault for a page: without the line of a text that nobody sees. */
    public static String words(Fault fault) {
        String message = new Fault(0, 0, "", fault.found(), fault.why(), fault.allowed(), fault.mend()).message();
        return fault.path().isEmpty() ? message : fault.path() + ": " + message;
    }

    /**
     * The page that shows what came in between and asks which is to stand.
     * @param mine what this edit says, in words
     * @param back where the other one is seen
     */
    public void showOutdated(
            Context request, Workbench.Open open, String mine, String back, Outcome.Outdated outdated) {
        show(request, open, mine, back, outdated, fields(request), OutdatedPage.Way.ON_TOP, List.of());
    }

    /**
     * As {@link #showOutdated} for a whole text, which sent once more takes away what came in between, unless both go together line by line.
     * @param text  as it was sent, with the ends of lines of the build
     * @param sound whether a text can be read as a build file
     */
    public void showOutdatedText(
            Context request,
            Workbench.Open open,
            String text,
            String back,
            Outcome.Outdated outdated,
            java.util.function.Predicate<String> sound) {
        String latest = outdated.latest().text();
        Optional<String> both =
                TextMerge.of(outdated.based().text(), text, latest).filter(sound);
        List<OutdatedPage.Field> fields = fields(request).stream()
                .map(f -> f.name().equals("text") ? new OutdatedPage.Field("text", both.orElse(f.value())) : f)
                .toList();
        show(
                request,
                open,
                "the whole text as you wrote it",
                back,
                outdated,
                fields,
                both.isPresent() ? OutdatedPage.Way.BOTH : OutdatedPage.Way.OVERWRITE,
                Difference.of(TextMerge.difference(latest, both.orElse(text))));
    }

    private static List<OutdatedPage.Field> fields(Context request) {
        List<OutdatedPage.Field> fields = new ArrayList<>();
        for (Map.Entry<String, List<String>> field : request.formParamMap().entrySet()) {
            if (!field.getKey().equals(Guards.TOKEN_FIELD) && !field.getKey().equals("based")) {
                field.getValue().forEach(value -> fields.add(new OutdatedPage.Field(field.getKey(), value)));
            }
        }
        return fields;
    }

    private void show(
            Context request,
            Workbench.Open open,
            String mine,
            String back,
            Outcome.Outdated outdated,
            List<OutdatedPage.Field> fields,
            OutdatedPage.Way way,
            List<Difference.Line> after) {
        request.status(HttpStatus.CONFLICT);
        bench.view()
                .show(
                        request,
                        "outdated",
                        new OutdatedPage(
                                bench.frame(request, open, "This build has changed meanwhile"),
                                request.path(),
                                back,
                                mine,
                                outdated.based().number(),
                                outdated.latest().number(),
                                Difference.of(bench.store()
                                        .compare(
                                                open.entry().id(),
                                                outdated.based().number(),
                                                outdated.latest().number())),
                                fields,
                                way,
                                after));
    }
}
