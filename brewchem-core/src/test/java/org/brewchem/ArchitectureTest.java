package org.brewchem;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.library.Architectures.LayeredArchitecture;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ArchitectureTest {

  /** The ground below the rooms: the failures that all of them throw. */
  private static final String GROUND = "org.brewchem";

  /** The rooms of the house from the ground up; each imports only what stands before it. */
  private static final List<String> ROOMS =
      List.of(
          "internal",
          "quantity",
          "units",
          "uncertainty",
          "figure",
          "substance",
          "solution",
          "buffer",
          "titration",
          "treatment",
          "water",
          "mash",
          "beer",
          "plan",
          "quality",
          "table");

  private static final JavaClasses CORE =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("org.brewchem");

  @Test
  void eachRoomImportsOnlyTheRoomsBeforeIt() {
    LayeredArchitecture rooms =
        layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .withOptionalLayers(true)
            .layer(GROUND)
            .definedBy(GROUND)
            .whereLayer(GROUND)
            .mayNotAccessAnyLayer();
    for (String room : ROOMS) {
      rooms = rooms.layer(room).definedBy("org.brewchem." + room + "..");
    }
    for (int i = 0; i < ROOMS.size(); i++) {
      List<String> before = new ArrayList<>(ROOMS.subList(0, i));
      before.add(GROUND);
      rooms = rooms.whereLayer(ROOMS.get(i)).mayOnlyAccessLayers(before.toArray(String[]::new));
    }
    rooms.check(CORE);
  }

  @Test
  void everyClassLivesInARoom() {
    List<String> packages = new ArrayList<>(List.of(GROUND));
    ROOMS.forEach(room -> packages.add("org.brewchem." + room + ".."));
    classes().should().resideInAnyPackage(packages.toArray(String[]::new)).check(CORE);
  }

  @Test
  void onlyUnitsKnowsTheUnitsLibrary() {
    noClasses()
        .that()
        .resideOutsideOfPackage("org.brewchem.units..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("tech.units..", "tech.uom..", "javax.measure..")
        .check(CORE);
  }

  @Test
  void onlyTheOneRootSearchKnowsTheUnivariateSolvers() {
    noClasses()
        .that()
        .doNotHaveFullyQualifiedName("org.brewchem.internal.Roots")
        .and()
        .doNotHaveFullyQualifiedName("org.brewchem.internal.Roots$Counted")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("org.apache.commons.math3.analysis..")
        .check(CORE);
  }

  @Test
  void coreTouchesNoFilesNetworkOrLog() {
    noClasses()
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("java.net..", "java.nio.file..", "java.util.logging..", "java.sql..")
        .orShould()
        .dependOnClassesThat()
        .belongToAnyOf(
            java.io.File.class,
            java.io.FileInputStream.class,
            java.io.FileOutputStream.class,
            java.io.FileReader.class,
            java.io.FileWriter.class,
            java.io.RandomAccessFile.class,
            System.Logger.class)
        .check(CORE);
  }

  @Test
  void coreWritesToNoStandardStreamAndReadsNoSystemSetting() {
    noClasses()
        .should()
        .accessField(System.class, "out")
        .orShould()
        .accessField(System.class, "err")
        .orShould()
        .accessField(System.class, "in")
        .orShould()
        .callMethod(System.class, "getProperty", String.class)
        .orShould()
        .callMethod(System.class, "getProperty", String.class, String.class)
        .orShould()
        .callMethod(System.class, "setProperty", String.class, String.class)
        .orShould()
        .callMethod(System.class, "getenv", String.class)
        .orShould()
        .callMethod(System.class, "exit", int.class)
        .orShould()
        .callMethod(Throwable.class, "printStackTrace")
        .check(CORE);
  }

  /** Formatting without a locale is refused by Error Prone when the core is compiled. */
  @Test
  void coreAsksNeitherTheDefaultLocaleNorChance() {
    noClasses()
        .should()
        .callMethod(Locale.class, "getDefault")
        .orShould()
        .callMethod(Locale.class, "getDefault", Locale.Category.class)
        .orShould()
        .callMethod(Math.class, "random")
        .orShould()
        .callConstructor(Random.class)
        .check(CORE);
  }
}
