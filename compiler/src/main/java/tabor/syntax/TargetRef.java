package tabor.syntax;

import java.util.Locale;
import tabor.source.Span;

/** Whose strokes an edit means: one item of TARGET. */
public sealed interface TargetRef {
  /** Where it is written. */
  Span span();

  /** As written, with single spaces. */
  String words();

  /** Calls the method of {@code cases} that fits. */
  <R> R match(Cases<R> cases);

  /** One method for each kind of target. */
  interface Cases<R> {
    R limb(LimbRef limb);

    R group(Group group);

    R surface(SurfaceRef surface);
  }

  /** The words for several limbs. */
  enum Group {
    HANDS,
    FEET,
    ALL;

    /** As written. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** A limb. */
  record OfLimb(LimbRef limb) implements TargetRef {
    @Override
    public Span span() {
      return limb.span();
    }

    @Override
    public String words() {
      return limb.words();
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.limb(limb);
    }
  }

  /** {@code hands}, {@code feet} or {@code all}. */
  record OfGroup(Group group, Span span) implements TargetRef {
    @Override
    public String words() {
      return group.word();
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.group(group);
    }
  }

  /** A surface, or a piece with all its zones. */
  record OfSurface(SurfaceRef surface) implements TargetRef {
    @Override
    public Span span() {
      return surface.span();
    }

    @Override
    public String words() {
      return surface.name();
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.surface(surface);
    }
  }
}
