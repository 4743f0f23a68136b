package longthrow.workshop.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.assertj.core.api.ThrowableAssert.ThrowingCallable;

/** What a fault has to be, whatever it is about. */
final class Faults {
    private Faults() {}

    /** The fault of a call: of this kind, saying what, where and how to mend it. */
    static StoreFault of(StoreFault.Kind kind, ThrowingCallable call) {
        StoreFault fault = catchThrowableOfType(StoreFault.class, call);
        assertThat(fault).as("a fault of kind " + kind).isNotNull();
        assertThat(fault.kind()).as(fault.getMessage()).isEqualTo(kind);
        assertThat(fault.what()).isNotBlank();
        assertThat(fault.where()).isNotBlank();
        assertThat(fault.mend()).isNotBlank();
        assertThat(fault.getMessage()).contains(fault.what(), fault.where(), fault.mend());
        return fault;
    }
}
