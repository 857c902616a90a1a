package org.brewchem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A program with a module descriptor can name the packaged core, compile against it and run. */
class NamedModuleIT {

  private static final List<String> DEPENDENCIES =
      List.of(
          "jspecify", "commons-math3", "indriya", "unit-api", "uom-lib-common", "jakarta.inject");

  @Test
  void aNamedModuleRequiresTheCore(@TempDir Path folder) throws Exception {
    Path descriptor = folder.resolve("module-info.java");
    Files.writeString(descriptor, "module demo { requires org.brewchem.core; }");
    Path program = folder.resolve("Demo.java");
    Files.writeString(
        program,
        """
        package demo;
        class Demo {
          public static void main(String[] arguments) {
            System.out.print(org.brewchem.quantity.PH.of(4.25).value());
          }
        }
        """);
    String modulePath =
        Stream.concat(
                Stream.of(Objects.requireNonNull(System.getProperty("core.jar"))), dependencies())
            .collect(Collectors.joining(File.pathSeparator));

    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    StringWriter messages = new StringWriter();
    try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
      List<String> options =
          List.of("--release", "17", "--module-path", modulePath, "-d", folder.toString());
      assertTrue(
          compiler
              .getTask(
                  messages,
                  files,
                  null,
                  options,
                  null,
                  files.getJavaFileObjects(descriptor, program))
              .call(),
          messages::toString);
    }

    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "--module-path",
                modulePath + File.pathSeparator + folder,
                "--module",
                "demo/demo.Demo")
            .redirectErrorStream(true)
            .start();
    assertEquals("4.25", new String(process.getInputStream().readAllBytes()));
    assertEquals(0, process.waitFor());
  }

  @Test
  void theJarHoldsItsLicenceAndTheLibraryOnly() throws Exception {
    try (JarFile jar = new JarFile(Objects.requireNonNull(System.getProperty("core.jar")))) {
      assertNotNull(jar.getEntry("META-INF/LICENSE"));
      assertNotNull(jar.getEntry("META-INF/NOTICE"));
      assertEquals(
          List.of(),
          jar.stream()
              .map(JarEntry::getName)
              .filter(name -> !name.endsWith("/"))
              .filter(name -> !name.startsWith("META-INF/"))
              .filter(name -> !name.matches("org/brewchem/.*[.](class|csv)") || isOfATest(name))
              .toList());
    }
  }

  private static boolean isOfATest(String name) {
    return name.matches(".*(Test|IT)([$].*)?[.]class") && !name.endsWith("GrubbsTest.class");
  }

  private static Stream<String> dependencies() {
    return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
        .filter(
            entry ->
                DEPENDENCIES.stream()
                    .anyMatch(name -> Path.of(entry).getFileName().toString().startsWith(name)));
  }
}
