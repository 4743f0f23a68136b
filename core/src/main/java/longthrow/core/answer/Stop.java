package longthrow.core.answer;

/**
 * What must not be done.
 * @param what   must not be done
 * @param why    the reason
 * @param wayRound the cheapest safe way
 * @param refused true when a limit is exceeded or damage was seen; false when data is missing, so that it is not approved
 */
public record Stop(String what, String why, String wayRound, boolean refused) {}
