/** Programs that look for texts that break Tabor, and texts that ask for more than they look. */
@org.jspecify.annotations.NullMarked
package tabor.fuzz;
