package tabor.ide;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.ide.CompletionItem.Kind;
import tabor.ide.Definitions.Definition;
import tabor.kit.Kits;
import tabor.kit.Surface;
import tabor.parse.ExpectedWords;
import tabor.parse.ExpectedWords.Item;
import tabor.pattern.Rudiments;
import tabor.pattern.Timelines;
import tabor.resolve.SectionView;
import tabor.rhythm.Count;
import tabor.source.Span;
import tabor.syntax.SectionKind;
import tabor.syntax.StatementRow;

/**
 * What could stand at the cursor: what the grammar lets follow, as far as the file has it. Unasked,
 * nothing is offered where a line or a word may be finished, so that a line end typed there stays a
 * line end.
 */
public final class Completion {
  /** Rules whose words are limbs. */
  private static final Set<String> LIMBS = Set.of("limb", "player", "subject", "target");

  /** Rules whose words are values of closed lists. */
  private static final Set<String> VALUES =
      Set.of(
          "level",
          "addedLevel",
          "loudness",
          "noteValue",
          "beatUnit",
          "distance",
          "head",
          "shown",
          "swung",
          "velocity");

  private static final List<String> METERS =
      List.of("4/4", "3/4", "2/4", "6/8", "12/8", "5/4", "7/8", "9/8");

  private final CompletionContext context;
  private final Map<String, CompletionItem> found = new LinkedHashMap<>();

  private Completion(CompletionContext context) {
    this.context = context;
  }

  /**
   * The items at an offset, the likeliest first; each begins with what is written of its word.
   *
   * @param explicit true if a person asked for them, false if they show up by themselves
   */
  public static List<CompletionItem> at(
      Compiled compiled, int offset, boolean explicit, Library library) {
    CompletionContext context = new CompletionContext(Cursor.at(compiled, offset), library);
    Completion completion = new Completion(context);
    if (context.isInBeats()) {
      return explicit ? new LetterCompletion(context).items() : List.of();
    }
    switch (context.expected().place()) {
      case TEXT -> completion.files();
      case STATEMENT -> completion.words(explicit);
      case BEATS, COMMENT -> {
        // Letters are done with above; a comment is the writer's own.
      }
    }
    return List.copyOf(completion.found.values());
  }

  private void words(boolean explicit) {
    ExpectedWords expected = context.expected();
    String typed = expected.typed();
    boolean mayEnd = expected.items().stream().anyMatch(item -> item.kind().equals(Item.END));
    boolean nothingBegun = typed.isEmpty() && (mayEnd || expected.words().isEmpty());
    if (!context.isAfterBlank() || (nothingBegun && !explicit)) {
      return;
    }
    for (Item item : expected.items()) {
      if (item.in("syllable") && !explicit && !typed.isEmpty()) {
        // Any word may be said: the one that is being typed may be finished.
        continue;
      }
      context.row(item).ifPresent(row -> offer(item, row));
    }
    withoutDeadEnds(expected.items());
    if (!explicit && found.containsKey(typed)) {
      found.clear();
    }
  }

  /** Takes out the words of a place after which the line could find no stroke. */
  private void withoutDeadEnds(List<Item> items) {
    Groove groove = context.above().orElse(null);
    if (groove != null
        && !groove.written().isEmpty()
        && items.stream().anyMatch(PlaceFilter::concerns)) {
      PlaceFilter places = new PlaceFilter(context, groove, SectionView.of(groove));
      found.keySet().removeIf(word -> !word.equals("|") && !places.leadsOn(word));
    }
  }

