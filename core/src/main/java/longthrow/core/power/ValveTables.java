package longthrow.core.power;

import java.util.Optional;
import longthrow.core.cycle.ValveFlow;

/** What tables tell of the valves in place of what is usual: flow through their ports, and how they are lifted. Empty where none does. */
record ValveTables(
        Optional<ValveFlow> intakeFlow,
        Optional<ValveFlow> exhaustFlow,
        Optional<ReadLift> intakeLift,
        Optional<ReadLift> exhaustLift) {
    static final ValveTables NONE =
            new ValveTables(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    Optional<ValveFlow> flow(boolean intake) {
        return intake ? intakeFlow : exhaustFlow;
    }

    Optional<ReadLift> lift(boolean intake) {
        return intake ? intakeLift : exhaustLift;
    }
}
