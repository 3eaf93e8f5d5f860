package tabor.resolve;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.kit.Kits;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.Line;

/** Takes what is found wrong with one section, and knows whether some of it is missing. */
final class Problems {
  /** Most problems of one section that are told; one more is {@code too-long}. */
  static final int MOST = 1000;

  private final @Nullable String section;
  private final List<Diagnostic> found = new ArrayList<>();
  private final Set<Object> said = new HashSet<>();
  private Gaps gaps = Gaps.NONE;

  /** For the section of this name; null for the header. */
  Problems(@Nullable String section) {
    this.section = section;
  }

  void add(Diagnostic diagnostic) {
    if (found.size() < MOST) {
      found.add(diagnostic);
    } else if (found.size() == MOST) {
      incomplete();
      found.add(
          Diagnostic.of(
                  Code.TOO_LONG,
                  diagnostic.spot(),
                  "this section has more than " + MOST + " problems; the others are not told")
              .help("correct those first"));
    }
  }

  /** True if there are so many that no more are told. */
  boolean isFull() {
    return found.size() > MOST;
  }

  void addAll(List<Diagnostic> diagnostics) {
    diagnostics.forEach(this::add);
  }

  /** True the first time that it is asked for this key. */
  boolean isNew(Object key) {
    return said.add(key);
  }

  List<Diagnostic> found() {
    return found;
  }

  /**
   * Notes that something written could not be read or placed: strokes may be missing that are not
   * missing in the source, and are not to be missed.
   */
  void incomplete() {
    incomplete(Gaps.ALL);
  }

  /** Notes that what is written has gaps of this kind. */
  void incomplete(Gaps more) {
    gaps = gaps.and(more);
  }

  /** What may be missing that is not missing in the source. */
  Gaps gaps() {
    return gaps;
  }

  /** True if strokes may be missing that are not missing in the source. */
  boolean isIncomplete() {
    return gaps.strokes();
  }

  /** Says what is wrong at a span of a line, and what helps. */
  void tell(Code code, Line line, Span span, String message, String help) {
    add(make(code, line, span, message).help(help));
  }

  /** Says what is wrong at a spot, with its place in the music, and what helps. */
  void tell(
      Code code,
      Spot spot,
      @Nullable Integer bar,
      @Nullable String count,
      String message,
      String help) {
    add(make(code, spot, bar, count, message).help(help));
  }

  /**
   * {@linkplain #tell Says what is wrong} where strokes may be {@linkplain #incomplete missing}.
   */
  void lost(Code code, Line line, Span span, String message, String help) {
    incomplete();
    tell(code, line, span, message, help);
  }

  /** A diagnostic at a span of a line, not taken yet. */
  Diagnostic make(Code code, Line line, Span span, String message) {
    return make(code, line.spot(span), null, null, message);
  }

  /** A diagnostic at a spot, with its place in the music, not taken yet. */
  Diagnostic make(
      Code code, Spot spot, @Nullable Integer bar, @Nullable String count, String message) {
    Diagnostic.Place place = section == null ? null : new Diagnostic.Place(section, bar, count);
    return Diagnostic.of(code, spot, message).in(place);
  }

  /** Says that a name is not known, and which one was probably meant. */
  void unknown(Line line, String name, Span span, String kind, Optional<String> near) {
    Diagnostic made =
        make(Code.UNKNOWN_NAME, line, span, "there is no " + kind + " “" + name + "”");
    add(unknown(kind.equals("kit") ? made.help(Kits.BUILT_IN) : made, line.spot(span), near));
  }

  /** A diagnostic on an unknown name with the one that was probably meant. */
  static Diagnostic unknown(Diagnostic plain, Spot spot, Optional<String> near) {
    return near.map(
            name ->
                plain.help("did you mean “" + name + "”?").fix("write “" + name + "”", spot, name))
        .orElse(plain);
  }
}
