package longthrow.core.answer;

/**
 * A default or an assumption that the answer rests on.
 * @param where  place in the build file it stands in for
 * @param what   was taken
 * @param source where the figure comes from
 */
public record DefaultUsed(String where, String what, String source) {}
