package tabor.build;

import java.util.Set;
import tabor.groove.Section;

/**
 * What is asked for of the outputs.
 *
 * @param only names of the sections wanted; empty for all
 * @param countIn true for a bar of clicks before grooves and steps
 */
public record BuildOptions(Set<String> only, boolean countIn) {
  /** Everything, with count-in. */
  public static final BuildOptions ALL = new BuildOptions(Set.of(), true);

  /** Copies the set. */
  public BuildOptions {
    only = Set.copyOf(only);
  }

  /** True if this section is wanted. */
  public boolean wants(Section section) {
    return only.isEmpty() || only.contains(section.name());
  }
}
