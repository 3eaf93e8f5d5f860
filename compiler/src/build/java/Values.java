import java.util.List;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/** Boxes, and what is made of a value where another type is wanted. */
final class Values implements Opcodes {
  private Values() {}

  /**
   * Makes of a value what is wanted, as the JVM does when it links a lambda.
   *
   * @param is what the verifier takes the value for
   * @param known what the compiler knew it to be
   */
  static void convert(MethodVisitor code, Type is, Type known, Type wanted) {
    boolean fromReference = is.getSort() >= Type.ARRAY;
    boolean toReference = wanted.getSort() >= Type.ARRAY;
    if (fromReference && toReference) {
      if (!wanted.equals(is) && !wanted.getInternalName().equals("java/lang/Object")) {
        code.visitTypeInsn(CHECKCAST, wanted.getInternalName());
      }
    } else if (fromReference) {
      Type value = unboxed(known.getInternalName());
      Type from = value == null ? wanted : value;
      code.visitTypeInsn(CHECKCAST, box(from));
      code.visitMethodInsn(
          INVOKEVIRTUAL, box(from), from.getClassName() + "Value", "()" + from, false);
      widen(code, from, wanted);
    } else if (toReference) {
      code.visitMethodInsn(
          INVOKESTATIC, box(is), "valueOf", "(" + is + ")L" + box(is) + ";", false);
    } else {
      widen(code, is, wanted);
    }
  }

  private static void widen(MethodVisitor code, Type from, Type to) {
    boolean small = from.getSort() <= Type.INT;
    switch (to.getSort()) {
      case Type.LONG -> {
        if (small) {
          code.visitInsn(I2L);
        }
      }
      case Type.FLOAT -> {
        if (small) {
          code.visitInsn(I2F);
        } else if (from.getSort() == Type.LONG) {
          code.visitInsn(L2F);
        }
      }
      case Type.DOUBLE -> {
        if (small) {
          code.visitInsn(I2D);
        } else if (from.getSort() == Type.LONG) {
          code.visitInsn(L2D);
        } else if (from.getSort() == Type.FLOAT) {
          code.visitInsn(F2D);
        }
      }
      default -> {
        // A smaller whole number is one of 32 bits already.
      }
    }
  }

  static String box(Type value) {
    return switch (value.getSort()) {
      case Type.BOOLEAN -> "java/lang/Boolean";
      case Type.CHAR -> "java/lang/Character";
      case Type.BYTE -> "java/lang/Byte";
      case Type.SHORT -> "java/lang/Short";
      case Type.INT -> "java/lang/Integer";
      case Type.FLOAT -> "java/lang/Float";
      case Type.LONG -> "java/lang/Long";
      case Type.DOUBLE -> "java/lang/Double";
      default -> throw new IllegalArgumentException(value.toString());
    };
  }

  /** What a box holds; null for a class that is none. */
  private static Type unboxed(String name) {
    for (Type value :
        List.of(
            Type.BOOLEAN_TYPE,
            Type.CHAR_TYPE,
            Type.BYTE_TYPE,
            Type.SHORT_TYPE,
            Type.INT_TYPE,
            Type.FLOAT_TYPE,
            Type.LONG_TYPE,
            Type.DOUBLE_TYPE)) {
      if (box(value).equals(name)) {
        return value;
      }
    }
    return null;
  }
}
