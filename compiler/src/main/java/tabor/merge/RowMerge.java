package tabor.merge;

import org.jspecify.annotations.Nullable;

/** One line in three texts to one, or to a conflict. */
final class RowMerge {
  /**
   * What became of a line.
   *
   * @param row the line; null where it is gone or in conflict
   * @param conflict true if the two sides do not fit
   */
  record Result(@Nullable Row row, boolean conflict) {
    static final Result GONE = new Result(null, false);
    static final Result CONFLICT = new Result(null, true);

    static Result of(Row row) {
      return new Result(row, false);
    }
  }

  private RowMerge() {}

  static Result of(@Nullable Row base, @Nullable Row ours, @Nullable Row theirs) {
    if (ours != null && theirs != null) {
      return base == null ? added(ours, theirs) : changed(base, ours, theirs);
    }
    Row left = ours != null ? ours : theirs;
    if (left == null) {
      return Result.GONE;
    }
    if (base == null) {
      return Result.of(left);
    }
    return left.says(base) ? Result.GONE : Result.CONFLICT;
  }

  private static Result added(Row ours, Row theirs) {
    if (!ours.meaning().equals(theirs.meaning())) {
      return Result.CONFLICT;
    }
    if (ours.comment().isEmpty() || ours.comment().equals(theirs.comment())) {
      return Result.of(ours.comment().equals(theirs.comment()) ? ours : theirs);
    }
    return theirs.comment().isEmpty() ? Result.of(ours) : Result.CONFLICT;
  }

  private static Result changed(Row base, Row ours, Row theirs) {
    if (ours.raw().equals(base.raw())) {
      return Result.of(theirs);
    }
    if (theirs.raw().equals(base.raw()) || theirs.raw().equals(ours.raw())) {
      return Result.of(ours);
    }
    Row said;
    if (ours.meaning().equals(base.meaning())) {
      said =
          theirs.meaning().equals(base.meaning()) && !ours.core().equals(base.core())
              ? ours
              : theirs;
    } else if (theirs.meaning().equals(base.meaning()) || ours.meaning().equals(theirs.meaning())) {
      said = ours;
    } else {
      return Result.CONFLICT;
    }
    Row behind;
    if (ours.comment().equals(base.comment())) {
      behind =
          theirs.comment().equals(base.comment()) && !ours.tail().equals(base.tail())
              ? ours
              : theirs;
    } else if (theirs.comment().equals(base.comment()) || ours.comment().equals(theirs.comment())) {
      behind = ours;
    } else {
      return Result.CONFLICT;
    }
    Row before = ours.lead().equals(base.lead()) ? theirs : ours;
    Row ended = ours.end().equals(base.end()) ? theirs : ours;
    return Result.of(
        new Row(
            said.isStatement() ? before.lead() : "",
            said.core(),
            behind.tail(),
            ended.end(),
            said.statement(),
            said.meaning(),
            said.about()));
  }
}