  private void offer(Item item, StatementRow row) {
    switch (item.kind()) {
      case Item.WORD -> word(item, row);
      case "name" -> names(item);
      case "surface" -> surfaces(item);
      case "count" -> counts(item);
      case "RATIO" -> METERS.forEach(meter -> add(meter, Kind.VALUE, "", ""));
      case "PERCENT" -> add("62%", Kind.VALUE, "the share of the first of the pair", "");
      case "WHOLE" -> bars(item);
      case "ORDINAL" -> {
        for (String nth : List.of("2nd", "3rd", "4th", "8th")) {
          add(nth, Kind.VALUE, "", "");
        }
      }
      case "SLOT" -> slots();
      case "AMPERSAND" -> {
        if (!item.in("syllable")) {
          add("&", Kind.COUNT, "every half beat", "");
        }
      }
      case "saidWord" ->
          everySaid().forEach(word -> add(word, Kind.COUNT, "a word of this lesson", ""));
      case "BAR_LINE" -> {
        if (new ModelFilter(context).allows(item, "|")) {
          add("|", Kind.KEYWORD, "", "");
        }
      }
      case "EQUALS" -> add("=", Kind.KEYWORD, "", "");
      case "LANE_START" -> add(":", Kind.KEYWORD, row.usage(), row.meaning());
      default -> {
        // New names, numbers and texts are the writer's own.
      }
    }
  }

  private void word(Item item, StatementRow row) {
    String word = item.word();
    if (word == null || !new ModelFilter(context).allows(item, word)) {
      return;
    }
    boolean first = context.expected().words().isEmpty();
    Kind kind =
        item.rules().stream().anyMatch(LIMBS::contains)
            ? Kind.LIMB
            : item.rules().stream().anyMatch(VALUES::contains) ? Kind.VALUE : Kind.KEYWORD;
    boolean tells = first && kind != Kind.LIMB;
    add(word, kind, tells ? row.usage() : "", tells ? row.meaning() : "");
  }

  private void names(Item item) {
    if (item.in("syllable")) {
      SaySyllables.next(context.expected().words())
          .forEach((word, sets) -> add(word, Kind.COUNT, sets, ""));
    } else if (item.in("sectionName") || item.in("furtherName")) {
      sections(context.kind());
    } else if (item.in("patternName")) {
      patterns();
    } else if (item.in("kitName")) {
      defined(NameKind.KIT, Kind.KIT, kit -> true);
      Kits.NAMES.forEach(name -> add(name, Kind.KIT, "built in", ""));
    }
  }

  private void patterns() {
    Optional<PatternFilter> part = PatternFilter.of(context);
    defined(NameKind.PATTERN, Kind.PATTERN, one -> part.map(some -> some.takes(one)).orElse(true));
    // The short names are the ones that players say.
    Rudiments.all().values().stream()
        .filter(rudiment -> part.map(some -> some.takes(rudiment.lead())).orElse(true))
        .forEach(one -> add(PatternText.spoken(one.name()), Kind.PATTERN, "rudiment", ""));
    if (part.map(PatternFilter::takesStrokes).orElse(true)) {
      Timelines.all().forEach((name, places) -> add(name, Kind.PATTERN, places, ""));
    }
  }

  private void defined(NameKind kind, Kind as, Predicate<Definition> filter) {
    for (Definition one : Definitions.visible(context.cursor().compiled(), context.library())) {
      boolean itself = one.section() == context.cursor().section();
      if (one.kind() == kind && !itself && filter.test(one)) {
        add(one.name(), as, one.title() == null ? "" : one.title(), "");
      }
    }
  }

  /**
   * Grooves and steps; outside charts only those above the line. Charts and players name what
   * stands below them too, players also charts.
   */
  private void sections(SectionKind where) {
    boolean below = where == SectionKind.CHART || where == SectionKind.PLAYER;
    Compiled compiled = context.cursor().compiled();
    for (Definition one : Definitions.visible(compiled, context.library())) {
      SectionKind kind = Definitions.kind(one.section());
      boolean above =
          one.compiled() != compiled
              || compiled.span(one.spot()).start() < context.cursor().start();
      boolean sheet = kind == SectionKind.SHEET;
      boolean chart = kind == SectionKind.CHART && where == SectionKind.PLAYER;
      boolean played = kind == SectionKind.GROOVE || kind == SectionKind.STEP;
      if ((played || chart || (sheet && below)) && (below || above)) {
        add(one.name(), Kind.SECTION, one.title() == null ? "" : one.title(), "");
      }
      if (sheet && (below || above)) {
        Cursor.sheetOf(one.compiled(), one.section().passage())
            .ifPresent(
                made ->
                    made.grooves()
                        .forEach(each -> add(each.name(), Kind.SECTION, each.caption(), "")));
      }
    }
  }

