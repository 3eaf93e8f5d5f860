package tabor.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.source.Span;

/** A line that changes strokes written above it. Targets are limbs, surfaces, pieces or groups. */
public sealed interface Edit extends Statement {
  /** Calls the method of {@code cases} that fits. */
  <R> R match(Cases<R> cases);

  /** One method for each kind of edit. */
  interface Cases<R> {
    R plays(Plays edit);

    R split(Split edit);

    R add(Add edit);

    R drop(Drop edit);

    R level(SetLevel edit);

    R multiply(Multiply edit);

    R adorn(Adorn edit);

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

  /** {@code LIMB plays SURFACE [ghosted|plain|accented] AT}. */
  record Plays(Word limb, Word surface, @Nullable Word level, At at, Span span) implements Edit {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.plays(this);
    }
  }

  /** {@code split LIMB [LEVEL] between S and S [and S…] AT}; two surfaces or more. */
  record Split(Word limb, @Nullable Word level, List<Word> surfaces, At at, Span span)
      implements Edit {
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
   * {@code add SURFACE [with LIMB] [LEVEL] at PLACES [in BARS]} or {@code add LIMB [LEVEL] at …}.
   * The places hold no ranges, and {@code at.where()} is null.
   *
   * @param what a surface or a limb
   * @param with the limb; null where none is named
   */
  record Add(Word what, @Nullable Word with, @Nullable Word level, At at, Span span)
      implements Edit {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.add(this);
    }
  }

  /** {@code drop TARGET AT}. */
  record Drop(List<Word> targets, At at, Span span) implements Edit {
    /** Copies the list. */
    public Drop {
      targets = List.copyOf(targets);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.drop(this);
    }
  }

  /** {@code accent|ghost|plain TARGET AT}. */
  record SetLevel(Word verb, List<Word> targets, At at, Span span) implements Edit {
    /** Copies the list. */
    public SetLevel {
      targets = List.copyOf(targets);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.level(this);
    }
  }

  /** {@code double|triple TARGET AT}. */
  record Multiply(Word verb, List<Word> targets, At at, Span span) implements Edit {
    /** Copies the list. */
    public Multiply {
      targets = List.copyOf(targets);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.multiply(this);
    }
  }

  /** {@code flam|drag|ruff|buzz|diddle|choke|open|rimshot TARGET AT}. */
  record Adorn(Word verb, List<Word> targets, At at, Span span) implements Edit {
    /** Copies the list. */
    public Adorn {
      targets = List.copyOf(targets);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.adorn(this);
    }
  }

  /** {@code SURFACE follows LIMB AT}. */
  record Follows(Word surface, Word limb, At at, Span span) implements Edit {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.follows(this);
    }
  }

  /** {@code move TARGET from COUNT to COUNT [in BARS]}. */
  record Move(List<Word> targets, CountWord from, CountWord to, At.@Nullable Bars bars, Span span)
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

  /**
   * {@code shift TARGET later|earlier by N VALUE}.
   *
   * @param value a note value, {@code beats} or {@code bars}, singular or plural
   */
  record Shift(List<Word> targets, boolean later, Num by, Word value, Span span) implements Edit {
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
  record Only(List<Word> targets, Span span) implements Edit {
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
  record Take(List<Word> targets, Word section, At at, Span span) implements Edit {
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
  record Fill(Word section, At.Bars bars, @Nullable CountWord from, Span span) implements Edit {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.fill(this);
    }
  }

  /** {@code dynamic mf [at COUNT] [in bar N]}. */
  record Dynamic(Word loudness, @Nullable CountWord at, @Nullable Num bar, Span span)
      implements Edit {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.dynamic(this);
    }
  }

  /** {@code crescendo|diminuendo to D from COUNT [in bar N] to COUNT [in bar N]}. */
  record Hairpin(
      Word verb,
      Word loudness,
      CountWord from,
      @Nullable Num fromBar,
      CountWord to,
      @Nullable Num toBar,
      Span span)
      implements Edit {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.hairpin(this);
    }
  }
}
