package org.framewright.ui.board;

/**
 * A setup in an order of the rest.
 *
 * @param title what it is, in the client's words
 * @param changes what is changed before it, in words; empty for nothing
 */
record OrderLine(String code, String title, String changes) {}
