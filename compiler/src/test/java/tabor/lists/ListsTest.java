package tabor.lists;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is looked for in lists, against the streams of Java. */
class ListsTest {
  static Stream<List<String>> lists() {
    return Stream.of(
        List.of(), List.of(""), List.of("x", "xxx", "xx"), List.of("xx", "x", "xxx", "xxx"));
  }

  @ParameterizedTest
  @MethodSource("lists")
  void asStreamsFindIt(List<String> items) {
    assertThat(Lists.any(items, String::isEmpty)).isEqualTo(items.contains(""));
    assertThat(Lists.all(items, one -> one.length() > 1))
        .isEqualTo(items.stream().allMatch(one -> one.length() > 1));
    assertThat(Lists.first(items, one -> one.length() > 1))
        .isEqualTo(items.stream().filter(one -> one.length() > 1).findFirst());
    assertThat(Lists.count(items, one -> one.length() > 1))
        .isEqualTo((int) items.stream().filter(one -> one.length() > 1).count());
    assertThat(Lists.filter(items, one -> one.length() > 1))
        .isEqualTo(items.stream().filter(one -> one.length() > 1).toList());
    assertThat(Lists.map(items, String::length))
        .isEqualTo(items.stream().map(String::length).toList());
    assertThat(Lists.most(items, String::length))
        .isEqualTo(items.stream().mapToInt(String::length).max().orElse(0));
    assertThat(Lists.largest(items, one -> one.length() / 2.0))
        .isEqualTo(items.stream().mapToDouble(one -> one.length() / 2.0).max().orElse(0));
    assertThat(Lists.sum(items, one -> one.length() / 2.0))
        .isEqualTo(items.stream().mapToDouble(one -> one.length() / 2.0).sum());
  }
}
