package tabor.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Rows that are too long to be laid over each other in every way. */
class LongRowsTest {
  /** Of 5,000 lines every 50th is taken out, and a new one put in behind every 70th. */
  @Test
  void linesThatStayAreFoundAgain() {
    List<String> before = new ArrayList<>();
    List<String> after = new ArrayList<>();
    List<String> out = new ArrayList<>();
    List<String> in = new ArrayList<>();
    for (int i = 0; i < 5_000; i++) {
      before.add("old" + i);
      (i % 50 == 0 ? out : after).add("old" + i);
      if (i % 70 == 0) {
        in.add("new" + i);
        after.add("new" + i);
      }
    }
    List<Detail> found = Lines.changes(before, after);
    assertThat(found)
        .filteredOn(one -> one.after() == null)
        .extracting(Detail::before)
        .isEqualTo(out);
    assertThat(found)
        .filteredOn(one -> one.before() == null)
        .extracting(Detail::after)
        .isEqualTo(in);
    assertThat(found).hasSize(out.size() + in.size());
  }
}
