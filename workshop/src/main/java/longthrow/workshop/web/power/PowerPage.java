package longthrow.workshop.web.power;

import java.util.Optional;
import longthrow.core.quantity.Units;
import longthrow.workshop.web.ChosenSpeed;
import longthrow.workshop.web.Frame;

/**
 * What torque over what speeds.
 * @param view   what the address asks to be shown, to be asked for again
 * @param own    at the speed that was chosen; empty while it is not worked out, and where none is
 * @param answer empty while it is not worked out; then the page asks for it afterwards
 */
public record PowerPage(Frame frame, ChosenSpeed view, Optional<PowerAnswer> own, Optional<PowerAnswer> answer) {
    /** As it stands in the field, with its unit. */
    public String shown() {
        return view.speed().isEmpty() ? "" : view.bare() + " " + Units.RPM.symbol();
    }
}
