package longthrow.core.power;

import java.util.Optional;
import longthrow.core.cycle.ValveFlow;

/** What tables tell of the valves in place of what is usual: flow through their ports, and how they are lifted. Empty where none does. */
record ValveTables(
        Optional<ValveFlow> intakeFlow,
        Optional<ValveFlow> exhaustFlow,
        Optional<TableLift> intakeLift,
        Optional<TableLift> exhaustLift) {
    static final ValveTables NONE =
            new ValveTables(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    Optional<ValveFlow> flow(boolean intake) {
        return intake ? intakeFlow : exhaustFlow;
    }

    Optional<TableLift> lift(boolean intake) {
        return intake ? intakeLift : exhaustLift;
    }
}
