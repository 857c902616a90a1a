package org.brewchem.examples.service;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.hL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.ConnectException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Future;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Answer;
import org.brewchem.figure.StructuredAnswer;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Reagent;
import org.brewchem.treatment.Dose;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Asks the service by real requests. Waters and beers are invented. */
class ServiceTest {

  private static final String WATER =
      """
      {"calcium": {"number": 92, "unit": "mg/L", "standardUncertainty": 2},
       "magnesium": {"number": 11, "unit": "mg/L"},
       "sulfate": {"number": 0.045, "unit": "g/L"},
       "chloride": {"number": 31, "unit": "mg/L"},
       "alkalinity": {"number": 215, "unit": "mg/L as CaCO3", "standardUncertainty": 3},
       "pH": {"number": 7.4, "standardUncertainty": 0.05}}
      """;

  private static final String DOSE =
      """
      {"beer": {"pH": {"number": 4.38, "standardUncertainty": 0.02},
                "acidity": {"number": 1.72, "unit": "g/L as lactic acid, to pH 8.2",
                            "standardUncertainty": 0.01}},
       "reagent": {"acid": "lactic acid", "massPercent": 80, "relativeStandardUncertainty": 0.03},
       "target": {"acidity": {"number": 2.0, "unit": "g/L as lactic acid, to pH 8.2"}},
       "volume": {"number": 20, "unit": "hL"}}
      """;

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final HttpClient HTTP = HttpClient.newHttpClient();

  private static Service service;

  @BeforeAll
  static void start() throws IOException {
    service = Service.start(0);
  }

  @AfterAll
  static void stop() {
    service.close();
  }

  @Test
  void answersTheFiguresOfAWater() throws Exception {
    Water water =
        WaterReport.reported()
            .calcium(mgPerL(92), mgPerL(2))
            .magnesium(mgPerL(11))
            .sulfate(mgPerL(45))
            .chloride(mgPerL(31))
            .alkalinityAsCaCO3(mgPerL(215), mgPerL(3))
            .pH(pH(7.4), 0.05)
            .build()
            .water();
    HttpResponse<String> response = post("/water", WATER);
    assertEquals(200, response.statusCode(), response.body());
    assertEquals("application/json", response.headers().firstValue("Content-Type").orElse(""));
    JsonNode answer = JSON.readTree(response.body());
    assertStructured(water.pH(), answer.at("/figures/0"));
    assertStructured(water.totalHardness(), answer.at("/figures/3"));
    assertStructured(water.residualAlkalinity(), answer.at("/figures/4"));
    assertStructured(water.sulfateToChloride(), answer.at("/figures/5"));
    assertTrue(answer.at("/notices").toString().contains("IONS_MISSING"), response.body());
  }

  @Test
  void whatIsNotReportedIsUnknownAndNotZero() throws Exception {
    HttpResponse<String> response = post("/water", "{}");
    assertEquals(200, response.statusCode(), response.body());
    JsonNode calcium = JSON.readTree(response.body()).at("/figures/1");
    assertFalse(calcium.has("number"));
    assertEquals("calcium is not reported", calcium.at("/whyUnknown/0").asText());
  }

  @Test
  void answersADoseWithWhatItMakesOfTheBeerAndWhatToMind() throws Exception {
    Beer beer =
        Beer.of(pH(4.38), acidity(gPerL(1.72), Acid.LACTIC, pH(8.2)))
            .withStandardUncertaintyOfPH(0.02)
            .withStandardUncertaintyOfAcidity(acidity(gPerL(0.01), Acid.LACTIC, pH(8.2)));
    Dose<Beer> dose =
        Dose.of(beer, Reagent.of(Acid.LACTIC, massPercent(80)).withAssayUncertainty(0.03))
            .to(acidity(gPerL(2), Acid.LACTIC, pH(8.2)));
    HttpResponse<String> response = post("/beer-dose", DOSE);
    assertEquals(200, response.statusCode(), response.body());
    JsonNode answer = JSON.readTree(response.body());
    assertStructured(dose.answer(Dose.MASS), answer.at("/dose/1"));
    assertStructured(dose.after().pH(), answer.at("/after/0"));
    assertStructured(dose.after().titratableAcidity(), answer.at("/after/1"));
    assertTrue(answer.at("/after/0/standardUncertainty").doubleValue() > 0.01);
    assertEquals(
        dose.into(hL(20)).volume().orElseThrow().inMillilitres(),
        answer.at("/measureOut/volume/number").doubleValue());
    assertEquals(
        dose.cautions().stream().map(caution -> caution.text()).distinct().toList(),
        JSON.convertValue(answer.at("/cautions"), new TypeReference<List<String>>() {}));
    assertTrue(answer.at("/notices").toString().contains("RESTS_ON_STAND_IN"), response.body());
  }

