package org.framewright.frames;

import java.util.Optional;

/** A setup, and a view of it where one is known. */
public record Place(String setup, Optional<String> view) {}
