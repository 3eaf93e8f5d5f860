package tabor.parse;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.antlr.v4.runtime.CharStreams;
import org.antlr.v4.runtime.CommonTokenStream;
import org.junit.jupiter.api.Test;
import tabor.diagnostic.Code;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.source.Passage;
import tabor.syntax.Beat;
import tabor.syntax.ChartStatement;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.SectionKind;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Statement;
import tabor.syntax.StatementRow;
import tabor.syntax.StatementTable;
import tabor.testing.Goldens;

class ReaderTest {
  private static List<SectionSyntax> read(String text) {
    Reader reader = new Reader();
    return Reader.passages(text).stream().map(reader::read).toList();
  }

  private static List<String> passages(String text) {
    return Reader.passages(text).stream().map(Passage::text).toList();
  }

  @Test
  void anEmptyFileIsAnEmptyHeader() {
    assertThat(passages("")).containsExactly("");
    SectionSyntax header = read("").get(0);
    assertThat(header.heading()).isNull();
    assertThat(header.lines()).isEmpty();
    assertThat(header.problems()).isEmpty();
  }

  @Test
  void aSectionStartsAtItsKeyword() {
    assertThat(passages("tempo 90\ngroove g\n  hands : r\n\tstep s\nchart\n"))
        .containsExactly("tempo 90\n", "groove g\n  hands : r\n", "\tstep s\n", "chart\n");
    assertThat(passages("groovebox : r\nkit.x : r\nsteps\nstep-2 : r\ngroove")).hasSize(2);
  }

  @Test
  void everyKindOfLineEndIsAccepted() {
    List<String> expected = List.of("title \"a\"", "groove g", "hands : r", "kick : x");
    for (String end : List.of("\n", "\r\n", "\r")) {
      String text =
          "\uFEFFtitle \"a\"" + end + "groove g" + end + "\thands : r" + end + " kick : x";
      List<String> said = new ArrayList<>();
      for (SectionSyntax section : read(text)) {
        assertThat(section.problems()).isEmpty();
        if (section.heading() != null) {
          said.add(section.heading().spot().text());
        }
        section.lines().forEach(line -> said.add(line.spot().text()));
      }
      assertThat(said).isEqualTo(expected);
    }
  }

  @Test
  void aByteOrderMarkMayStandBeforeAHeading() {
    assertThat(passages("\uFEFFgroove g\n")).containsExactly("", "\uFEFFgroove g\n");
  }

  @Test
  void placesCountUtf16Units() {
    String text =
        "groove g \"\uD83E\uDD41\"\n  hands : rl \uD83E\uDD41 r\r\n  text \"\uD83E\uDD41 x\" # y";
    SectionSyntax section = read(text).get(1);
    assertThat(section.heading().spot().text()).isEqualTo("groove g \"\uD83E\uDD41\"");
    assertThat(section.problems()).hasSize(1);
    assertThat(section.problems().get(0).spot().text()).isEqualTo("\uD83E\uDD41");
    assertThat(section.lines().get(1).spot().text()).isEqualTo("text \"\uD83E\uDD41 x\"");
  }

  @Test
  void aTripleTextHidesHeadingsThatAreNotComplete() {
    String text = "groove g\n text \"\"\"\n groove well together\n kit\n \"\"\"\n hands : r\n";
    assertThat(passages(text)).hasSize(2);
    assertThat(read(text).get(1).problems()).isEmpty();
  }

  @Test
  void aCompleteHeadingEndsATripleText() {
    String text = "groove g\n text \"\"\"\n well\nstep s \"x\" from g\n text \"\"\"\n a\n \"\"\"\n";
    assertThat(passages(text)).hasSize(3);
    assertThat(read(text).get(1).problems()).hasSize(1);
    assertThat(read(text).get(2).problems()).isEmpty();
  }

  @Test
  void aTextInACommentOpensNothing() {
    assertThat(passages("# he said \"\"\"\ngroove g\n # and \"that\ngroove h\n")).hasSize(3);
  }

  @Test
  void aTripleTextLosesItsCommonIndentation() {
    String text = "groove g\n  text \"\"\"\n      One\n\n        two  \n    \"\"\"\n";
    assertThat(read(text).get(1).lines().get(0).statement())
        .isInstanceOfSatisfying(
            Statement.Prose.class,
            prose -> assertThat(prose.text().value()).isEqualTo("One\n\n  two"));
  }

  @Test
  void aBrokenHeadingStillOpensItsSection() {
    SectionSyntax section = read("groove half_time \"x\"\n  count-in 1 bar\n  hands : r\n").get(1);
    assertThat(section.heading().statement())
        .isInstanceOfSatisfying(
            Heading.Faulty.class,
            faulty -> assertThat(faulty.kind()).isEqualTo(SectionKind.GROOVE));
    assertThat(section.problems()).hasSize(2);
    assertThat(section.lines()).hasSize(1);
  }

