package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Near;
import tabor.ide.Leaf.Role;
import tabor.kit.Kit;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.source.Span;
import tabor.syntax.Edit;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;

/** What might mend a diagnostic, by its code and where it stands. Not all of it does. */
final class Remedies {
  private final Compiled compiled;
  private final Diagnostic diagnostic;
  private final Library library;
  private final Span span;
  private final Cursor cursor;
  private final List<Mend> found = new ArrayList<>();

  private Remedies(Compiled compiled, Diagnostic diagnostic, Library library) {
    this.compiled = compiled;
    this.diagnostic = diagnostic;
    this.library = library;
    this.span = compiled.span(diagnostic.spot());
    this.cursor = Cursor.at(compiled, span.start());
  }

  static List<Mend> of(Compiled compiled, Diagnostic diagnostic, Library library) {
    Remedies remedies = new Remedies(compiled, diagnostic, library);
    remedies.collect();
    return remedies.found;
  }

  private void collect() {
    switch (diagnostic.code()) {
      case BAR_LENGTH, BAR_COUNT -> found.addAll(BarRemedies.of(cursor, diagnostic, span));
      case LIMB_CONFLICT,
          THREE_HANDS,
          THREE_FEET,
          WRONG_LIMB,
          HIHAT_CONTRADICTION,
          FOOT_ON_CLOSED_HIHAT,
          TOO_FAST,
          FAR_REACH -> {
        otherLimb();
        leaveOut();
      }
      case NO_FREE_HAND -> {
        withoutSmallStrokes();
        leaveOut();
      }
      case UNKNOWN_NAME -> nearName();
      case UNKNOWN_LETTER, MISSING_SURFACE -> {
        otherSurface();
        leaveOut();
      }
      case DUPLICATE_NAME -> freeName();
      case NOTHING_THERE, COUNT_OUTSIDE_BAR ->
          found.addAll(CountRemedies.of(cursor, diagnostic, span, library));
      case ACCENT_IN_GHOST, HELD_DRUM -> {
        if (diagnostic.code() == tabor.diagnostic.Code.HELD_DRUM) {
          add("write a rest", span, ".");
        }
      }
      case UNUSED_NAME -> takeOutSection();
      case ALL_ACCENTS -> smallLetters();
      case ODD_BEAT -> add("say that it is meant", new Span(span.end(), span.end()), ":1");
      case ALREADY_THERE -> takeOutLine("take this line out");
      case AMBIGUOUS_COUNT,
          SYNTAX,
          USE_CYCLE,
          USE_OUTSIDE,
          TOO_LONG,
          TOO_DEEP,
          NOT_UTF8,
          UNREADABLE,
          PATTERN_CUT,
          PLAYED_OTHERWISE,
          ROUNDED_TICKS,
          CROSSED_ARMS -> {
        // Their fixes come with them, or there is none to give.
      }
    }
  }

  private void add(String title, Span where, String text) {
    found.add(Mend.of(title, where, text));
  }

  /** The other hand or foot: the letter in a part, or the words behind {@code with}. */
  private void otherLimb() {
    Line line = cursor.line();
    if (line == null) {
      return;
    }
    if (line.statement() instanceof Edit.Add added && added.with() != null) {
      String limb = added.with().text();
      String other =
          limb.startsWith("right") ? limb.replace("right", "left") : limb.replace("left", "right");
      add("give it to the " + hand(other), cursor.inFile(added.with().span()), other);
      if (limb.endsWith(" foot")) {
        add("give it to a hand", cursor.inFile(added.with().span()), limb.replace(" foot", ""));
      }
      return;
    }
    Leaf leaf = cursor.leaf();
    if (leaf == null || leaf.hit() == null) {
      return;
    }
    if (KitNames.isLettered(line)) {
      otherLimbBelow(line, leaf);
      return;
    }
    Span letter = cursor.inFile(KitNames.letterSpan(cursor, leaf));
    String written = letter.in(compiled.text());
    Character other = Map.of('r', 'l', 'l', 'r', 'k', 'p', 'p', 'k').get(leaf.hit().letter());
    if (other != null) {
      boolean accent = leaf.hit().accent();
      String text = accent ? other.toString().toUpperCase(Locale.ROOT) : other.toString();
      add("give it to the other limb", letter, text);
    } else if (written.equalsIgnoreCase("b")) {
      add("only the right", letter, written.equals("B") ? "R" : "r");
      add("only the left", letter, written.equals("B") ? "L" : "l");
    }
  }

