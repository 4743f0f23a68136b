package longthrow.workshop.store;

import java.time.Clock;
import java.util.List;
import java.util.OptionalInt;

/**
 * What a store takes from around it; tests hand in their own.
 *
 * @param schemas      places of the schema's steps on the class path
 * @param newestSchema number of the last step
 * @param mostPages    how many pages the database may grow to; without it, what the disk has
 */
record Setup(StoreLimits limits, Clock clock, List<String> schemas, int newestSchema, OptionalInt mostPages) {
    /** The setup of the program. */
    static Setup of(StoreLimits limits) {
        return new Setup(limits, Clock.systemUTC(), List.of(Schema.PLACE), Schema.NEWEST, OptionalInt.empty());
    }

    Setup with(Clock other) {
        return new Setup(limits, other, schemas, newestSchema, mostPages);
    }

    Setup withMostPages(int most) {
        return new Setup(limits, clock, schemas, newestSchema, OptionalInt.of(most));
    }

    Setup withSchema(String furtherPlace, int newest) {
        return new Setup(limits, clock, List.of(Schema.PLACE, furtherPlace), newest, mostPages);
    }
}
