package org.framewright.day;

import java.time.Duration;
import java.util.Optional;

/**
 * The battery that the computer runs on.
 *
 * @param percent how full it is, from 0 to 100
 * @param left how long it lasts at the present draw; none where the system does not tell the draw
 */
public record Battery(int percent, Optional<Duration> left) {}
