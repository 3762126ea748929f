package org.framewright.ui.settings;

import org.framewright.base.Problem;

/**
 * A failure as a person reads it.
 *
 * @param detail for whoever wants to know more; may be empty; never a stack trace
 */
public record Explanation(Problem problem, String detail) {}
