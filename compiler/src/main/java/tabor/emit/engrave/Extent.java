package tabor.emit.engrave;

import java.util.List;
import java.util.Optional;

/** How far marks reach. */
public final class Extent implements Mark.Cases<Optional<Box>> {
  private static final Extent CASES = new Extent();

  private Extent() {}

  /** The box of a mark; throws {@link java.util.NoSuchElementException} for an empty group. */
  public static Box of(Mark mark) {
    return mark.match(CASES).orElseThrow();
  }

  /** The box of all these marks; empty if none of them is drawn. */
  public static Optional<Box> of(List<Mark> marks) {
    Optional<Box> all = Optional.empty();
    for (Mark mark : marks) {
      Optional<Box> box = mark.match(CASES);
      if (box.isPresent()) {
        all = all.isPresent() ? Optional.of(all.get().union(box.get())) : box;
      }
    }
    return all;
  }

  @Override
  public Optional<Box> ink(Mark.Ink ink) {
    return Optional.of(ink.outline().bounds());
  }

  @Override
  public Optional<Box> glyph(Mark.Glyph glyph) {
    return Optional.of(glyph.box());
  }

  @Override
  public Optional<Box> line(Mark.Line line) {
    return Optional.of(line.box());
  }

  @Override
  public Optional<Box> words(Mark.Words words) {
    return Optional.of(words.box());
  }

  @Override
  public Optional<Box> group(Mark.Group group) {
    return of(group.marks());
  }
}
