package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.Beat;
import tabor.syntax.Edit;
import tabor.syntax.LaneBar;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.SectionKind;

/** What might fix a diagnostic, by its code and where it stands in the tree. */
final class FixFinder {
  private final Compiled compiled;
  private final Cursor cursor;
  private final Diagnostic diagnostic;
  private final Span span;
  private final List<QuickFix> found = new ArrayList<>();

  FixFinder(Cursor cursor, Diagnostic diagnostic) {
    this.compiled = cursor.compiled();
    this.cursor = cursor;
    this.diagnostic = diagnostic;
    this.span = compiled.span(diagnostic.spot());
  }

  List<QuickFix> find() {
    Line line = cursor.line();
    switch (diagnostic.code()) {
      case BAR_LENGTH, BAR_COUNT -> new BarFixes(cursor, diagnostic, found).find();
      case LIMB_CONFLICT, THREE_HANDS, THREE_FEET, WRONG_LIMB -> {
        new LimbFixes(cursor, diagnostic, found).find();
        leaveOut();
      }
      case HIHAT_CONTRADICTION, FOOT_ON_CLOSED_HIHAT -> {
        if (!new HihatFixes(cursor, found).find()) {
          leaveOut();
        }
      }
      case NO_FREE_HAND -> withoutSign();
      case MISSING_SURFACE -> {
        withoutSign();
        otherSurface();
      }
      case COUNT_OUTSIDE_BAR -> found.addAll(new CountFixes(cursor, diagnostic).find());
      case DUPLICATE_NAME -> freeName();
      case NOTHING_THERE -> silence();
      case HELD_DRUM -> silence();
      case TOO_FAST, FAR_REACH -> new PaceFixes(cursor, diagnostic, found).find();
      case UNUSED_NAME -> takeOutSection();
      case ALL_ACCENTS -> smallLetters();
      case ALREADY_THERE -> {
        if (line != null) {
          takeOutChoice(line);
        }
      }
      default -> {
        // Their fixes come with them, or there is none to give.
      }
    }
    return found;
  }

  private void add(String title, Span where, String text) {
    found.add(QuickFix.of(title, where, text));
  }

  /** A dot in place of a stroke, one count of several, or the line away that made it. */
  private void leaveOut() {
    Line line = cursor.line();
    SyntaxToken token = cursor.token();
    if (line == null) {
      return;
    }
    if (token != null && token.hit() != null) {
      add("Leave this stroke out", whole(cursor), ".");
    } else if (line.statement() instanceof Edit edit) {
      Optional<At.Place> clashing = place(edit);
      if (clashing.isPresent()) {
        Span count = cursor.inFile(clashing.get().span());
        add(
            "Leave out " + count.in(compiled.text()),
            new Span(LineEnds.blanksBefore(compiled.text(), count.start()), count.end()),
            "");
      } else {
        takeOut(line);
      }
    }
  }

  /** All that is written of the stroke under a cursor. */
  static Span whole(Cursor cursor) {
    Span hit = cursor.inFile(java.util.Objects.requireNonNull(cursor.token()).span());
    String text = cursor.compiled().text();
    boolean alone =
        hit.start() > 0
            && hit.end() < text.length()
            && text.charAt(hit.start() - 1) == '('
            && text.charAt(hit.end()) == ')';
    // A word is one beat: it keeps as many slots as it had.
    return alone ? new Span(hit.start() - 1, hit.end() + 1) : hit;
  }

  /** The place of an edit that the diagnostic is about, where the edit names several. */
  private Optional<At.Place> place(Edit edit) {
    Diagnostic.Place music = diagnostic.place();
    List<At.Place> places =
        SyntaxNodes.first(edit, At.Places.class).map(At.Places::items).orElse(List.of());
    return places.size() < 2 || music == null
        ? Optional.empty()
        : places.stream()
            .filter(
                place ->
                    place instanceof At.One one
                        && one.count().count().toString().equals(music.count()))
            .findFirst();
  }

  /** The count that says nothing new, of a line that varies; else the whole line. */
  private void takeOutChoice(Line line) {
    if (Definitions.kind(cursor.section()) != SectionKind.SHEET) {
      takeOut(line);
      return;
    }
    At.Places places = SyntaxNodes.first(line.statement(), At.Places.class).orElse(null);
    if (places == null || places.choose() != null) {
      return;
    }
    for (List<At.Place> group : places.groups()) {
      for (At.Place place : group) {
        if (group.size() > 1 && cursor.inFile(place.span()).equals(span)) {
          String text = compiled.text();
          int from =
              place == group.get(0) ? span.start() : LineEnds.blanksBefore(text, span.start());
          int to = place == group.get(0) ? cursor.inFile(group.get(1).span()).start() : span.end();
          add("Take " + span.in(text) + " out", new Span(from, to), "");
        }
      }
    }
  }

