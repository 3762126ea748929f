package org.framewright.ui.settings;

import java.util.Optional;
import org.framewright.base.Problem;

/**
 * A setting as it is kept.
 *
 * @param value what holds
 * @param problem why it is not what the file says; empty where it is
 */
public record Kept<T>(T value, Optional<Problem> problem) {}
