package org.brewchem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.brewchem.figure.Code;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The page of errors lists every exception and every code of a notice, and no other. */
class ErrorsPageTest {

  private static final Pattern CODE =
      Pattern.compile("\\| `([A-Z][A-Z_0-9]+)` \\| (\\w+) \\| \\S.*");

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("org.brewchem");

  private static List<String> page;

  @BeforeAll
  static void read() throws IOException {
    page = Files.readAllLines(Path.of("../docs/errors.md"));
  }

  @Test
  void everyCodeStandsUnderItsEnumWithItsSeverity() {
    Set<String> expected = new TreeSet<>();
    for (JavaClass each : CLASSES) {
      if (each.isEnum() && each.isAssignableTo(Code.class)) {
        for (Object constant : each.reflect().getEnumConstants()) {
          Code code = (Code) constant;
          expected.add(
              each.getSimpleName()
                  + " "
                  + code.name()
                  + " "
                  + code.severity().name().toLowerCase(Locale.ROOT));
        }
      }
    }
    Set<String> listed = new TreeSet<>();
    String heading = "";
    for (String line : page) {
      if (line.startsWith("### ")) {
        heading = line.substring(4);
      }
      Matcher row = CODE.matcher(line);
      if (row.matches() && heading.endsWith("Code")) {
        assertTrue(listed.add(heading + " " + row.group(1) + " " + row.group(2)), line);
      }
    }
    assertTrue(expected.size() > 80, expected::toString);
    assertEquals(expected, listed);
  }

  @Test
  void everyPublicExceptionIsListed() {
    Set<String> missing = new TreeSet<>();
    for (JavaClass each : CLASSES) {
      boolean isPublic =
          each.isAssignableTo(RuntimeException.class)
              && !each.getPackageName().endsWith(".internal")
              && java.lang.reflect.Modifier.isPublic(each.reflect().getModifiers());
      if (isPublic
          && page.stream()
              .noneMatch(line -> line.startsWith("| `" + each.getSimpleName() + "` |"))) {
        missing.add(each.getName());
      }
    }
    assertEquals(Set.of(), missing);
  }
}
