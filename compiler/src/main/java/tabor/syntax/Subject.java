package tabor.syntax;

import tabor.source.Span;

/** What stands before the colon of a lane, or before {@code play}. */
public sealed interface Subject {
  /** Where it is written. */
  default Span span() {
    return target().span();
  }

  /** As written, with single spaces. */
  default String words() {
    return target().words();
  }

  /** The strokes that a lane of this subject replaces in a step. */
  TargetRef target();

  /** Calls the method of {@code cases} that fits. */
  <R> R match(Cases<R> cases);

  /** One method for each kind of subject. */
  interface Cases<R> {
    R limb(LimbRef limb);

    R hands(Span span);

    R feet(Span span);

    R line(Span span);

    R surface(SurfaceRef surface);
  }

  /** A limb; the letters are surfaces. */
  record OfLimb(LimbRef limb) implements Subject {
    @Override
    public TargetRef target() {
      return new TargetRef.OfLimb(limb);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.limb(limb);
    }
  }

  /** {@code hands}; the letters are limbs. */
  record Hands(Span span) implements Subject {
    @Override
    public TargetRef target() {
      return new TargetRef.OfGroup(TargetRef.Group.HANDS, span);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.hands(span);
    }
  }

  /** {@code feet}; the letters are limbs. */
  record Feet(Span span) implements Subject {
    @Override
    public TargetRef target() {
      return new TargetRef.OfGroup(TargetRef.Group.FEET, span);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.feet(span);
    }
  }

  /** {@code line}: one stroke after another over the whole body; the letters are limbs. */
  record Line(Span span) implements Subject {
    @Override
    public String words() {
      return "line";
    }

    @Override
    public TargetRef target() {
      return new TargetRef.OfGroup(TargetRef.Group.ALL, span);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.line(span);
    }
  }

  /** A surface; the letters are limbs. */
  record OfSurface(SurfaceRef surface) implements Subject {
    @Override
    public TargetRef target() {
      return new TargetRef.OfSurface(surface);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.surface(surface);
    }
  }
}
