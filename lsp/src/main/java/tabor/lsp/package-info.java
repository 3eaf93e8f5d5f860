/** The language server: LSP4J at one edge, the compiler's own tree and model behind it. */
@org.jspecify.annotations.NullMarked
package tabor.lsp;