  @Test
  void dosesToAPH() throws Exception {
    HttpResponse<String> response =
        post(
            "/beer-dose",
            DOSE.replaceAll("\"target\".*", "\"target\": {\"pH\": {\"number\": 4.25}},"));
    assertEquals(200, response.statusCode(), response.body());
    assertEquals(4.25, JSON.readTree(response.body()).at("/after/0/number").doubleValue(), 1e-9);
  }

  @Test
  void badInputIsToldByItsField() throws Exception {
    assertRefused("/water", WATER.replace("92", "-3"), "calcium.number", "-3.0", "0 or more");
    assertRefused(
        "/water", WATER.replace("92", "1e999"), "calcium.number", "Infinity", "at most 1e9");
    assertRefused("/water", WATER.replace("92", "\"92\""), "calcium.number", "92", "a number");
    assertRefused(
        "/water",
        WATER.replace("as CaCO3", "as chalk"),
        "alkalinity.unit",
        "mg/L as chalk",
        "mg/L as HCO3-");
    assertRefused(
        "/water", WATER.replace("0.05", "-0.05"), "pH.standardUncertainty", "-0.05", "0 or more");
    assertRefused("/water", WATER.replace("7.4", "74"), "pH.number", "74", "");
    assertRefused("/water", WATER.replace("calcium", "calzium"), "calzium", "", "calcium");
    assertRefused(
        "/water",
        WATER.replace("{\"number\": 31", "{\"numbre\": 31"),
        "chloride.number",
        "",
        "a number");
    assertRefused("/water", "{\"calcium\": 92}", "calcium", "92", "an object");
    assertRefused("/beer-dose", "{}", "beer", "", "an object");
    assertRefused(
        "/beer-dose",
        DOSE.replace("lactic acid\", \"mass", "lactid acid\", \"mass"),
        "reagent.acid",
        "lactid acid",
        "");
    assertRefused(
        "/beer-dose", DOSE.replace("80", "180"), "reagent.massPercent", "180", "0 to 100");
    assertRefused("/beer-dose", DOSE.replace("2.0", "1.2"), "target", "", "");
    assertRefused("/beer-dose", DOSE.replace("20,", "0,"), "volume", "0", "more than 0");
    assertRefused("/beer-dose", DOSE.replace("4.38", "8.9"), "beer", "", "");
    assertRefused("/beer-dose", DOSE.replace("1.72", "0"), "beer", "", "");
  }

  @Test
  void whatIsNoJsonIsRefused() throws Exception {
    for (String body :
        List.of(
            "",
            "{",
            "[]",
            "{\"calcium\": }",
            WATER + "x",
            "{\"pH\": 7, \"pH\": 8}",
            "\u0000",
            "[".repeat(5000))) {
      HttpResponse<String> response = post("/water", body);
      assertEquals(400, response.statusCode(), body);
      assertTrue(
          JSON.readTree(response.body())
              .at("/error/message")
              .asText()
              .startsWith("the body is no JSON"));
    }
  }

  @Test
  void otherPathsMethodsAndSizesAreRefused() throws Exception {
    assertEquals(404, post("/waters", WATER).statusCode());
    for (String method : List.of("GET", "PUT", "DELETE", "HEAD")) {
      HttpResponse<String> response =
          HTTP.send(
              request(service, "/water").method(method, BodyPublishers.noBody()).build(),
              HttpResponse.BodyHandlers.ofString());
      assertEquals(405, response.statusCode(), method);
      assertEquals("POST", response.headers().firstValue("Allow").orElse(""));
    }
    for (int size : new int[] {16 * 1024 + 1, 600_000}) {
      assertEquals(413, post("/water", " ".repeat(size)).statusCode());
    }
    assertEquals(200, post("/water", WATER + " ".repeat(10_000)).statusCode());
  }

  @Test
  void hostileRequestsAreNeverAnErrorOfTheService() throws Exception {
    Random random = new Random(20261126);
    String[] odd = {
      "0", "-0.0", "1e-320", "1e300", "-1e300", "14", "1e5", "null", "true", "\"x\"", "[]", "{}"
    };
    AtomicInteger refused = new AtomicInteger();
    for (int i = 0; i < 400; i++) {
      String body = i % 2 == 0 ? WATER : DOSE;
      List<String> numbers =
          new ArrayList<>(List.of(body.split("(?<=: )(?=[0-9])|(?<=[0-9])(?=[,}])")));
      int changed = 1 + 2 * random.nextInt(numbers.size() / 2);
      numbers.set(changed, odd[random.nextInt(odd.length)]);
      HttpResponse<String> response =
          post(i % 2 == 0 ? "/water" : "/beer-dose", String.join("", numbers));
      assertTrue(
          response.statusCode() == 200 || response.statusCode() == 400,
          String.join("", numbers) + response.body());
      if (response.statusCode() == 400) {
        refused.incrementAndGet();
        assertFalse(
            JSON.readTree(response.body()).at("/error/field").asText().isEmpty(), response.body());
      } else {
        assertFalse(response.body().matches("(?s).*\"-?(NaN|Infinity)\".*"), response.body());
      }
    }
    assertTrue(refused.get() > 200, refused + " were refused");
  }

