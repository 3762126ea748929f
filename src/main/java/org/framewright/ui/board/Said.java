package org.framewright.ui.board;

/**
 * A comment as the board shows it.
 *
 * @param text what was said
 * @param who who said it, and when
 * @param of the frame that it is of; empty where it is of the setup
 * @param isNew whether nobody at this computer said yet that they have seen it
 */
record Said(String text, String who, String of, boolean isNew) {}
