package longthrow.core.dyno;

import longthrow.core.recording.Recording;

/**
 * A logger's file as it was read.
 * @param recording its rows
 */
public record Logged(Recording recording) {}
