package tabor.compile;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.source.Passage;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Word;

/**
 * One section of a file between two compilations: its tree, its result, and the answers that the
 * result rests on. It is used again while its text, its name and all those answers are the same.
 */
final class Node {
  /** Kinds of section. */
  enum Kind {
    PATTERN,
    KIT,
    GROOVE,
    STEP,
    CHART;

    boolean playable() {
      return this == GROOVE || this == STEP;
    }
  }

  /** An answer that was asked for. */
  record Dep(Question question, String name, @Nullable Object answer) {}

  /** What can be asked. */
  enum Question {
    HEADER,
    KIT,
    PATTERN,
    SECTION,
    PREVIOUS,
    NEAR_PATTERN,
    NEAR_KIT,
    NEAR_SECTION
  }

  final Passage passage;
  final SectionSyntax syntax;
  final Kind kind;
  final @Nullable Word ownName;
  String name = "";
  @Nullable Object result;
  List<Dep> deps = new ArrayList<>();

  Node(SectionSyntax syntax) {
    this.syntax = syntax;
    this.passage = syntax.passage();
    Heading heading = heading();
    this.kind = kind(heading);
    this.ownName = heading.name();
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

  private static Kind kind(Heading heading) {
    return heading.match(
        new Heading.Cases<Kind>() {
          @Override
          public Kind pattern(Heading.Pattern one) {
            return Kind.PATTERN;
          }

          @Override
          public Kind kit(Heading.Kit one) {
            return Kind.KIT;
          }

          @Override
          public Kind groove(Heading.Groove one) {
            return Kind.GROOVE;
          }

          @Override
          public Kind step(Heading.Step one) {
            return Kind.STEP;
          }

          @Override
          public Kind chart(Heading.Chart one) {
            return Kind.CHART;
          }

          @Override
          public Kind broken(Heading.Faulty one) {
            return switch (one.keyword().text()) {
              case "pattern" -> Kind.PATTERN;
              case "kit" -> Kind.KIT;
              case "step" -> Kind.STEP;
              case "chart" -> Kind.CHART;
              default -> Kind.GROOVE;
            };
          }
        });
  }

  /** The name of the kit that a kit is like; null for none, and for other sections. */
  @Nullable String like() {
    Word like = heading() instanceof Heading.Kit kit ? kit.like() : null;
    return like == null ? null : like.text();
  }

  /** The places of a pattern; empty for one that could not be read. */
  List<tabor.syntax.Beat.Element> places() {
    return heading() instanceof Heading.Pattern pattern ? pattern.places() : List.of();
  }
}
