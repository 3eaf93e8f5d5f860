package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.Token;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.groove.CountingWords;
import tabor.groove.PracticeLog;
import tabor.syntax.Num;
import tabor.syntax.Ref;
import tabor.syntax.SettingStatement;
import tabor.syntax.SettingStatement.PageKind;
import tabor.words.Language;

/** Settings of the printed page to trees: layout, log, counting words, language. */
record PageBuilder(FirstProblem problems, NumberBuilder numbers) {
  private static final int MOST_COLUMNS = 3;

  /** More bars are narrower than the widest paper can show. */
  private static final int MOST_BARS = 16;

  /** A table of more rows is no longer one for a wall or a stick bag. */
  private static final int MOST_ROWS = 100;

  SettingStatement.Page page(TaborParser.PageContext line) {
    Token first = line.getStart();
    Token kindAt = line.value == null ? line.getStop() : line.value;
    PageKind kind;
    Num number = null;
    if (line.paper != null) {
      kind = line.paper.getType() == TaborLexer.A4 ? PageKind.A4 : PageKind.LETTER;
    } else if (line.large != null) {
      kind = PageKind.LARGE;
    } else if (line.new_ != null) {
      kind = PageKind.NEW;
    } else if (line.bars_ != null) {
      kind = PageKind.BARS;
      number = numbers.whole(line.value, 1, MOST_BARS, "the number of bars a line");
    } else {
      kind = PageKind.COLUMNS;
      number = numbers.whole(line.value, 1, MOST_COLUMNS, "the number of columns");
    }
    return new SettingStatement.Page(
        new Ref<>(kind, Spans.between(kindAt, line.getStop())),
        number,
        Spans.between(first, line.getStop()));
  }

  SettingStatement.Log log(TaborParser.LogContext line) {
    boolean days = line.unit.getType() == TaborLexer.DAYS || line.unit.getType() == TaborLexer.DAY;
    return new SettingStatement.Log(
        numbers.whole(
            line.value, 1, MOST_ROWS, days ? "the number of days" : "the number of weeks"),
        new Ref<>(days ? PracticeLog.Unit.DAYS : PracticeLog.Unit.WEEKS, Spans.of(line.unit)),
        Spans.of(line));
  }

  SettingStatement.Say syllables(TaborParser.SaySyllablesContext line) {
    int division =
        switch (line.division.getType()) {
          case TaborLexer.TWOS -> 2;
          case TaborLexer.THREES -> 3;
          default -> 4;
        };
    List<Ref<String>> syllables = new ArrayList<>(line.syllables.size());
    for (TaborParser.SyllableContext syllable : line.syllables) {
      String word = syllable.getText().replace('+', '&');
      if (!word.equals("&") && !word.codePoints().allMatch(PageBuilder::isSaid)) {
        problems.report(
            Spans.of(syllable),
            "`" + syllable.getText() + "` is no word that can be counted with",
            "A syllable is made of letters");
      }
      syllables.add(new Ref<>(CountingWords.plain(word), Spans.of(syllable)));
    }
    if (syllables.size() != division - 1) {
      problems.report(
          Spans.of(line),
          "a beat in "
              + line.division.getText().replaceFirst("s$", "")
              + " needs "
              + (division == 2 ? "1 syllable" : division - 1 + " syllables")
              + " after its number",
          switch (division) {
            case 2 -> "It is written `say twos &`";
            case 3 -> "It is written `say threes trip let`";
            default -> "It is written `say fours e & a`";
          });
    }
    return new SettingStatement.Say(
        null, new Ref<>(division, Spans.of(line.division)), syllables, Spans.of(line));
  }

  private static boolean isSaid(int letter) {
    int type = Character.getType(letter);
    // Signs over and under letters belong to them.
    boolean mark = type == Character.NON_SPACING_MARK || type == Character.COMBINING_SPACING_MARK;
    return Character.isLetter(letter)
        || mark
        || letter == '-'
        || letter == '\''
        || letter == '\u2019';
  }

  SettingStatement.Say through(TaborParser.SayThroughContext line) {
    return new SettingStatement.Say(
        new Ref<>(CountingWords.Named.EIGHTHS_THROUGH, Spans.of(line)),
        null,
        List.of(),
        Spans.of(line));
  }

  SettingStatement.Say set(TaborParser.SaySetContext line) {
    return new SettingStatement.Say(
        new Ref<>(CountingWords.Named.of(line.set.getText()).orElseThrow(), Spans.of(line.set)),
        null,
        List.of(),
        Spans.of(line));
  }

  SettingStatement.LanguageSetting language(TaborParser.LanguageContext line) {
    return new SettingStatement.LanguageSetting(
        new Ref<>(Language.of(line.word.getText()).orElseThrow(), Spans.of(line.word)),
        Spans.of(line));
  }
}
