package longthrow.core.fit;

import java.util.ArrayList;
import java.util.Optional;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.measure.Appraisal;
import longthrow.core.measurement.NotConvergedException;

/**
 * The build with the parts of one candidate in it: what the catalogue says of them stands where the old parts were read, sizes that are still
 * to be machined stand as they will be, and what is to be bought and done is kept beside them.
 */
public final class Taking {
    private Taking() {}

    /**
     * The build with what {@link Fit#of} calls by this title among its candidates; only its entries, its words and what is taken are other.
     * @param title of the candidate
     * @return empty when no candidate has this title: build or catalogue are not those it was found with
     */
    public static Optional<Build> of(Build build, Catalogue catalogue, String title) {
        try {
            Build asked = Place.ratioFor(build, new ArrayList<>());
            Catalogue priced = Money.inOneCurrency(asked, catalogue, new ArrayList<>());
            Appraisal own = Appraisal.sound(asked);
            Assembly assembly = new Assembly(asked, own, priced);
            Shortlist shortlist = new Shortlist(assembly);
            return shortlist.best().stream()
                    .filter(found -> found.title().equals(title))
                    .findFirst()
                    .map(found -> Fitted.taken(
                            asked,
                            own,
                            found,
                            new Followers(assembly, priced, shortlist.appraise(found), found).pieces()))
                    .map(with -> build.withGiven(with.given())
                            .withChoices(with.choices())
                            .withTaken(with.taken()));
        } catch (NotConvergedException e) {
            return Optional.empty();
        }
    }
}