  /** In a limb's own part: a rest there, and the stroke added for the other limb below. */
  private void otherLimbBelow(Line line, Leaf leaf) {
    Diagnostic.Place place = diagnostic.place();
    if (place == null
        || place.count() == null
        || leaf.hit() == null
        || !(line.statement() instanceof PartStatement.Lane lane)) {
      return;
    }
    Surface surface =
        Situation.at(compiled, span.start(), library).kit().letter(leaf.hit().letter());
    if (surface == null) {
      return;
    }
    String limb = lane.subject().text();
    String other =
        limb.startsWith("right") ? limb.replace("right", "left") : limb.replace("left", "right");
    String bar = place.bar() == null ? "" : " in bar " + place.bar();
    String level = leaf.hit().accent() ? " accented" : "";
    Span whole = compiled.span(line.spot());
    Span start = wholeLine(whole);
    String indent = compiled.text().substring(start.start(), whole.start());
    int stop = whole.end();
    while (stop < compiled.text().length() && !Situation.isLineEnd(compiled.text().charAt(stop))) {
      stop++;
    }
    String end = compiled.text().startsWith("\r\n", stop) ? "\r\n" : "\n";
    String added =
        end
            + indent
            + "add "
            + surface.name()
            + " with "
            + other
            + level
            + " at "
            + place.count()
            + bar;
    found.add(
        new Mend(
            "give it to the " + hand(other),
            List.of(
                new Mend.Change(cursor.inFile(leaf.span()), "."),
                new Mend.Change(new Span(stop, stop), added))));
  }

  private static String hand(String limb) {
    return limb.endsWith("foot") ? limb : limb + " hand";
  }

  /** A rest in place of a stroke, or the line away that made it. */
  private void leaveOut() {
    Leaf leaf = cursor.leaf();
    Line line = cursor.line();
    if (line == null) {
      return;
    }
    if (leaf != null && leaf.hit() != null) {
      Span hit = cursor.inFile(leaf.span());
      String text = compiled.text();
      boolean alone =
          hit.start() > 0
              && hit.end() < text.length()
              && text.charAt(hit.start() - 1) == '('
              && text.charAt(hit.end()) == ')';
      // A word is one beat: it keeps as many slots as it had.
      add("leave this stroke out", alone ? new Span(hit.start() - 1, hit.end() + 1) : hit, ".");
    } else if (line.statement() instanceof Edit) {
      takeOutLine("take this line out");
    }
  }

  private void withoutSmallStrokes() {
    Leaf leaf = cursor.leaf();
    if (leaf != null && leaf.hit() != null) {
      Span hit = cursor.inFile(leaf.span());
      String text = hit.in(compiled.text());
      String bare = text.replaceAll("^['’‘]+", "");
      if (!bare.equals(text)) {
        add("without the small strokes", hit, bare);
      }
      if (bare.endsWith("//")) {
        add("a diddle in place of the roll", hit, text.substring(0, text.length() - 1));
      }
    }
  }

