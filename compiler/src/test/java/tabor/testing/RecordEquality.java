package tabor.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Holds records that write their own {@code equals} to what the language says of records: equal if
 * and only if all parts are.
 */
public final class RecordEquality {
  private RecordEquality() {}

  /**
   * Compares each with each, and with a second one made of the same parts.
   *
   * @param samples records of one class, such that each part is once alike and once different while
   *     the others are alike, as far as the class allows
   */
  public static void check(List<? extends Record> samples) {
    for (Record one : samples) {
      Record again = again(one);
      assertThat(again).isNotSameAs(one).isEqualTo(one).hasSameHashCodeAs(one);
      assertThat(one.equals(one)).isTrue();
      assertThat(one).isNotEqualTo("something else").isNotEqualTo(null);
      for (Record other : samples) {
        assertThat(again.equals(other))
            .as("%s and %s", one, other)
            .isEqualTo(parts(one).equals(parts(other)));
      }
    }
    assertThat(samples.stream().map(Object::hashCode).distinct().count())
        .as("hash codes that tell some apart")
        .isGreaterThan(1);
  }

  private static List<Object> parts(Record one) {
    List<Object> parts = new ArrayList<>();
    try {
      for (RecordComponent part : one.getClass().getRecordComponents()) {
        part.getAccessor().setAccessible(true);
        parts.add(Objects.requireNonNullElse(part.getAccessor().invoke(one), "null"));
      }
    } catch (ReflectiveOperationException e) {
      throw new LinkageError(e.getMessage(), e);
    }
    return parts;
  }

  private static Record again(Record one) {
    try {
      RecordComponent[] components = one.getClass().getRecordComponents();
      Class<?>[] types = new Class<?>[components.length];
      Object[] values = new Object[components.length];
      for (int i = 0; i < components.length; i++) {
        components[i].getAccessor().setAccessible(true);
        types[i] = components[i].getType();
        values[i] = components[i].getAccessor().invoke(one);
      }
      var constructor = one.getClass().getDeclaredConstructor(types);
      constructor.setAccessible(true);
      return constructor.newInstance(values);
    } catch (ReflectiveOperationException e) {
      throw new LinkageError(e.getMessage(), e);
    }
  }
}
