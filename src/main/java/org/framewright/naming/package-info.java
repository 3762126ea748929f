/**
 * The naming language: a convention is read, names are built from values and read back, and the
 * convention is proved sound before anybody uses it.
 *
 * <p>The way through: {@link org.framewright.naming.Convention#parse} reads the YAML into fields
 * and kinds of names, and tells every fault at once with its line and column. Each field in each of
 * its shapes is a finite automaton over its legal texts; each kind is the chain of its parts,
 * literal text, fields and optional runs, compiled into one automaton whose states remember the
 * part that they lie in. {@link org.framewright.naming.Convention#build} turns people's text into
 * legal text in stated {@link org.framewright.naming.Step steps} and chains it; {@link
 * org.framewright.naming.Convention#read} runs a name through the automata and returns every way to
 * read it; {@link org.framewright.naming.Convention#check} searches products of the automata for
 * faults and shows each one with a shortest {@link org.framewright.naming.Witness}. The package
 * knows nothing of jobs, files or screens.
 */
package org.framewright.naming;
