package longthrow.workshop.web.clear;

import java.util.Optional;
import longthrow.workshop.web.Frame;

/**
 * Whether anything touches.
 * @param view   what the address asks to be shown, to be asked for again
 * @param answer empty while it is not worked out; then the page asks for it afterwards
 */
public record ClearPage(Frame frame, View view, Optional<ClearAnswer> answer) {
    /**
     * What is looked at.
     * @param angle of the crank from firing top dead centre, two turns [degrees]
     * @param pair  key of the pair shown; empty for the first
     */
    public record View(int angle, String pair) {}
}