  @Test
  void aCapitalOpensItsSectionToo() {
    List<SectionSyntax> sections =
        read("Groove funk\n  hands : r\nGrooves\n  STEP more\n  add kick at 1\n");
    assertThat(sections).hasSize(3);
    assertThat(sections.get(1).heading().statement()).isInstanceOf(Heading.Faulty.class);
    assertThat(sections.get(1).problems()).hasSize(2);
    assertThat(sections.get(2).problems()).hasSize(1);
    assertThat(sections.get(2).lines()).hasSize(1);
  }

  @Test
  void theNameOfABrokenHeadingIsSpelledAsAName() {
    assertThat(List.of("rock beat", "Rock-Beat", "rockBeat", "rock_beat", "rock beat \"Rock\""))
        .allSatisfy(name -> assertThat(nameOf("groove " + name)).isEqualTo("rock-beat"));
    assertThat(nameOf("step answer to it from rock")).isEqualTo("answer-to-it");
    assertThat(nameOf("kit mine too like five-piece")).isEqualTo("mine-too");
    assertThat(List.of("groove", "groove 2nd", "groove \"No name\"", "step from it", "kit :"))
        .allSatisfy(line -> assertThat(nameOf(line)).isNull());
  }

  private static String nameOf(String line) {
    Heading.Faulty heading = (Heading.Faulty) read(line).get(1).heading().statement();
    return heading.name() == null ? null : heading.name().text();
  }

  @Test
  void aBrokenLaneIsKnownAsOne() {
    String text =
        """
        groove g
         hands : r{
         hands play x im eighths
         add kick
         right plays ride in bar
        """;
    SectionSyntax section = read(text).get(1);
    assertThat(section.lines().stream().map(Line::statement).map(Statement.Broken.class::cast))
        .extracting(Statement.Broken::lane)
        .containsExactly(true, true, false, false);
  }

  @Test
  void equalLinesShareOneTree() {
    Reader reader = new Reader();
    Passage one = new Passage("groove g\n  hands : rl rl\n");
    Passage two = new Passage("groove h\n  hands : rl rl\n");
    assertThat(reader.read(one).lines().get(0).statement())
        .isSameAs(reader.read(two).lines().get(0).statement());
  }

  @Test
  void depthIsCountedBeforeParsing() {
    String open = "{".repeat(60_000);
    SectionSyntax section =
        read("groove g\n hands : " + open + "r\n hands : {{{{{{{{r}}}}}}}}").get(1);
    assertThat(section.problems()).hasSize(1);
    assertThat(section.problems().get(0).code()).isEqualTo(Code.TOO_DEEP);
    assertThat(section.lines().get(1).statement()).isInstanceOf(PartStatement.Lane.class);
    String deepest = "{{{{{{{{r}}}}}}}}";
    String several = deepest + " " + deepest + deepest + " | " + deepest;
    assertThat(read("groove g\n hands : " + several).get(1).problems()).isEmpty();
  }

  @Test
  void aBrokenLineEndsWithWhatItSays() {
    for (String line : List.of("\"\"\"\"hands : \r\"", "add kick  \t # there", "hands : rl ? \t")) {
      assertThat(read(line + "\n").get(0).lines().get(0).spot().text())
          .as(line)
          .doesNotContainPattern("[\\s]$");
    }
  }

  @Test
  void aLongLineOfRubbishCostsOneProblem() {
    for (String bit : List.of("{ ", "( ", "x ", "' ", "| ", ": ", "\" ", "at ", "1 ", "every ")) {
      SectionSyntax section = read("groove g\n hands : " + bit.repeat(20_000)).get(1);
      assertThat(section.problems().size()).as(bit).isLessThanOrEqualTo(1);
      assertThat(read("groove g\n" + bit.repeat(20_000)).get(1).problems()).as(bit).hasSize(1);
    }
  }

  @Test
  void everyWordOfTheLanguageMayNameASection() {
    assertThat(Vocabulary.keywords()).hasSizeGreaterThan(100);
    for (String word : Vocabulary.keywords()) {
      String text =
          """
          pattern WORD : rl
          kit WORD like WORD
          player WORD "A"
            sections WORD to WORD
          sheet WORD "A" from WORD
            each take hands from WORD at 1
          groove WORD
            on WORD
            hands play WORD in eighths
            take hands from WORD at 1
            fill WORD in bar 1 from 2
          step WORD from WORD
          chart WORD
            play WORD a 2 times
            play WORD at tempo 60
            trade WORD 2 bars 4 times fill WORD
            climb WORD from 50 to 60 by 5 every 2 bars
          """;
      for (SectionSyntax section : read(text.replace("WORD", word))) {
        assertThat(section.problems()).as(word).isEmpty();
      }
    }
  }

  /** A section with such a name can only come first. */
  @Test
  void behindTheFirstSectionAClauseBegins() {
    for (String word : Vocabulary.keywords()) {
      boolean clause = List.of("each", "without", "fill", "for", "at").contains(word);
      SectionSyntax chart = read("chart c\n  play a " + word + " 2 times").get(1);
      assertThat(chart.problems().isEmpty()).as(word).isEqualTo(!clause || word.equals("each"));
      if (!clause) {
        ChartStatement.Play play = (ChartStatement.Play) chart.lines().get(0).statement();
        assertThat(play.sections()).as(word).hasSize(2);
      }
    }
  }

