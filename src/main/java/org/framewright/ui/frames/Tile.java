package org.framewright.ui.frames;

import java.util.Optional;
import org.framewright.frames.Frame;
import org.framewright.frames.Place;

/**
 * One frame in the grid.
 *
 * @param place where it belongs; none for a frame that no setup claims
 * @param likely the setup that a frame without a place most probably belongs to
 * @param select whether it is chosen for retouching
 */
record Tile(Frame frame, Optional<Place> place, Optional<String> likely, boolean select) {}
