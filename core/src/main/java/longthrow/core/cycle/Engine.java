package longthrow.core.cycle;

import longthrow.core.quantity.Require;

/**
 * All that is asked of an engine to run its cycle, in numbers. Where each came from, and how sure it is, is told outside.
 * @param space        above the piston
 * @param intake       valve
 * @param exhaust      valve
 * @param intakeDuct   from the intake valve outwards
 * @param exhaustDuct  from the exhaust valve outwards
 * @param walls        of the cylinder
 * @param firing       what burns it
 * @param inertia      of all that turns with the crankshaft [kg m2]; infinite where the crankshaft is to turn evenly
 */
public record Engine(
        CylinderSpace space,
        Passage intake,
        Passage exhaust,
        Duct intakeDuct,
        Duct exhaustDuct,
        Walls walls,
        Firing firing,
        double inertia) {

    /**
     * What burns the charge.
     * @param chamber     its shape
     * @param flameTravel plug to farthest wall, seen along the cylinder [m]
     * @param heatFactor  times the formula for the heat to the walls
     * @param burnFactor  times the rapid burning angle
     * @param developmentFactor times the angle of flame development
     * @param efficiency  share of what its oxygen allows that a charge sets free, 0 to 1
     * @param crevices    room of the crevices over the volume that is swept, 0 to 0.02
     */
    public record Firing(
            Chamber chamber,
            double flameTravel,
            double heatFactor,
            double burnFactor,
            double developmentFactor,
            double efficiency,
            double crevices) {
        public Firing {
            Require.positive("way of the flame [m]", flameTravel);
            Require.notNegative("factor on the heat to the walls", heatFactor);
            Require.positive("factor on the burning angle", burnFactor);
            Require.positive("factor on the development angle", developmentFactor);
            Require.within("share of the charge set free", efficiency, 0, 1);
            Require.within("crevices over the swept volume", crevices, 0, 0.02);
        }
    }

    public Engine {
        if (!(inertia > 0)) {
            throw new IllegalArgumentException("inertia of flywheel and crankshaft is " + inertia
                    + " kg m2; it must be above 0, or infinite for a crankshaft that turns evenly");
        }
    }
}
