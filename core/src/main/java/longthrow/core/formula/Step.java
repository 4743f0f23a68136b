package longthrow.core.formula;

/**
 * One elementary step of a recorded formula. Values are numbered: first the inputs in the order of
 * {@link Formula#inputs()}, then one value per step.
 *
 * @param operation what is done
 * @param left      number of the value read first, or -1 if the operation reads none
 * @param right     number of the value read second, or -1 if the operation reads fewer than two
 * @param constant  the constant of the operation, 0 where it has none
 */
public record Step(Operation operation, int left, int right, double constant) {}
