/**
 * The naming language: a convention is read, names are built from values and read back, and the
 * convention is proved sound before anybody uses it.
 *
 * <p>The way through: {@link org.framewright.naming.Convention#parse} reads the YAML into a tree
 * that knows where each piece stands, the tree into fields and kinds of names, and reports every
 * fault at once with its line and column; what could take unbounded time or memory is refused
 * there. Each field in each of its shapes is a finite automaton over its legal texts; each kind is
 * the chain of its parts, literal text, fields and optional runs, compiled into one automaton whose
 * states remember the part that they lie in. {@link org.framewright.naming.Convention#build} turns
 * people's text into legal text in stated {@link org.framewright.naming.Step steps} and chains it;
 * {@link org.framewright.naming.Convention#read} runs a name through the automata and returns every
 * way to read it; {@link org.framewright.naming.Convention#check} searches products of the automata
 * for faults and shows each one with a shortest {@link org.framewright.naming.Witness}. {@link
 * org.framewright.naming.Proposal} goes the other way: from names in use to a convention that reads
 * them, with the pieces of each name and what a person has to say of them. What keys there are
 * stands in {@code Language}, from which the JSON Schema and the tables of the reference are
 * generated. The package knows nothing of jobs and screens; the names that mean something to the
 * other rooms, such as the kind {@code frame} and the field {@code setup}, stand in {@link
 * org.framewright.naming.Reserved}.
 */
package org.framewright.naming;
