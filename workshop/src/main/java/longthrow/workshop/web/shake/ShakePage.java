package longthrow.workshop.web.shake;

import java.util.Optional;
import java.util.OptionalDouble;
import longthrow.workshop.web.Frame;

/**
 * Where the shake goes.
 * @param view   what the address asks to be shown, to be asked for again
 * @param answer empty while it is not worked out; then the page asks for it afterwards
 */
public record ShakePage(Frame frame, View view, Optional<ShakeAnswer> answer) {
    /**
     * What is looked at.
     * @param speed   of the crank that was chosen [rad/s]; empty for that of the build
     * @param trouble why another was not taken; empty for none
     */
    public record View(OptionalDouble speed, String trouble) {
        static final View OF_THE_BUILD = new View(OptionalDouble.empty(), "");
    }
}