  private void takeOut(Line line) {
    Span whole = LineEnds.whole(compiled.text(), compiled.span(line.spot()));
    add("Take this line out", whole, "");
  }

  /** The stroke without its grace notes, or without the sign that it cannot have. */
  private void withoutSign() {
    SyntaxToken token = cursor.token();
    Line line = cursor.line();
    if (token == null || token.hit() == null || line == null) {
      if (line != null && line.statement() instanceof Edit) {
        takeOut(line);
      }
      return;
    }
    Beat.Hit hit = token.hit();
    Span letter = token.letterSpan(line);
    Span whole = cursor.inFile(token.span());
    String text = compiled.text();
    if (hit.grace() > 0 && diagnostic.code() == Code.NO_FREE_HAND) {
      add("Leave the grace notes out", new Span(whole.start(), whole.start() + hit.grace()), "");
    }
    for (Beat.Suffix suffix : hit.suffixes()) {
      int at = text.indexOf(suffix.sign(), cursor.inFile(letter).end());
      if (at < 0 || at >= whole.end()) {
        continue;
      }
      Span sign = new Span(at, at + suffix.sign().length());
      if (diagnostic.code() == Code.NO_FREE_HAND) {
        if (suffix == Beat.Suffix.OPEN_ROLL) {
          add("Make the open roll a diddle", sign, Beat.Suffix.DIDDLE.sign());
        }
      } else if (!SurfaceChoice.takes(cursor, line, hit, suffix)) {
        add("Leave the “" + suffix.sign() + "” out", sign, "");
      }
    }
  }

  /** The surfaces of the same sort that the kit has, by their letters or their names. */
  private void otherSurface() {
    SyntaxToken token = cursor.token();
    Line line = cursor.line();
    if (token == null || line == null) {
      return;
    }
    boolean letter = token.hit() != null && KitReferences.isLettered(line);
    boolean name = token.role() == SyntaxToken.Role.SURFACE;
    if (!letter && !name) {
      return;
    }
    for (SurfaceChoice.Choice choice : SurfaceChoice.of(cursor.kit(), token)) {
      Span where = cursor.inFile(letter ? token.letterSpan(line) : token.span());
      add("Play the " + choice.words(), where, letter ? choice.letter() : choice.name());
    }
  }

  private void freeName() {
    SyntaxToken token = cursor.token();
    Optional<NameKind> kind = token == null ? Optional.empty() : NameKind.of(token.role());
    if (token == null || kind.isEmpty()) {
      return;
    }
    List<String> taken =
        Definitions.own(compiled).stream()
            .filter(one -> one.kind() == kind.get())
            .map(Definitions.Definition::name)
            .toList();
    int number = 2;
    while (taken.contains(token.text() + "-" + number)) {
      number++;
    }
    String name = token.text() + "-" + number;
    add("Name it “" + name + "”", cursor.inFile(token.span()), name);
  }

  /** A sign that has nothing to stand for. */
  private void silence() {
    Line line = cursor.line();
    if (line == null || !(line.statement() instanceof PartStatement.Lane lane)) {
      return;
    }
    if (cursor.token() != null && cursor.token().role() == SyntaxToken.Role.HOLD) {
      add("Write a dot: silence", span, ".");
      return;
    }
    int at = span.start() - cursor.start() - line.start();
    for (int i = 0; i < lane.bars().size(); i++) {
      LaneBar bar = lane.bars().get(i);
      if (bar.repeat() && bar.span().touches(at)) {
        int first = cursor.groove().map(Groove::firstBar).orElse(1);
        int beats = cursor.meter(first + i).beatCount();
        add("Write silence", cursor.inFile(bar.span()), ". ".repeat(beats).strip());
      }
    }
  }

  private void takeOutSection() {
    Span whole = Outline.whole(compiled, cursor.section());
    add("Take it out", LineEnds.whole(compiled.text(), whole), "");
  }

  private void smallLetters() {
    Line line = cursor.line();
    if (line == null || !(line.statement() instanceof PartStatement.Lane)) {
      return;
    }
    List<TextEdit> edits = new ArrayList<>();
    for (SyntaxToken token : SyntaxTokens.of(line)) {
      if (token.hit() != null && token.hit().accent()) {
        Span letter = cursor.inFile(token.letterSpan(line));
        edits.add(new TextEdit(letter, letter.in(compiled.text()).toLowerCase(Locale.ROOT)));
      }
    }
    found.add(new QuickFix("Write small letters: plain strokes", edits, false));
  }
}
