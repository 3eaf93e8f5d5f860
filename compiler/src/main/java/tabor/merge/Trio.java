package tabor.merge;

/**
 * One thing in three texts.
 *
 * @param base its index in the base; -1 where it is not there
 * @param ours its index in our text; -1 where it is not there
 * @param theirs its index in their text; -1 where it is not there
 */
record Trio(int base, int ours, int theirs) {
  boolean isInAll() {
    return base >= 0 && ours >= 0 && theirs >= 0;
  }
}
