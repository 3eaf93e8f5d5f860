package tabor.resolve;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.kit.Kit;
import tabor.syntax.Beat;

/**
 * What a section may see of its file. Whoever asks is remembered as depending on the answer, so
 * equal questions must get equal answers until the file changes.
 */
public interface Scope {
  /** Kinds of names; each kind has names of its own. */
  enum Kind {
    PATTERN,
    KIT,
    SECTION
  }

  /**
   * True if a chart of this file has the name; charts are resolved after all that they could play.
   */
  boolean isChart(String name);

  /** What sections start from. */
  SectionDefaults defaults();

  /** What the person asks for over what the file says. */
  Options options();

  /** The kit of this name, built-in kits included; null if there is none. */
  @Nullable Kit kit(String name);

  /**
   * The places of a pattern of the file; null if there is none. Built-in ones are not asked for.
   */
  @Nullable List<Beat.Element> pattern(String name);

  /** The section of this name as far as it may be named here; null if there is none. */
  @Nullable Resolved section(String name);

  /** The groove or step written last before this section; null if there is none. */
  @Nullable Resolved previous();

  /** A name of this kind that looks like {@code name}. */
  Optional<String> near(Kind kind, String name);
}
