package org.framewright.ui.settings;

/**
 * A failure in plain words.
 *
 * @param what went wrong, and where
 * @param remedy its remedy; may be empty
 * @param detail for whoever wants to know more; may be empty; never a stack trace
 */
public record Trouble(String what, String remedy, String detail) {}
