package longthrow.core.pipe;

import longthrow.core.gas.PipeGas;

/**
 * The two gases of a pipe: what has not burned and what has. They mix in every cell in proportion to their mass, and do not react there.
 * @param fresh  air, or air with fuel vapour
 * @param burned cooled, its composition fixed
 */
public record PipeGases(PipeGas fresh, PipeGas burned) {
    /** One gas alone, for what has no burned gas in it. */
    public static PipeGases alone(PipeGas gas) {
        return new PipeGases(gas, gas);
    }

    /** The mixture of which so much is burned gas, 0 to 1. */
    public PipeGas at(double burnedShare) {
        return burned.with(fresh, burnedShare);
    }
}
