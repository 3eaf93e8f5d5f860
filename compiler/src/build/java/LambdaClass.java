import java.util.ArrayList;
import java.util.List;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/**
 * A lambda or method reference as a class: a field for each value that it holds, and the one
 * method.
 */
record LambdaClass(String own, String host, int version, String name, String site, Object[] given)
    implements Opcodes {
  byte[] bytes() {
    ClassWriter to = new ClassWriter(ClassWriter.COMPUTE_MAXS);
    Type type = Type.getReturnType(site);
    Type[] held = Type.getArgumentTypes(site);
    to.visit(
        version,
        ACC_FINAL | ACC_SUPER | ACC_SYNTHETIC,
        own,
        null,
        "java/lang/Object",
        new String[] {type.getInternalName()});
    to.visitNestHost(host);
    for (int i = 0; i < held.length; i++) {
      to.visitField(ACC_PRIVATE | ACC_FINAL, "a" + i, held[i].getDescriptor(), null, null)
          .visitEnd();
    }
    constructor(to, held);
    if (held.length == 0) {
      one(to);
    }
    factory(to, held);
    method(to, held);
    to.visitEnd();
    return to.toByteArray();
  }

  private void constructor(ClassVisitor to, Type[] held) {
    MethodVisitor code = to.visitMethod(ACC_PRIVATE, "<init>", constructor(held), null, null);
    code.visitCode();
    code.visitVarInsn(ALOAD, 0);
    code.visitMethodInsn(INVOKESPECIAL, "java/lang/Object", "<init>", "()V", false);
    int at = 1;
    for (int i = 0; i < held.length; i++) {
      code.visitVarInsn(ALOAD, 0);
      code.visitVarInsn(held[i].getOpcode(ILOAD), at);
      code.visitFieldInsn(PUTFIELD, own, "a" + i, held[i].getDescriptor());
      at += held[i].getSize();
    }
    end(code, RETURN);
  }

  private static String constructor(Type[] held) {
    return Type.getMethodDescriptor(Type.VOID_TYPE, held);
  }

  /** What holds nothing is made once. */
  private void one(ClassVisitor to) {
    String field = "L" + own + ";";
    to.visitField(ACC_PRIVATE | ACC_STATIC | ACC_FINAL, "ONE", field, null, null).visitEnd();
    MethodVisitor code = to.visitMethod(ACC_STATIC, "<clinit>", "()V", null, null);
    code.visitCode();
    code.visitTypeInsn(NEW, own);
    code.visitInsn(DUP);
    code.visitMethodInsn(INVOKESPECIAL, own, "<init>", "()V", false);
    code.visitFieldInsn(PUTSTATIC, own, "ONE", field);
    end(code, RETURN);
  }

  private void factory(ClassVisitor to, Type[] held) {
    MethodVisitor code = to.visitMethod(ACC_STATIC, "of", site, null, null);
    code.visitCode();
    if (held.length == 0) {
      code.visitFieldInsn(GETSTATIC, own, "ONE", "L" + own + ";");
    } else {
      code.visitTypeInsn(NEW, own);
      code.visitInsn(DUP);
      int at = 0;
      for (Type value : held) {
        code.visitVarInsn(value.getOpcode(ILOAD), at);
        at += value.getSize();
      }
      code.visitMethodInsn(INVOKESPECIAL, own, "<init>", constructor(held), false);
    }
    end(code, ARETURN);
  }

  private void method(ClassVisitor to, Type[] held) {
    Type erased = (Type) given[0];
    Handle does = (Handle) given[1];
    Type exact = (Type) given[2];
    MethodVisitor code = to.visitMethod(ACC_PUBLIC, name, erased.getDescriptor(), null, null);
    code.visitCode();
    boolean makes = does.getTag() == H_NEWINVOKESPECIAL;
    if (makes) {
      code.visitTypeInsn(NEW, does.getOwner());
      code.visitInsn(DUP);
    }
    List<Type> wanted = new ArrayList<>(List.of(Type.getArgumentTypes(does.getDesc())));
    if (!makes && does.getTag() != H_INVOKESTATIC) {
      wanted.add(0, Type.getObjectType(does.getOwner()));
    }
    for (int i = 0; i < held.length; i++) {
      code.visitVarInsn(ALOAD, 0);
      code.visitFieldInsn(GETFIELD, own, "a" + i, held[i].getDescriptor());
      Values.convert(code, held[i], held[i], wanted.get(i));
    }
    Type[] loose = erased.getArgumentTypes();
    Type[] tight = exact.getArgumentTypes();
    int at = 1;
    for (int i = 0; i < loose.length; i++) {
      code.visitVarInsn(loose[i].getOpcode(ILOAD), at);
      Values.convert(code, loose[i], tight[i], wanted.get(held.length + i));
      at += loose[i].getSize();
    }
    call(code, does);
    Type result = makes ? Type.getObjectType(does.getOwner()) : Type.getReturnType(does.getDesc());
    Type back = erased.getReturnType();
    if (back == Type.VOID_TYPE) {
      if (result != Type.VOID_TYPE) {
        code.visitInsn(result.getSize() == 2 ? POP2 : POP);
      }
    } else {
      Values.convert(code, result, result, back);
    }
    end(code, back.getOpcode(IRETURN));
  }

  private static void call(MethodVisitor code, Handle does) {
    int how =
        switch (does.getTag()) {
          case H_INVOKESTATIC -> INVOKESTATIC;
          case H_NEWINVOKESPECIAL -> INVOKESPECIAL;
          // A private method of a nest is called like any other of its class.
          default -> does.isInterface() ? INVOKEINTERFACE : INVOKEVIRTUAL;
        };
    code.visitMethodInsn(how, does.getOwner(), does.getName(), does.getDesc(), does.isInterface());
  }

  private static void end(MethodVisitor code, int how) {
    code.visitInsn(how);
    code.visitMaxs(0, 0);
    code.visitEnd();
  }
}
