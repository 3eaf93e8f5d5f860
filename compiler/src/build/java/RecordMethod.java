import java.util.ArrayList;
import java.util.List;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.Handle;
import org.objectweb.asm.Label;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/**
 * One of the three methods that a record gets for nothing. The values are compared in the order of
 * the components.
 */
record RecordMethod(String name, String site, Object[] given) implements Opcodes {
  String ownName() {
    return name + "$$";
  }

  void write(ClassVisitor to, String simpleName) {
    MethodVisitor code =
        to.visitMethod(ACC_PRIVATE | ACC_STATIC | ACC_SYNTHETIC, ownName(), site, null, null);
    code.visitCode();
    switch (name) {
      case "equals" -> equality(code);
      case "hashCode" -> hashCode(code);
      case "toString" -> text(code, simpleName);
      default -> throw new IllegalStateException(name);
    }
    // No value is wider than two, and no more than four are held at once.
    code.visitMaxs(8, 2);
    code.visitEnd();
  }

  private String owner() {
    return ((Type) given[0]).getInternalName();
  }

  private List<Handle> getters() {
    List<Handle> getters = new ArrayList<>();
    for (int i = 2; i < given.length; i++) {
      getters.add((Handle) given[i]);
    }
    return getters;
  }

  private void get(MethodVisitor code, Handle getter) {
    code.visitFieldInsn(GETFIELD, getter.getOwner(), getter.getName(), getter.getDesc());
  }

  private void equality(MethodVisitor code) {
    Label others = new Label();
    Label different = new Label();
    code.visitVarInsn(ALOAD, 0);
    code.visitVarInsn(ALOAD, 1);
    code.visitJumpInsn(IF_ACMPNE, others);
    code.visitInsn(ICONST_1);
    code.visitInsn(IRETURN);
    code.visitLabel(others);
    code.visitFrame(F_SAME, 0, null, 0, null);
    code.visitVarInsn(ALOAD, 1);
    code.visitTypeInsn(INSTANCEOF, owner());
    code.visitJumpInsn(IFEQ, different);
    for (Handle getter : getters()) {
      code.visitVarInsn(ALOAD, 0);
      get(code, getter);
      code.visitVarInsn(ALOAD, 1);
      code.visitTypeInsn(CHECKCAST, owner());
      get(code, getter);
      compare(code, Type.getType(getter.getDesc()), different);
    }
    code.visitInsn(ICONST_1);
    code.visitInsn(IRETURN);
    code.visitLabel(different);
    code.visitFrame(F_SAME, 0, null, 0, null);
    code.visitInsn(ICONST_0);
    code.visitInsn(IRETURN);
  }

  private static void compare(MethodVisitor code, Type type, Label different) {
    switch (type.getSort()) {
      case Type.LONG -> {
        code.visitInsn(LCMP);
        code.visitJumpInsn(IFNE, different);
      }
      case Type.FLOAT, Type.DOUBLE -> {
        code.visitMethodInsn(
            INVOKESTATIC, Values.box(type), "compare", "(" + type + type + ")I", false);
        code.visitJumpInsn(IFNE, different);
      }
      case Type.OBJECT, Type.ARRAY -> {
        code.visitMethodInsn(
            INVOKESTATIC,
            "java/util/Objects",
            "equals",
            "(Ljava/lang/Object;Ljava/lang/Object;)Z",
            false);
        code.visitJumpInsn(IFEQ, different);
      }
      default -> code.visitJumpInsn(IF_ICMPNE, different);
    }
  }

  private void hashCode(MethodVisitor code) {
    code.visitInsn(ICONST_0);
    for (Handle getter : getters()) {
      Type type = Type.getType(getter.getDesc());
      code.visitIntInsn(BIPUSH, 31);
      code.visitInsn(IMUL);
      code.visitVarInsn(ALOAD, 0);
      get(code, getter);
      boolean reference = type.getSort() >= Type.ARRAY;
      code.visitMethodInsn(
          INVOKESTATIC,
          reference ? "java/util/Objects" : Values.box(type),
          "hashCode",
          reference ? "(Ljava/lang/Object;)I" : "(" + type + ")I",
          false);
      code.visitInsn(IADD);
    }
    code.visitInsn(IRETURN);
  }

  private void text(MethodVisitor code, String simpleName) {
    String builder = "java/lang/StringBuilder";
    code.visitTypeInsn(NEW, builder);
    code.visitInsn(DUP);
    code.visitMethodInsn(INVOKESPECIAL, builder, "<init>", "()V", false);
    String[] names = ((String) given[1]).split(";");
    String before = simpleName + "[";
    for (int i = 0; i < getters().size(); i++) {
      Handle getter = getters().get(i);
      append(code, before + names[i] + "=");
      code.visitVarInsn(ALOAD, 0);
      get(code, getter);
      Type type = Type.getType(getter.getDesc());
      String of =
          switch (type.getSort()) {
            case Type.BYTE, Type.SHORT -> "I";
            case Type.OBJECT, Type.ARRAY -> "Ljava/lang/Object;";
            default -> type.getDescriptor();
          };
      code.visitMethodInsn(
          INVOKEVIRTUAL, builder, "append", "(" + of + ")L" + builder + ";", false);
      before = ", ";
    }
    append(code, getters().isEmpty() ? before + "]" : "]");
    code.visitMethodInsn(INVOKEVIRTUAL, builder, "toString", "()Ljava/lang/String;", false);
    code.visitInsn(ARETURN);
  }

  private static void append(MethodVisitor code, String text) {
    code.visitLdcInsn(text);
    code.visitMethodInsn(
        INVOKEVIRTUAL,
        "java/lang/StringBuilder",
        "append",
        "(Ljava/lang/String;)Ljava/lang/StringBuilder;",
        false);
  }
}
