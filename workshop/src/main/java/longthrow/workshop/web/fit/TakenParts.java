package longthrow.workshop.web.fit;

import java.util.List;
import java.util.Optional;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.Edited;
import longthrow.buildfile.Fault;
import longthrow.buildfile.ReadBuild;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.build.TracedOutline;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.fit.Taking;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/** A candidate's figures put into the text of a build: everything else in the text stays. */
final class TakenParts {
    private TakenParts() {}

    /** The text with the parts of this candidate in it. What was read of parts that go is unknown from now on, and says why. */
    static Edited on(String text, Catalogue catalogue, String title) {
        ReadBuild read = BuildFile.read(text);
        if (read.build().isEmpty()) {
            return new Edited(Optional.empty(), read.faults());
        }
        Build before = read.build().get();
        Optional<Build> after = Taking.of(before, catalogue, title);
        if (after.isEmpty()) {
            return refused("this way is not among those found any more; look at the page again");
        }
        Edited edited = new Edited(Optional.of(text), List.of());
        for (Term term : Term.read()) {
            List<Given> now = after.get().of(term);
            boolean nothingWas = before.of(term).stream().allMatch(Given.NotKnown.class::isInstance);
            if (!now.equals(before.of(term)) && !(now.isEmpty() && nothingWas)) {
                edited = put(edited, term.path(), now.isEmpty() ? gone(title) : BuildFile.entry(now));
            }
        }
        for (Choice choice : Choice.values()) {
            Optional<String> now = after.get().choice(choice);
            if (!now.equals(before.choice(choice))) {
                edited = put(edited, choice.path(), now.map(BuildFile::quoted).orElse("unknown"));
            }
        }
        for (TracedOutline gone : before.outlines()) {
            Optional<String> so = edited.text();
            if (so.isPresent() && after.get().outline(gone.part()).isEmpty()) {
                edited = BuildFile.outline(so.get(), gone.part(), Optional.empty());
            }
        }
        return after.get().taken().equals(before.taken())
                ? edited
                : put(edited, "taken", BuildFile.taken(after.get().taken()));
    }

    private static String gone(String title) {
        return BuildFile.entry(List.of(new Given.NotKnown("what was read is of the engine before " + title)));
    }

    private static Edited put(Edited edited, String path, String entry) {
        return edited.text().isEmpty() ? edited : BuildFile.edit(edited.text().get(), path, entry);
    }

    private static Edited refused(String why) {
        return new Edited(Optional.empty(), List.of(new Fault(0, 0, "", "", why, "", "")));
    }
}