  private void surfaces(Item item) {
    Predicate<Surface> filter = new ModelFilter(context).surfaces(item);
    for (Surface surface : context.kit().surfaces().values()) {
      if (filter.test(surface)) {
        char letter = context.kit().letterOf(surface);
        String words = surface.words() + (letter == 0 ? "" : " (" + letter + ")");
        add(surface.name(), Kind.SURFACE, words, "");
      }
    }
  }

  private void counts(Item item) {
    Groove groove = context.above().orElse(null);
    if (groove == null) {
      BarCounts.plain(context.meter()).forEach(c -> add(c.toString(), Kind.COUNT, "", ""));
      return;
    }
    Set<Integer> bars = context.bars(item, groove);
    ModelFilter filter = new ModelFilter(context);
    if (filter.readsAnyCount(item)) {
      for (Count count : BarCounts.readable(groove, bars)) {
        add(count.toString(), Kind.COUNT, "", "");
      }
      BarCounts.said(groove, bars)
          .forEach((written, count) -> add(written, Kind.COUNT, count.toString(), ""));
      return;
    }
    Predicate<Stroke> meant = filter.target(item);
    BarCounts.struck(groove, stroke -> bars.contains(stroke.bar()) && meant.test(stroke))
        .forEach(
            (count, strokes) -> {
              add(count.toString(), Kind.COUNT, who(strokes), "");
              String said = BarCounts.said(groove, strokes.get(0));
              if (!said.equals(count.toString())) {
                add(said, Kind.COUNT, who(strokes), "");
              }
            });
  }

  /** The words of the lesson that {@code every} takes besides ours. */
  private List<String> everySaid() {
    return context.above().map(BarCounts::everySaid).orElse(List.of());
  }

  private static String who(List<Stroke> strokes) {
    Set<String> who = new LinkedHashSet<>();
    for (Stroke stroke : strokes) {
      who.add(stroke.limb().words() + ", " + stroke.surface().words());
    }
    return String.join("; ", who);
  }

  /** The numbers of bars, where a bar is named. */
  private void bars(Item item) {
    Groove groove = context.above().orElse(null);
    if (groove == null || !(item.in("barList") || item.in("inBar"))) {
      return;
    }
    for (int bar : new ModelFilter(context).bars(item, groove)) {
      add(Integer.toString(bar), Kind.COUNT, "bar " + bar, "");
    }
  }

  /** {@code every .N}: the slots that the words of the section have. */
  private void slots() {
    context
        .above()
        .ifPresent(
            groove -> {
              int most =
                  groove.written().stream()
                      .mapToInt(stroke -> stroke.slot().division().slots())
                      .max()
                      .orElse(0);
              for (int slot = 1; slot <= most; slot++) {
                add("." + slot, Kind.COUNT, "slot " + slot + " of each beat", "");
              }
            });
  }

  /** The files that a {@code use} may name. */
  private void files() {
    Cursor cursor = context.cursor();
    String text = cursor.compiled().text();
    int quote = text.lastIndexOf('"', Math.max(0, cursor.offset() - 1));
    int start = LineEnds.start(text, cursor.offset());
    if (quote < start
        || ExpectedWords.at(text.substring(start, quote)).items().stream()
            .noneMatch(item -> item.statement().equals("use"))) {
      return;
    }
    for (String name : UseLinks.usable(cursor.compiled(), context.library())) {
      put(new CompletionItem(name, name, Kind.FILE, "", "", new Span(quote + 1, cursor.offset())));
    }
  }

  private void add(String word, Kind kind, String detail, String documentation) {
    if (word.startsWith(context.expected().typed())) {
      Span replaced = new Span(context.start(), context.wordEnd());
      put(new CompletionItem(word, word, kind, detail, documentation, replaced));
    }
  }

  private void put(CompletionItem item) {
    found.putIfAbsent(item.label(), item);
  }
}
