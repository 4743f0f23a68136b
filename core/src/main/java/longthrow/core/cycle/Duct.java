package longthrow.core.cycle;

import java.util.List;

/**
 * The way between valve and outside, piece by piece from the valve. The first is a pipe: the port. A plate between two pipes narrows the step between them; at the end it is
 * the mouth. A plenum stands between two pipes, or at the end with its plate to the outside behind it.
 * @param pieces from the valve outwards
 * @param mouth  effective share of the last pipe's area where gas comes in from outside, 1 for a bell-mouth without loss
 */
public record Duct(List<Piece> pieces, double mouth) {
    public Duct {
        pieces = List.copyOf(pieces);
        if (pieces.isEmpty() || !(pieces.get(0) instanceof Tube)) {
            throw new IllegalArgumentException("a duct begins at the valve with a pipe, the port; this one begins with "
                    + (pieces.isEmpty() ? "nothing" : pieces.get(0)));
        }
        for (int i = 1; i < pieces.size(); i++) {
            if (!(pieces.get(i) instanceof Tube) && !(pieces.get(i - 1) instanceof Tube) && !opensOutside(pieces, i)) {
                throw new IllegalArgumentException("in a duct " + pieces.get(i) + " follows " + pieces.get(i - 1)
                        + "; between the two there must be a pipe");
            }
        }
        if (pieces.get(pieces.size() - 1) instanceof Plenum) {
            throw new IllegalArgumentException(
                    "a duct ends in a plenum without a hole; give the plate or pipe behind it");
        }
        if (!(mouth > 0 && mouth <= 1)) {
            throw new IllegalArgumentException(
                    "effective share of the mouth's area is " + mouth + "; it must be above 0, at most 1");
        }
    }

    private static boolean opensOutside(List<Piece> pieces, int i) {
        return i == pieces.size() - 1 && pieces.get(i) instanceof Plate && pieces.get(i - 1) instanceof Plenum;
    }
}
