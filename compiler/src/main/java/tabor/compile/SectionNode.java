package tabor.compile;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.kit.Kit;
import tabor.resolve.KitResolver;
import tabor.source.Passage;
import tabor.syntax.Beat;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.Name;
import tabor.syntax.SectionKind;
import tabor.syntax.SectionSyntax;

/** One section of a file between two compilations: its tree, and the kit that it makes. */
final class SectionNode {
  final Passage passage;
  final SectionSyntax syntax;
  final SectionKind kind;
  final @Nullable Name ownName;

  /** The kit that a kit section makes, and what it rests on; null before it is made. */
  @Nullable BuiltKit kit;

  /**
   * A kit and what it rests on.
   *
   * @param like the kit that it starts from; null if there is none such
   * @param near the name offered where there is none; empty for none
   */
  record BuiltKit(@Nullable Kit like, Optional<String> near, KitResolver.Built built) {}

  SectionNode(SectionSyntax syntax) {
    this.syntax = syntax;
    this.passage = syntax.passage();
    Heading heading = heading();
    this.kind = heading.kind();
    this.ownName = heading.name();
  }

  /** The same, of which the kit can be made anew without this one's changing. */
  SectionNode copy() {
    if (kind != SectionKind.KIT) {
      return this;
    }
    SectionNode copy = new SectionNode(syntax);
    copy.kit = kit;
    return copy;
  }

  Line headingLine() {
    Line line = syntax.heading();
    if (line == null) {
      throw new IllegalStateException("a section without a heading");
    }
    return line;
  }

  private Heading heading() {
    return (Heading) headingLine().statement();
  }

  /** Its own name, or else the word for what it is. */
  String name() {
    return ownName == null ? kind.word() : ownName.text();
  }

  /** True for grooves and steps. */
  boolean isPlayable() {
    return kind == SectionKind.GROOVE || kind == SectionKind.STEP;
  }

  /** The kit that a kit is like; null for none, and for other sections. */
  @Nullable Name like() {
    return heading() instanceof Heading.Kit kit ? kit.like() : null;
  }

  /** The places of a pattern; empty for one that could not be read. */
  List<Beat.Element> places() {
    return heading() instanceof Heading.Pattern pattern ? pattern.places() : List.of();
  }
}
