import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/**
 * Goes through a jar and writes out, as ordinary classes and methods, what the JVM would put
 * together anew at each start: lambdas and method references, and equality, hash codes and texts of
 * records. Class files of an age that archives of classes do not take become those of Java 8, and a
 * library that sets drawing up before it writes a text no longer does. Fonts and texts are stored
 * without packing. What the program does stays the same.
 *
 * <p>The build runs it on each jar that is started. What it is worth stands in docs/performance.md.
 */
final class StartupClasses implements Opcodes {
  private static final String LAMBDAS = "java/lang/invoke/LambdaMetafactory";
  private static final String RECORDS = "java/lang/runtime/ObjectMethods";

  /** Draws a picture of one dot before it is first used, to get around a fault of Java 6. */
  private static final String DRAWS = "org/apache/pdfbox/pdmodel/PDDocument";

  /** The jar as it was, in its order. */
  private final Map<String, ZipEntry> entries = new LinkedHashMap<>();

  private final Map<String, byte[]> contents = new LinkedHashMap<>();

  /** Classes that are written out, by their file's name. */
  private final Map<String, byte[]> made = new LinkedHashMap<>();

  /**
   * By the host of a nest, which classes become members of it: they call private methods of the
   * others.
   */
  private final Map<String, List<String>> members = new LinkedHashMap<>();

  private StartupClasses() {}

  /** Argument: the jar, which is replaced. */
  public static void main(String[] args) throws IOException {
    Path jar = Path.of(args[0]);
    StartupClasses classes = new StartupClasses();
    classes.read(jar);
    classes.contents.replaceAll(
        (name, bytes) -> isClass(name) ? classes.withoutCallSites(bytes) : bytes);
    classes.members.forEach(classes::addToNest);
    Path part = jar.resolveSibling(jar.getFileName() + ".part");
    classes.write(part);
    Files.move(part, jar, StandardCopyOption.REPLACE_EXISTING);
  }

  private static boolean isClass(String name) {
    return name.endsWith(".class") && !name.startsWith("META-INF/");
  }

  private void read(Path jar) throws IOException {
    try (ZipFile file = new ZipFile(jar.toFile())) {
      for (ZipEntry entry : (Iterable<ZipEntry>) file.stream().map(e -> (ZipEntry) e)::iterator) {
        try (InputStream in = file.getInputStream(entry)) {
          entries.put(entry.getName(), entry);
          contents.put(entry.getName(), in.readAllBytes());
        }
      }
    }
  }

  private void write(Path jar) throws IOException {
    try (ZipOutputStream out =
        new ZipOutputStream(new BufferedOutputStream(Files.newOutputStream(jar)))) {
      // The same time for all, as the jar had it: the same bytes whenever and wherever it is built.
      ZipEntry first = entries.values().iterator().next();
      for (Map<String, byte[]> all : List.of(contents, made)) {
        for (Map.Entry<String, byte[]> file : all.entrySet()) {
          ZipEntry entry = new ZipEntry(file.getKey());
          entry.setTimeLocal(entries.getOrDefault(file.getKey(), first).getTimeLocal());
          if (isReadWhole(file.getKey())) {
            store(entry, file.getValue());
          }
          out.putNextEntry(entry);
          out.write(file.getValue());
          out.closeEntry();
        }
      }
    }
  }

  /**
   * Classes come from the archive, what else Tabor reads comes from here: unpacking takes longer
   * than reading.
   */
  private static boolean isReadWhole(String name) {
    return name.endsWith(".ttf")
        || name.startsWith("tabor/") && !isClass(name) && !name.endsWith("/");
  }

  private static void store(ZipEntry entry, byte[] bytes) {
    CRC32 sum = new CRC32();
    sum.update(bytes);
    entry.setMethod(ZipEntry.STORED);
    entry.setSize(bytes.length);
    entry.setCrc(sum.getValue());
  }

  private byte[] withoutCallSites(byte[] bytes) {
    ClassReader reader = new ClassReader(bytes);
    int version = reader.readUnsignedShort(6);
    if (version < V1_6) {
      ClassWriter writer = new FramesWriter();
      reader.accept(
          new ClassVisitor(ASM9, writer) {
            @Override
            public void visit(int v, int access, String n, String sig, String sup, String[] ifs) {
              super.visit(V1_8, access, n, sig, sup, ifs);
            }
          },
          0);
      return writer.toByteArray();
    }
    ClassWriter writer = new ClassWriter(reader, 0);
    Rewriter rewriter = new Rewriter(writer);
    reader.accept(rewriter, 0);
    return rewriter.changed ? writer.toByteArray() : bytes;
  }

