package tabor.groove;

import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.testing.RecordEquality;
import tabor.words.Language;

/** Equality of the words of a section is that of records. */
class SectionWordsTest {
  private static final List<String> AND = List.of("&");
  private static final List<String> TRIP_LET = List.of("trip", "let");
  private static final List<String> E_UND_E = List.of("e", "und", "e");

  @Test
  void wordsAreEqualIfAllPartsAre() {
    CountingWords some = new CountingWords(AND, TRIP_LET, E_UND_E, "ta", true);
    RecordEquality.check(
        List.of(
            some,
            new CountingWords(List.of(), TRIP_LET, E_UND_E, "ta", true),
            new CountingWords(AND, List.of(), E_UND_E, "ta", true),
            new CountingWords(AND, TRIP_LET, List.of(), "ta", true),
            new CountingWords(AND, TRIP_LET, E_UND_E, null, true),
            new CountingWords(AND, TRIP_LET, E_UND_E, "ta", false)));
    RecordEquality.check(
        List.of(
            new SectionWords(some, some, Language.DE),
            new SectionWords(CountingWords.OURS, some, Language.DE),
            new SectionWords(some, CountingWords.OURS, Language.DE),
            new SectionWords(some, some, Language.EN)));
  }
}
