/** The one place that names the order: text to passages to trees to sections to a lesson. */
@org.jspecify.annotations.NullMarked
package tabor.compile;