  private void addToNest(String host, List<String> classes) {
    ClassReader reader = new ClassReader(contents.get(host + ".class"));
    ClassWriter writer = new ClassWriter(reader, 0);
    reader.accept(
        new ClassVisitor(ASM9, writer) {
          @Override
          public void visitEnd() {
            classes.forEach(this::visitNestMember);
            super.visitEnd();
          }
        },
        0);
    contents.put(host + ".class", writer.toByteArray());
  }

  /**
   * Replaces each call site that is linked at run time with a call of what is written out for it.
   */
  private final class Rewriter extends ClassVisitor {
    private final List<RecordMethod> records = new ArrayList<>();
    private String self = "";
    private String host = "";
    private String simpleName = "";
    private int version;
    private boolean isInterface;
    private boolean changed;
    private int lambdas;

    Rewriter(ClassVisitor next) {
      super(ASM9, next);
    }

    @Override
    public void visit(int v, int access, String name, String sig, String sup, String[] ifs) {
      // Nests are known since Java 11; a class that has none is one by itself.
      version = Math.max(v, V11);
      self = name;
      host = name;
      simpleName = name.substring(name.lastIndexOf('/') + 1);
      isInterface = (access & ACC_INTERFACE) != 0;
      super.visit(version, access, name, sig, sup, ifs);
    }

    @Override
    public void visitNestHost(String name) {
      host = name;
      super.visitNestHost(name);
    }

    @Override
    public void visitInnerClass(String name, String outer, String inner, int access) {
      if (name.equals(self) && inner != null) {
        simpleName = inner;
      }
      super.visitInnerClass(name, outer, inner, access);
    }

    @Override
    public MethodVisitor visitMethod(int a, String n, String desc, String sig, String[] ex) {
      MethodVisitor next = super.visitMethod(a, n, desc, sig, ex);
      if (self.equals(DRAWS) && n.equals("<clinit>")) {
        changed = true;
        return new DrawsNothing(next);
      }
      return new MethodVisitor(ASM9, next) {
        @Override
        public void visitInvokeDynamicInsn(String name, String site, Handle by, Object... given) {
          if (by.getOwner().equals(LAMBDAS) && by.getName().equals("metafactory")) {
            visitMethodInsn(INVOKESTATIC, lambda(name, site, given), "of", site, false);
            changed = true;
          } else if (by.getOwner().equals(RECORDS)) {
            RecordMethod method = new RecordMethod(name, site, given);
            records.add(method);
            visitMethodInsn(INVOKESTATIC, self, method.ownName(), site, isInterface);
            changed = true;
          } else {
            super.visitInvokeDynamicInsn(name, site, by, given);
          }
        }
      };
    }

    @Override
    public void visitEnd() {
      for (RecordMethod method : records) {
        method.write(cv, simpleName);
      }
      super.visitEnd();
    }

    private String lambda(String name, String site, Object[] given) {
      String own = self + "$$" + ++lambdas;
      made.put(own + ".class", new LambdaClass(own, host, version, name, site, given).bytes());
      members.computeIfAbsent(host, h -> new ArrayList<>()).add(own);
      return own;
    }
  }

  /** Takes out the calls that set the drawing of pictures up; what they are given is dropped. */
  private static final class DrawsNothing extends MethodVisitor {
    DrawsNothing(MethodVisitor next) {
      super(ASM9, next);
    }

    @Override
    public void visitMethodInsn(int how, String of, String name, String desc, boolean itf) {
      if (name.equals("createBandedRaster") || name.equals("toRGBImage")) {
        int given = Type.getArgumentsAndReturnSizes(desc) >> 2;
        for (int i = how == INVOKESTATIC ? 1 : 0; i < given; i++) {
          visitInsn(POP);
        }
        visitInsn(ACONST_NULL);
      } else {
        super.visitMethodInsn(how, of, name, desc, itf);
      }
    }
  }

  /** Works frames out from the classes of the jar, without loading one. */
  private final class FramesWriter extends ClassWriter {
    FramesWriter() {
      super(COMPUTE_FRAMES);
    }

    @Override
    protected String getCommonSuperClass(String one, String other) {
      Set<String> above = new HashSet<>();
      for (String name = one; name != null; name = above(name)) {
        above.add(name);
      }
      for (String name = other; name != null; name = above(name)) {
        if (above.contains(name)) {
          return name;
        }
      }
      return "java/lang/Object";
    }

    private String above(String name) {
      byte[] bytes = contents.get(name + ".class");
      try {
        ClassReader reader = bytes == null ? new ClassReader(name) : new ClassReader(bytes);
        boolean isInterface = (reader.getAccess() & ACC_INTERFACE) != 0;
        return isInterface ? null : reader.getSuperName();
      } catch (IOException missing) {
        // What is neither in the jar nor in Java is no more than an object.
        return null;
      }
    }
  }
}
