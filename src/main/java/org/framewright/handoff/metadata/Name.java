package org.framewright.handoff.metadata;

/** The name of a property or of a field of a struct. */
record Name(Namespace namespace, String local) {}
