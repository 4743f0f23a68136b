package longthrow.core.answer;

/**
 * Why combinations were counted out.
 * @param reason  the first thing that keeps them apart
 * @param count   how many combinations
 * @param example one of them by its codes; empty when none is shown
 * @param why     which limit, by how much
 * @param cure    the least change that would cure it; empty when none is known
 */
public record Rejection(String reason, long count, String example, String why, String cure) {}
