package org.framewright.naming;

import java.util.List;

/**
 * A folder inside a job as the convention declares it.
 *
 * @param pattern its path as written
 */
record DeclaredFolder(String role, String pattern, List<Part> parts, Declared.Place place) {}
