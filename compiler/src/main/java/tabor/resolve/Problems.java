package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.Line;
import tabor.syntax.Word;

/** Collects what is wrong with one section. */
final class Problems {
  private final @Nullable String section;
  private final List<Diagnostic> found = new ArrayList<>();

  /** For the section of this name; null for the header. */
  Problems(@Nullable String section) {
    this.section = section;
  }

  void add(Diagnostic diagnostic) {
    found.add(diagnostic);
  }

  void addAll(List<Diagnostic> diagnostics) {
    found.addAll(diagnostics);
  }

  List<Diagnostic> found() {
    return found;
  }

  /** A diagnostic at a span of a line, not collected yet. */
  Diagnostic make(Code code, Line line, Span span, String message) {
    return make(code, line.spot(span), null, null, message);
  }

  /** A diagnostic at a spot, with its place in the music, not collected yet. */
  Diagnostic make(
      Code code, Spot spot, @Nullable Integer bar, @Nullable String count, String message) {
    Diagnostic.Place place = section == null ? null : new Diagnostic.Place(section, bar, count);
    return Diagnostic.of(code, spot, message).in(place);
  }

  /** Says that a name is not known, and which one was probably meant. */
  void unknown(Line line, Word word, String kind, java.util.Optional<String> near) {
    Diagnostic plain =
        make(
            Code.UNKNOWN_NAME, line, word.span(), "there is no " + kind + " “" + word.text() + "”");
    add(
        near.map(
                name ->
                    plain
                        .help("did you mean “" + name + "”?")
                        .fix(
                            Diagnostic.Fix.of(
                                "write “" + name + "”", line.spot(word.span()), name)))
            .orElse(plain));
  }
}
