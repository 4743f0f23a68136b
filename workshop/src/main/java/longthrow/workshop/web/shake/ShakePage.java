package longthrow.workshop.web.shake;

import java.util.Optional;
import longthrow.workshop.web.ChosenSpeed;
import longthrow.workshop.web.Frame;

/**
 * Where the shake goes.
 * @param view   what the address asks to be shown, to be asked for again
 * @param answer empty while it is not worked out; then the page asks for it afterwards
 */
public record ShakePage(Frame frame, ChosenSpeed view, Optional<ShakeAnswer> answer) {}
