package tabor.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.source.Span;

/** A line that opens a section. */
public sealed interface Heading extends Statement {
  /** The name; null where it is missing. */
  @Nullable Name name();

  /** What it opens. */
  SectionKind kind();

  /** The title as written; null where there is none. */
  default @Nullable Text title() {
    return null;
  }

  /** The section that this one is said to start from; null where none is named. */
  default @Nullable Name from() {
    return null;
  }

  /** {@code pattern NAME : places}; spaces and bar lines between the places are dropped. */
  record Pattern(Name name, List<Beat.Element> places, Span span) implements Heading {
    /** Copies the list. */
    public Pattern {
      places = List.copyOf(places);
    }

    @Override
    public SectionKind kind() {
      return SectionKind.PATTERN;
    }
  }

  /** {@code kit NAME [like NAME]}. */
  record Kit(Name name, @Nullable Name like, Span span) implements Heading {
    @Override
    public SectionKind kind() {
      return SectionKind.KIT;
    }
  }

  /** {@code player NAME ["Title"]}. */
  record Player(Name name, @Nullable Text title, Span span) implements Heading {
    @Override
    public SectionKind kind() {
      return SectionKind.PLAYER;
    }
  }

  /** {@code groove NAME ["Title"]}. */
  record Groove(Name name, @Nullable Text title, Span span) implements Heading {
    @Override
    public SectionKind kind() {
      return SectionKind.GROOVE;
    }
  }

  /** {@code step [NAME] ["Title"] [from SECTION]}, with a name, a title or both. */
  record Step(@Nullable Name name, @Nullable Text title, @Nullable Name from, Span span)
      implements Heading {
    @Override
    public SectionKind kind() {
      return SectionKind.STEP;
    }
  }

  /** {@code sheet NAME ["Title"] [from SECTION]}. */
  record Sheet(Name name, @Nullable Text title, @Nullable Name from, Span span) implements Heading {
    @Override
    public SectionKind kind() {
      return SectionKind.SHEET;
    }
  }

  /** {@code chart NAME ["Title"]}. */
  record Chart(Name name, @Nullable Text title, Span span) implements Heading {
    @Override
    public SectionKind kind() {
      return SectionKind.CHART;
    }
  }

  /**
   * A heading with a syntax error. It still opens its section.
   *
   * @param kind what it opens
   * @param name the name as far as it could be read
   * @param span where
   */
  record Faulty(SectionKind kind, @Nullable Name name, Span span) implements Heading {}
}
