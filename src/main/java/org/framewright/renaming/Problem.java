package org.framewright.renaming;

/** What is wrong, and what would mend it. */
record Problem(String why, String mend) {}
