package org.brewchem.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import org.dflib.jjava.jupyter.kernel.display.DisplayData;
import org.dflib.jjava.jupyter.kernel.display.mime.MIMEType;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The kernel without Jupyter; .ci/run has it run the notebooks where Jupyter can be installed. */
class BrewchemKernelTest {

  private static final BrewchemKernel KERNEL = BrewchemKernel.create();

  @TempDir private Path folder;

  @AfterAll
  static void end() {
    KERNEL.onShutdown(false);
  }

  @Test
  void aCellShowsItsLastExpressionAndRemembers() {
    assertNull(KERNEL.evalRaw("var acidity = gPerL(1.8);"));
    DisplayData shown = assertInstanceOf(DisplayData.class, KERNEL.evalRaw("acidity"));
    assertEquals("1.8 g/L", shown.getData(MIMEType.TEXT_PLAIN));
  }

  @Test
  void aPictureIsShownAsOne() {
    DisplayData shown =
        assertInstanceOf(
            DisplayData.class, KERNEL.evalRaw("Picture.ofBars(\"Invented\", \"g\").bar(\"a\", 1)"));
    byte[] png = Base64.getDecoder().decode(String.valueOf(shown.getData(MIMEType.IMAGE_PNG)));
    assertEquals("PNG", new String(png, 1, 3, StandardCharsets.US_ASCII));
    assertEquals("Invented; a", shown.getData(MIMEType.TEXT_PLAIN));
  }

  @Test
  void aCellThatFailsSaysWhy() {
    RuntimeException refused =
        assertThrows(RuntimeException.class, () -> KERNEL.evalRaw("mgPerL(-3)"));
    assertTrue(KERNEL.formatError(refused).get(0).contains("-3"), refused.getMessage());
    RuntimeException unknown =
        assertThrows(RuntimeException.class, () -> KERNEL.evalRaw("int i = nothing;"));
    assertTrue(KERNEL.formatError(unknown).get(0).startsWith("does not compile"));
  }

  @Test
  void jupyterIsToldHowToStartIt() throws IOException {
    Path file = BrewchemKernel.writeSpec(Path.of("a.jar"), folder.resolve("new"));
    JsonObject spec = JsonParser.parseString(Files.readString(file)).getAsJsonObject();
    List<String> command =
        spec.getAsJsonArray("argv").asList().stream().map(part -> part.getAsString()).toList();
    assertEquals(List.of("-jar", "a.jar", "{connection_file}"), command.subList(2, 5));
    assertTrue(Files.exists(Path.of(command.get(0))), command.get(0));
    assertEquals("java", spec.get("language").getAsString());
  }
}
