package tabor.startup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.jar.JarOutputStream;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;

/**
 * The program of the build that writes lambdas and the methods of records out, on a jar of samples:
 * what is left as it was is linked by the JVM, so the JVM is the measure of what is written out.
 */
@Timeout(120)
class StartupClassesTest {
  @TempDir private static Path folder;
  private static Path before;
  private static Path after;

  @BeforeAll
  static void writeOut() throws IOException, InterruptedException {
    Path base = Path.of(System.getProperty("basedir", "."));
    Path classes = folder.resolve("classes");
    Path samples = base.resolve("src/test/resources/tabor/startup/Samples.java.txt");
    Path source = Files.copy(samples, folder.resolve("Samples.java"));
    compile(classes, folder.toFile(), List.of(source));
    makeOld(classes.resolve("startup/samples/Old.class"));
    before = jar("before.jar", classes);
    after = Files.copy(before, folder.resolve("after.jar"));
    writeOut(base, after);
  }

  private static void writeOut(Path base, Path jar) throws IOException, InterruptedException {
    Path program = folder.resolve("program");
    if (!Files.exists(program)) {
      compile(program, pathOf(ClassReader.class), files(base.resolve("src/build/java")));
    }
    Path said = folder.resolve("said");
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                program + File.pathSeparator + pathOf(ClassReader.class),
                "StartupClasses",
                jar.toString())
            .redirectErrorStream(true)
            .redirectOutput(said.toFile())
            .start();
    assertThat(process.waitFor()).as(() -> read(said)).isZero();
  }

  private static void compile(Path to, File uses, List<Path> sources) throws IOException {
    List<String> words = new ArrayList<>(List.of("--release", "17", "-cp", uses.toString()));
    words.addAll(List.of("-d", Files.createDirectory(to).toString()));
    sources.forEach(source -> words.add(source.toString()));
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    assertThat(compiler.run(null, null, null, words.toArray(String[]::new))).isZero();
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).sorted().toList();
    }
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      return e.toString();
    }
  }

  private static File pathOf(Class<?> type) {
    return new File(type.getProtectionDomain().getCodeSource().getLocation().getPath());
  }

  /** As a compiler of its time would have written it: without frames. */
  private static void makeOld(Path file) throws IOException {
    ClassWriter writer = new ClassWriter(0);
    new ClassReader(Files.readAllBytes(file))
        .accept(
            new ClassVisitor(Opcodes.ASM9, writer) {
              @Override
              public void visit(int v, int access, String n, String sig, String sup, String[] ifs) {
                super.visit(Opcodes.V1_5, access, n, sig, sup, ifs);
              }

              @Override
              public void visitNestHost(String host) {
                // Not known then.
              }
            },
            ClassReader.SKIP_FRAMES);
    Files.write(file, writer.toByteArray());
  }

  private static Path jar(String name, Path classes) throws IOException {
    Path jar = folder.resolve(name);
    try (OutputStream out = Files.newOutputStream(jar);
        JarOutputStream made = new JarOutputStream(out)) {
      for (Path file : files(classes)) {
        made.putNextEntry(new JarEntry(classes.relativize(file).toString().replace('\\', '/')));
        Files.copy(file, made);
        made.closeEntry();
      }
    }
    return jar;
  }

  private static Object result(Path jar) throws Exception {
    try (URLClassLoader loader = new URLClassLoader(new URL[] {jar.toUri().toURL()}, null)) {
      return loader.loadClass("startup.samples.Samples").getMethod("all").invoke(null);
    }
  }

  /** What is linked when it is first run, by the class that links it. */
  private static Set<String> linkedAtRunTime(Path jar) throws IOException {
    Set<String> found = new TreeSet<>();
    try (JarFile file = new JarFile(jar.toFile())) {
      for (JarEntry entry : file.stream().toList()) {
        if (entry.getName().endsWith(".class")) {
          try (InputStream in = file.getInputStream(entry)) {
            new ClassReader(in).accept(new Finder(found), 0);
          }
        }
      }
    }
    return found;
  }

  private static final class Finder extends ClassVisitor {
    private final Set<String> found;

    Finder(Set<String> found) {
      super(Opcodes.ASM9);
      this.found = found;
    }

    @Override
    public MethodVisitor visitMethod(int a, String n, String desc, String sig, String[] ex) {
      return new MethodVisitor(Opcodes.ASM9) {
        @Override
        public void visitInvokeDynamicInsn(String name, String site, Handle by, Object... given) {
          found.add(
              by.getOwner().substring(by.getOwner().lastIndexOf('/') + 1) + "." + by.getName());
        }
      };
    }
  }

  @Test
  void whatIsWrittenOutDoesTheSame() throws Exception {
    List<?> expected = (List<?>) result(before);
    // As many as the samples say, so that none is left out by both.
    assertThat(expected).hasSizeGreaterThan(60).doesNotContainNull();
    assertThat(result(after)).isEqualTo(expected);
  }

  @Test
  void nothingOfLambdasAndRecordsIsLinkedAtRunTime() throws IOException {
    assertThat(linkedAtRunTime(before))
        .contains("LambdaMetafactory.metafactory", "ObjectMethods.bootstrap");
    assertThat(linkedAtRunTime(after))
        .doesNotContain("LambdaMetafactory.metafactory", "ObjectMethods.bootstrap")
        // Lambdas that can be serialized stay as they are.
        .contains("LambdaMetafactory.altMetafactory");
  }

  /** Frames are worked out anew, so the class is one that archives take. */
  @Test
  void oldClassesBecomeYounger() throws IOException {
    assertThat(version(before, "startup/samples/Old.class")).isEqualTo(Opcodes.V1_5);
    assertThat(version(after, "startup/samples/Old.class")).isEqualTo(Opcodes.V1_8);
  }

  private static int version(Path jar, String name) throws IOException {
    try (JarFile file = new JarFile(jar.toFile());
        InputStream in = file.getInputStream(file.getEntry(name))) {
      return new ClassReader(in).readUnsignedShort(6);
    }
  }

  /** Once more finds nothing to do; every entry keeps the time that the jar had. */
  @Test
  void theSameJarGivesTheSameBytes() throws Exception {
    Path base = Path.of(System.getProperty("basedir", "."));
    Path again = Files.copy(before, folder.resolve("again.jar"));
    writeOut(base, again);
    assertThat(again).hasSameBinaryContentAs(after);
    writeOut(base, again);
    assertThat(again).hasSameBinaryContentAs(after);
    List<Long> times = new ArrayList<>();
    try (JarFile was = new JarFile(before.toFile());
        JarFile is = new JarFile(after.toFile())) {
      long expected = was.getEntry("startup/samples/Old.class").getTime();
      is.stream().forEach(entry -> times.add(entry.getTime()));
      assertThat(times)
          .isNotEmpty()
          .allSatisfy(t -> assertThat(t).isCloseTo(expected, within(60_000L)));
    }
  }
}
