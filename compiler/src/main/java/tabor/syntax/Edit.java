package tabor.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Level;
import tabor.groove.Loudness;
import tabor.source.Span;

/** A line that changes strokes written above it. */
public sealed interface Edit extends Statement {
  /** The places after {@code at}, where a line of this kind may choose among several; else null. */
  default At.@Nullable Places places() {
    return null;
  }

  /** A line that may choose among the places after its {@code at}. */
  sealed interface Placed extends Edit {
    /** Where. */
    At at();

    @Override
    default At.@Nullable Places places() {
      return at().places();
    }
  }

  /** Calls the method of {@code cases} that fits. */
  <R> R match(Cases<R> cases);

  /** One method for each kind of line. */
  interface Cases<R> {
    R plays(Plays edit);

    R split(Split edit);

    R add(Add edit);

    R change(Change edit);

    R follows(Follows edit);

    R move(Move edit);

    R shift(Shift edit);

    R swapHands(SwapHands edit);

    R only(Only edit);

    R take(Take edit);

    R fill(Fill edit);

    R dynamic(Dynamic edit);

    R hairpin(Hairpin edit);
  }

  /**
   * {@code LIMB plays SURFACE [ghosted|plain|accented] AT}; {@code who} is a limb, {@code hands} or
   * {@code feet}.
   */
  record Plays(TargetRef who, SurfaceRef surface, @Nullable Ref<Level> level, At at, Span span)
      implements Placed {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.plays(this);
    }
  }

  /** {@code split LIMB [LEVEL] between S and S [and S…] AT}; two surfaces or more. */
  record Split(
      LimbRef limb, @Nullable Ref<Level> level, List<SurfaceRef> surfaces, At at, Span span)
      implements Placed {
    /** Copies the list. */
    public Split {
      surfaces = List.copyOf(surfaces);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.split(this);
    }
  }

  /**
   * {@code add SURFACE [with LIMB] [ghosted|accented] at PLACES [in BARS]} or {@code add LIMB …}:
   * {@code what} is a surface or a limb, {@code with} null where no limb is named; the places hold
   * no ranges.
   */
  record Add(
      TargetRef what,
      @Nullable LimbRef with,
      @Nullable Ref<Level> level,
      At.Places places,
      At.@Nullable Bars bars,
      Span span)
      implements Edit {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.add(this);
    }
  }

  /** {@code VERB TARGET AT}. */
  record Change(Verb verb, List<TargetRef> targets, At at, Span span) implements Placed {
    /** Copies the list. */
    public Change {
      targets = List.copyOf(targets);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.change(this);
    }
  }

  /** {@code SURFACE follows LIMB AT}. */
  record Follows(SurfaceRef surface, LimbRef limb, At at, Span span) implements Placed {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.follows(this);
    }
  }

  /** {@code move TARGET from COUNT to COUNT [in BARS]}. */
  record Move(
      List<TargetRef> targets, CountRef from, CountRef to, At.@Nullable Bars bars, Span span)
      implements Edit {
    /** Copies the list. */
    public Move {
      targets = List.copyOf(targets);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.move(this);
    }
  }

  /** {@code shift TARGET later|earlier by N VALUE}. */
  record Shift(List<TargetRef> targets, boolean later, Num by, Distance unit, Span span)
      implements Edit {
    /** Copies the list. */
    public Shift {
      targets = List.copyOf(targets);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.shift(this);
    }
  }

  /** {@code swap hands}. */
  record SwapHands(Span span) implements Edit {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.swapHands(this);
    }
  }

  /** {@code only TARGET}. */
  record Only(List<TargetRef> targets, Span span) implements Edit {
    /** Copies the list. */
    public Only {
      targets = List.copyOf(targets);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.only(this);
    }
  }

  /** {@code take TARGET from SECTION AT}. */
  record Take(List<TargetRef> targets, Name section, At at, Span span) implements Placed {
    /** Copies the list. */
    public Take {
      targets = List.copyOf(targets);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.take(this);
    }
  }

  /** {@code fill SECTION in BARS [from COUNT]}. */
  record Fill(Name section, At.Bars bars, @Nullable CountRef from, Span span) implements Edit {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.fill(this);
    }
  }

  /** {@code dynamic mf [at COUNT] [in bar N]}. */
  record Dynamic(Ref<Loudness> loudness, @Nullable CountRef at, @Nullable Num bar, Span span)
      implements Edit {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.dynamic(this);
    }
  }

  /** {@code crescendo|diminuendo to D from COUNT [in bar N] to COUNT [in bar N]}. */
  record Hairpin(
      boolean grows,
      Ref<Loudness> loudness,
      CountRef from,
      @Nullable Num fromBar,
      CountRef to,
      @Nullable Num toBar,
      Span span)
      implements Edit {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.hairpin(this);
    }
  }
}
