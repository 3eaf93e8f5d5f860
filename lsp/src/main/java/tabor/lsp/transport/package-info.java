/**
 * Bytes to messages: frames with their headers, found again after one that was broken; JSON to
 * LSP4J's messages, with the right error for what is none. Must not know lessons, files or what a
 * method does.
 */
@org.jspecify.annotations.NullMarked
package tabor.lsp.transport;