  @Test
  void anErrorOfItsOwnShowsNothingOfItsInside() throws Exception {
    List<LogRecord> logged = new ArrayList<>();
    Logger logger = Logger.getLogger(Service.class.getName());
    Handler handler = remembering(logged);
    logger.addHandler(handler);
    logger.setUseParentHandlers(false);
    try (Service faulty =
        Service.start(
            0,
            Map.of(
                "/fault",
                request -> {
                  throw new IllegalStateException("injected");
                },
                "/error",
                request -> {
                  throw new AssertionError("injected");
                }))) {
      for (String path : List.of("/fault", "/error")) {
        HttpResponse<String> response = post(faulty, path, "{}");
        assertEquals(500, response.statusCode());
        JsonNode error = JSON.readTree(response.body()).at("/error");
        assertEquals("an error of the service itself", error.at("/message").asText());
        assertFalse(response.body().matches("(?s).*(injected|Exception|\\bat org).*"));
        LogRecord last = logged.get(logged.size() - 1);
        assertTrue(last.getMessage().contains(error.at("/number").asText()));
        assertEquals("injected", last.getThrown().getMessage());
      }
    } finally {
      logger.removeHandler(handler);
      logger.setUseParentHandlers(true);
    }
  }

  private static Handler remembering(List<LogRecord> logged) {
    return new Handler() {
      @Override
      public void publish(LogRecord record) {
        logged.add(record);
      }

      @Override
      public void flush() {}

      @Override
      public void close() {}
    };
  }

  @Test
  void stopsAfterTheAnswersThatAreUnderWay() throws Exception {
    CountDownLatch asked = new CountDownLatch(1);
    CountDownLatch mayAnswer = new CountDownLatch(1);
    Service slow =
        Service.start(
            0,
            Map.of(
                "/slow",
                request -> {
                  asked.countDown();
                  try {
                    mayAnswer.await();
                  } catch (InterruptedException e) {
                    throw new IllegalStateException(e);
                  }
                  return Map.of("answered", true);
                }));
    Future<HttpResponse<String>> response =
        HTTP.sendAsync(
            request(slow, "/slow").POST(BodyPublishers.ofString("{}")).build(),
            HttpResponse.BodyHandlers.ofString());
    assertTrue(asked.await(10, TimeUnit.SECONDS));
    FutureTask<Void> stopping = new FutureTask<>(slow::close, null);
    new Thread(stopping).start();
    // The stopping is under way when a later request is told of it.
    int later = 0;
    for (int i = 0; later != 503 && i < 1000; i++) {
      later = post(slow, "/nowhere", "{}").statusCode();
    }
    assertEquals(503, later);
    assertFalse(stopping.isDone());
    mayAnswer.countDown();
    assertEquals("{\"answered\":true}", response.get(10, TimeUnit.SECONDS).body());
    stopping.get(10, TimeUnit.SECONDS);
    assertThrows(ConnectException.class, () -> post(slow, "/slow", "{}"));
    slow.close();
  }

  @Test
  void twoHundredClientsAtOnceGetRightAnswers() throws Exception {
    Load.Result result = Load.of(service.port(), 8);
    assertEquals(0, result.wrong(), result.toString());
    assertEquals(0, result.failed(), result.toString());
    assertEquals(0, result.ownErrors(), result.toString());
    assertTrue(result.answers() > 1000, result.toString());
    assertTrue(result.p99() < 2000, result.toString());
  }

  private static void assertStructured(Answer<?> expected, JsonNode found) {
    assertEquals(
        expected.structured(),
        StructuredAnswer.from(
            JSON.convertValue(found, new TypeReference<Map<String, Object>>() {})));
  }

  private static void assertRefused(
      String path, String body, String field, String value, String allowed) throws Exception {
    HttpResponse<String> response = post(path, body);
    assertEquals(400, response.statusCode(), response.body());
    JsonNode error = JSON.readTree(response.body()).at("/error");
    assertEquals(field, error.at("/field").asText(), response.body());
    assertTrue(error.at("/value").asText().startsWith(value), response.body());
    assertTrue(error.at("/allowed").asText().contains(allowed), response.body());
    assertFalse(error.at("/message").asText().isBlank(), response.body());
  }

  private static HttpResponse<String> post(String path, String body) throws Exception {
    return post(service, path, body);
  }

  private static HttpResponse<String> post(Service to, String path, String body) throws Exception {
    return HTTP.send(
        request(to, path).POST(BodyPublishers.ofString(body)).build(),
        HttpResponse.BodyHandlers.ofString());
  }

  private static HttpRequest.Builder request(Service to, String path) {
    return HttpRequest.newBuilder(URI.create("http://localhost:" + to.port() + path));
  }
}
