package longthrow.workshop.store;

import java.util.List;

/**
 * What an archive brought.
 *
 * @param catalogues how many catalogues were new here
 * @param leftOut    what the archive says of itself that it could not take along; empty where it is whole
 */
public record ImportReport(List<ImportedBuild> builds, int catalogues, List<String> leftOut) {
    /** Keeps its own copy. */
    public ImportReport {
        builds = List.copyOf(builds);
        leftOut = List.copyOf(leftOut);
    }

    /** What became of a build of the archive. */
    public enum Outcome {
        /** It was not here before. */
        NEW,
        /** Every revision of it was here already. */
        SAME,
        /** The archive knew the build's later history, which now follows what was here. */
        FURTHER,
        /** Both had gone on separately: what the archive had besides now stands after what was here. */
        DIVERGED
    }

    /**
     * A build of the archive.
     *
     * @param name         as it is called here now
     * @param latestBefore number of the revision that was newest here before; 0 where it is new
     * @param latest       number of the revision that is newest now
     * @param files        how many files were attached to its revisions by this import
     */
    public record ImportedBuild(BuildId id, String name, Outcome outcome, int latestBefore, int latest, int files) {}
}