  private void nearName() {
    Leaf leaf = cursor.leaf();
    if (leaf == null) {
      return;
    }
    List<String> candidates = new ArrayList<>();
    if (leaf.role() == Role.SURFACE || leaf.role() == Role.LIMB) {
      Kit kit = Situation.at(compiled, span.start(), library).kit();
      candidates.addAll(kit.surfaceNames());
      candidates.addAll(List.of("hands", "feet", "right", "left", "line"));
    } else {
      Catalog.Kind.of(leaf.role())
          .ifPresent(
              kind ->
                  Catalog.visible(compiled, library).stream()
                      .filter(entry -> entry.kind() == kind)
                      .forEach(entry -> candidates.add(entry.name())));
    }
    Near.find(leaf.text(), candidates)
        .ifPresent(near -> add("write “" + near + "”", cursor.inFile(leaf.span()), near));
  }

  /** The surface of the same sort that the kit has, by its letter or its name. */
  private void otherSurface() {
    Leaf leaf = cursor.leaf();
    if (leaf == null) {
      return;
    }
    Kit kit = Situation.at(compiled, span.start(), library).kit();
    if (leaf.hit() != null && cursor.line() != null && KitNames.isLettered(cursor.line())) {
      Surface missing = kit.letter(leaf.hit().letter());
      for (Surface surface : kit.surfaces().values()) {
        char letter = kit.letterOf(surface);
        boolean fits =
            missing == null ? surface.isHomeOf(Limb.RIGHT_HAND) : surface.sort() == missing.sort();
        if (fits && letter != 0 && kit.struck(surface) != null) {
          char written = leaf.hit().accent() ? Character.toUpperCase(letter) : letter;
          Span at = cursor.inFile(KitNames.letterSpan(cursor, leaf));
          add("play the " + surface.words(), at, String.valueOf(written));
        }
      }
    } else if (leaf.role() == Role.SURFACE) {
      Surface missing = kit.surface(leaf.text());
      for (Surface surface : kit.surfaces().values()) {
        if (missing != null && surface.sort() == missing.sort() && kit.struck(surface) != null) {
          add("play the " + surface.words(), cursor.inFile(leaf.span()), surface.name());
        }
      }
    }
  }

  private void freeName() {
    Leaf leaf = cursor.leaf();
    Optional<Catalog.Kind> kind = leaf == null ? Optional.empty() : Catalog.Kind.of(leaf.role());
    if (leaf == null || kind.isEmpty()) {
      return;
    }
    for (int number = 2; number < 100; number++) {
      String name = leaf.text() + "-" + number;
      if (Catalog.find(compiled, library, kind.get(), name).isEmpty()) {
        add("name it “" + name + "”", cursor.inFile(leaf.span()), name);
        return;
      }
    }
  }

  private void takeOutLine(String title) {
    if (cursor.line() == null) {
      return;
    }
    Span line = compiled.span(cursor.line().spot());
    add(title, wholeLine(line), "");
  }

  /** The line with what stands before and behind it, its line end included. */
  private Span wholeLine(Span line) {
    String text = compiled.text();
    int start = line.start();
    while (start > 0 && !Situation.isLineEnd(text.charAt(start - 1))) {
      start--;
    }
    int end = line.end();
    while (end < text.length() && !Situation.isLineEnd(text.charAt(end))) {
      end++;
    }
    if (end < text.length()) {
      end += text.startsWith("\r\n", end) ? 2 : 1;
    }
    return new Span(start, end);
  }

  private void takeOutSection() {
    int start = cursor.start();
    Span section = new Span(start, start + cursor.section().passage().text().length());
    add("take it out", section, "");
  }

  private void smallLetters() {
    if (cursor.line() == null || !(cursor.line().statement() instanceof PartStatement.Lane)) {
      return;
    }
    List<Mend.Change> changes = new ArrayList<>();
    for (Leaf leaf : Leaves.of(cursor.line())) {
      if (leaf.hit() != null && leaf.hit().accent()) {
        Span letter = cursor.inFile(KitNames.letterSpan(cursor, leaf));
        changes.add(new Mend.Change(letter, letter.in(compiled.text()).toLowerCase(Locale.ROOT)));
      }
    }
    found.add(new Mend("write small letters: plain strokes", changes));
  }
}
