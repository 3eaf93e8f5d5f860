/**
 * What is there for the sake of a quick start and nothing else: each device's worth stands in
 * docs/performance.md. Must not know lessons, files or what a method does.
 */
@org.jspecify.annotations.NullMarked
package tabor.lsp.startup;
