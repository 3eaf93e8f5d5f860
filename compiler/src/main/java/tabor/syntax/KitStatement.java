package tabor.syntax;

import org.jspecify.annotations.Nullable;
import tabor.kit.StaffPlace;
import tabor.kit.Surface;
import tabor.source.Span;

/** A line of a kit section. */
public sealed interface KitStatement extends Statement {
  /** Calls the method of {@code cases} that fits. */
  <R> R match(Cases<R> cases);

  /** One method for each kind of line. */
  interface Cases<R> {
    R surface(NewSurface line);

    R letter(Letter line);

    R without(Without line);

    R leftHanded(LeftHanded line);

    R place(Place line);
  }

  /**
   * {@code surface gong letter g key 52 staff a5 head x}; the clauses in any order, each at most
   * once.
   */
  record NewSurface(
      SurfaceRef name,
      @Nullable Ref<Character> letter,
      @Nullable Num key,
      @Nullable Ref<StaffPlace> staff,
      @Nullable Ref<Surface.Head> head,
      Span span)
      implements KitStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.surface(this);
    }
  }

  /** {@code letter q = ride.bell}. */
  record Letter(Ref<Character> letter, SurfaceRef surface, Span span) implements KitStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.letter(this);
    }
  }

  /** {@code without tom2 [plays floor]}. */
  record Without(SurfaceRef surface, @Nullable SurfaceRef plays, Span span)
      implements KitStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.without(this);
    }
  }

  /** {@code left-handed}. */
  record LeftHanded(Span span) implements KitStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.leftHanded(this);
    }
  }

  /**
   * {@code place floor 60 cm 50 degrees right [55 cm high]}: where a surface stands around the
   * player; no side for 0 degrees, straight ahead.
   */
  record Place(
      SurfaceRef surface,
      Num distance,
      Num degrees,
      @Nullable Ref<Side> side,
      @Nullable Num height,
      Span span)
      implements KitStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.place(this);
    }
  }

  /** A side of the player. */
  enum Side {
    LEFT,
    RIGHT
  }
}
