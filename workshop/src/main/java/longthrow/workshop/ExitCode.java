package longthrow.workshop;

import longthrow.core.answer.Answer;
import longthrow.core.answer.Approval;

/** How a call ended, for the shell. A command returns one of these from its {@code call()}. */
enum ExitCode {
    /** The question was answered. */
    ANSWERED(0),
    /** The question was answered, and the answer holds at least one stop or does not approve the speed: do not go on as things are. */
    ANSWERED_WITH_STOP(1),
    /**
     * The arguments or the build file could not be taken as they are, or the answer found no room where it was to be written, as on a full disk; what is
     * wrong has been said.
     */
    INPUT_REFUSED(2),
    /** Longthrow itself failed. */
    INTERNAL_FAULT(3);

    private final int code;

    ExitCode(int code) {
        this.code = code;
    }

    /** How a call that ends with this answer ended. */
    static ExitCode of(Answer answer) {
        boolean isApproved = answer.ladder()
                .map(l -> l.approval().verdict() == Approval.State.APPROVED)
                .orElse(true);
        return answer.stops().isEmpty() && isApproved ? ANSWERED : ANSWERED_WITH_STOP;
    }

    int code() {
        return code;
    }
}