  /** {@code player} and {@code sheet} end a text that is not closed only with a quoted title. */
  @Test
  void aTextThatIsNotClosedEndsAtAHeading() {
    String open = "groove g\n  text \"\"\"\n    words\n%s\n  more\n\"\"\"\n  hands : r l r l\n";
    for (String heading :
        List.of("player mia \"Mia\"", "sheet kicks \"Kicks\"", "sheet k \"K\" from g", "step s")) {
      assertThat(read(open.formatted(heading))).as(heading).hasSize(3);
    }
    for (String prose : List.of("player mia", "sheet kicks", "sheet kicks from g")) {
      List<SectionSyntax> sections = read(open.formatted(prose));
      assertThat(sections).as(prose).hasSize(2);
      assertThat(sections.get(1).problems()).as(prose).isEmpty();
    }
  }

  @Test
  void aSurfaceMayNotBeAWordThatBeginsALineOfAGroove() {
    Set<String> words = new TreeSet<>(Vocabulary.of(Vocabulary.Role.HEADING));
    words.addAll(Vocabulary.of(Vocabulary.Role.LIMB));
    for (SectionKind kind : List.of(SectionKind.GROOVE, SectionKind.STEP)) {
      for (StatementRow row : StatementTable.inSection(kind)) {
        if (row.keyword() != null) {
          words.add(row.keyword());
        }
      }
    }
    assertThat(words)
        .contains("open", "tempo", "ostinato", "hands", "groove")
        .hasSizeGreaterThan(40);
    for (String word : words) {
      assertThat(read(surface(word)).get(1).problems()).as(word).hasSize(1);
    }
    for (String word : List.of("click", "rest", "gong", "high", "swing", "normal")) {
      assertThat(read(surface(word)).get(1).problems()).as(word).isEmpty();
    }
  }

  private static String surface(String name) {
    return "kit k\n  surface " + name + " key 40\n";
  }

  @Test
  void theGrammarReadsAWholeFileAlike() {
    for (String name : List.of("everything", "names", "beats")) {
      String text = Goldens.resource("tabor/parse/trees/" + name + ".tabor");
      TaborParser parser =
          new TaborParser(new CommonTokenStream(new TaborLexer(CharStreams.fromString(text))));
      parser.setInterpreter(TaborParser.Network.prediction(parser));
      TaborParser.FileContext file = parser.file();
      assertThat(parser.getNumberOfSyntaxErrors()).isZero();
      long lines = file.lines.stream().filter(line -> line.content != null).count();
      long ours =
          read(text).stream()
              .mapToLong(s -> s.lines().size() + (s.heading() == null ? 0 : 1))
              .sum();
      assertThat(lines).isEqualTo(ours);
    }
  }

  @Test
  void parenthesesKeepWhatStandsRoundOneStroke() {
    SectionSyntax section = read("groove g\n hands : ''(r)/~\n hands : ''(r)/\n").get(1);
    assertThat(section.problems()).hasSize(1);
    PartStatement.Lane lane = (PartStatement.Lane) section.lines().get(1).statement();
    Beat.Ghosts ghosts = (Beat.Ghosts) lane.bars().get(0).beats().get(0).elements().get(0);
    Beat.Hit hit = (Beat.Hit) ghosts.elements().get(0);
    assertThat(hit.grace()).isEqualTo(2);
    assertThat(hit.suffixes()).containsExactly(Beat.Suffix.DIDDLE);
  }

  /** What begins with a capital after a name is a title; two lower-case words are one name. */
  @Test
  void aTitleWithoutQuotesIsNoPartOfTheName() {
    for (String heading : new String[] {"player mia Mia", "groove beat The beat", "chart c Form"}) {
      SectionSyntax section = new Reader().read(new Passage(heading + "\n"));
      assertThat(section.problems()).hasSize(1);
      assertThat(section.problems().get(0).message()).isEqualTo("a title stands in quotes");
      String title = heading.split(" ", 3)[2];
      assertThat(section.problems().get(0).fixes().get(0).title())
          .isEqualTo("Write \"" + title + '"');
    }
    assertThat(new Reader().read(new Passage("groove rock beat\n")).problems().get(0).message())
        .isEqualTo("a name is one word, but here stand several");
  }

  /** What people say is looked for in short lines only: patterns would run out of stack. */
  @Test
  void linesAsLongAsTheyMayBeAreRead() {
    String many = "a ".repeat(30_000);
    for (String line :
        List.of(
            "shift " + many + "by 1 beat",
            "kick : " + "1 ".repeat(30_000),
            "kick : " + "x ".repeat(30_000) + "x2",
            "ghost " + many + "except at 2",
            "play " + many + "in sixteenths",
            "fill bar 1 " + many + "with b")) {
      SectionSyntax section = new Reader().read(new Passage("step g\n " + line + "\n"));
      assertThat(section.problems()).hasSize(1);
    }
  }
}
