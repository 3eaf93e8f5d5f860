/**
 * Benchmarks, outside the test run. {@code mvn -q -pl grammar,compiler test-compile}, then {@code
 * java -cp … org.openjdk.jmh.Main NAME} with the test class path.
 */
@org.jspecify.annotations.NullMarked
package tabor.speed;
