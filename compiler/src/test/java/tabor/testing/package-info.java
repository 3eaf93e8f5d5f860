/** What the tests of several rooms share: goldens, and random files that are valid. */
@org.jspecify.annotations.NullMarked
package tabor.testing;
