package longthrow.core.cycle;

/** Part of the way between valve and outside. */
public sealed interface Piece permits Tube, Plate, Plenum {}
