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

  /** Calls the method of {@code cases} that fits. */
  <R> R match(Cases<R> cases);

  /** One method for each kind of heading. */
  interface Cases<R> {
    R pattern(Pattern heading);

    R kit(Kit heading);

    R player(Player heading);

    R groove(Groove heading);

    R step(Step heading);

    R sheet(Sheet heading);

    R chart(Chart heading);

    R broken(Faulty heading);
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

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.pattern(this);
    }
  }

  /** {@code kit NAME [like NAME]}. */
  record Kit(Name name, @Nullable Name like, Span span) implements Heading {
    @Override
    public SectionKind kind() {
      return SectionKind.KIT;
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.kit(this);
    }
  }

  /** {@code player NAME ["Title"]}. */
  record Player(Name name, @Nullable Text title, Span span) implements Heading {
    @Override
    public SectionKind kind() {
      return SectionKind.PLAYER;
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.player(this);
    }
  }

  /** {@code groove NAME ["Title"]}. */
  record Groove(Name name, @Nullable Text title, Span span) implements Heading {
    @Override
    public SectionKind kind() {
      return SectionKind.GROOVE;
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.groove(this);
    }
  }

  /** {@code step [NAME] ["Title"] [from SECTION]}, with a name, a title or both. */
  record Step(@Nullable Name name, @Nullable Text title, @Nullable Name from, Span span)
      implements Heading {
    @Override
    public SectionKind kind() {
      return SectionKind.STEP;
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.step(this);
    }
  }

  /** {@code sheet NAME ["Title"] [from SECTION]}. */
  record Sheet(Name name, @Nullable Text title, @Nullable Name from, Span span) implements Heading {
    @Override
    public SectionKind kind() {
      return SectionKind.SHEET;
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.sheet(this);
    }
  }

  /** {@code chart NAME ["Title"]}. */
  record Chart(Name name, @Nullable Text title, Span span) implements Heading {
    @Override
    public SectionKind kind() {
      return SectionKind.CHART;
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.chart(this);
    }
  }

  /**
   * A heading with a syntax error. It still opens its section.
   *
   * @param kind what it opens
   * @param name the name as far as it could be read
   * @param span where
   */
  record Faulty(SectionKind kind, @Nullable Name name, Span span) implements Heading {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.broken(this);
    }
  }
}
