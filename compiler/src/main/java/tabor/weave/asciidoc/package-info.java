/**
 * Notation in AsciiDoc documents: an extension of AsciidoctorJ, which need not be there for
 * anything else. In: a block and its attributes; out: a node of the document's tree. Must not know
 * the disk: files are read through Asciidoctor.
 */
@org.jspecify.annotations.NullMarked
package tabor.weave.asciidoc;
