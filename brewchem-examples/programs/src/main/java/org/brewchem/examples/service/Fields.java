package org.brewchem.examples.service;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import org.brewchem.quantity.PH;
import org.brewchem.units.LabUnit;
import org.brewchem.units.UnitSet;

/**
 * The fields of a JSON object in a request. Whatever is wrong with one is said of it by its path,
 * such as {@code beer.pH.number}. Mutable, for one thread.
 */
final class Fields {

  private static final ObjectReader READER =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build()
          .reader();

  private static final int LONGEST_VALUE = 80;

  /** No number of a brewery is larger, in any unit, and no uncertainty that follows overflows. */
  private static final double LARGEST_NUMBER = 1e9;

  private final String path;
  private final JsonNode object;
  private final Set<String> asked = new LinkedHashSet<>();

  private Fields(String path, JsonNode object) {
    this.path = path;
    this.object = object;
  }

  static Fields of(byte[] body) {
    JsonNode read;
    try {
      read = READER.readTree(body);
    } catch (JsonProcessingException fault) {
      String place =
          fault.getLocation() == null
              ? ""
              : " at line "
                  + fault.getLocation().getLineNr()
                  + ", column "
                  + fault.getLocation().getColumnNr();
      throw RequestException.of(RequestException.BAD_REQUEST, "the body is no JSON" + place);
    } catch (IOException fault) {
      throw RequestException.of(RequestException.BAD_REQUEST, "the body is no JSON in UTF-8");
    }
    if (!read.isObject()) {
      throw RequestException.of(RequestException.BAD_REQUEST, "the body is no JSON object");
    }
    return new Fields("", read);
  }

  Fields object(String name) {
    JsonNode found = required(name, "an object");
    if (!found.isObject()) {
      throw refused(name, found, "an object");
    }
    return new Fields(path + name + ".", found);
  }

  boolean has(String name) {
    asked.add(name);
    return object.has(name);
  }

  String text(String name) {
    JsonNode found = required(name, "a text");
    if (!found.isTextual()) {
      throw refused(name, found, "a text");
    }
    return found.textValue();
  }

  double number(String name) {
    JsonNode found = required(name, "a number");
    if (!found.isNumber()) {
      throw refused(name, found, "a number");
    }
    double number = found.doubleValue();
    if (!(Math.abs(number) <= LARGEST_NUMBER)) {
      throw refused(name, found, "a number of at most 1e9");
    }
    return number;
  }

  OptionalDouble optionalNumber(String name) {
    return has(name) ? OptionalDouble.of(number(name)) : OptionalDouble.empty();
  }

  /** Reads an object of a number and a unit, in whichever unit of the meaning it is written. */
  <Q> Q quantity(String name, Function<String, LabUnit<Q>> units) {
    return read(name, units).value();
  }

  /** Passes on a quantity where there is one: with its standard uncertainty if it states that. */
  <Q> void stated(String name, UnitSet<Q> units, Consumer<Q> alone, BiConsumer<Q, Q> withU) {
    if (!has(name)) {
      return;
    }
    Stated<Q> stated = read(name, units::named);
    at(
        name,
        () -> {
          stated
              .standardUncertainty()
              .ifPresentOrElse(
                  u -> withU.accept(stated.value(), u), () -> alone.accept(stated.value()));
          return stated;
        });
  }

  <Q> Stated<Q> read(String name, Function<String, LabUnit<Q>> units) {
    Fields fields = object(name);
    double number = fields.number("number");
    String symbol = fields.text("unit");
    OptionalDouble u = fields.optionalNumber("standardUncertainty");
    fields.end();
    LabUnit<Q> unit = fields.at("unit", () -> units.apply(symbol));
    Q value = fields.at("number", () -> unit.from(number));
    Optional<Q> uncertainty =
        u.isPresent()
            ? Optional.of(fields.at("standardUncertainty", () -> unit.from(u.getAsDouble())))
            : Optional.empty();
    return new Stated<>(value, uncertainty);
  }

  /** Reads a pH, which has no unit. */
  StatedPH pH(String name) {
    Fields fields = object(name);
    double number = fields.number("number");
    OptionalDouble u = fields.optionalNumber("standardUncertainty");
    fields.end();
    return new StatedPH(fields.at("number", () -> PH.of(number)), u);
  }

  /** Makes something of a field; what the library refuses is said of the field. */
  <T> T at(String name, Supplier<T> made) {
    try {
      return made.get();
    } catch (IllegalArgumentException refusal) {
      JsonNode found = object.path(name);
      throw RequestException.of(path + name, found.isValueNode() ? shown(found) : null, refusal);
    }
  }

  /** Refuses what nobody asked for: a misspelled field would else be missed in silence. */
  void end() {
    for (Iterator<String> names = object.fieldNames(); names.hasNext(); ) {
      String name = names.next();
      if (!asked.contains(name)) {
        throw RequestException.of(
            path + excerpt(name), null, "one of " + asked, "there is no such field");
      }
    }
  }

  private JsonNode required(String name, String allowed) {
    asked.add(name);
    JsonNode found = object.get(name);
    if (found == null) {
      throw RequestException.of(path + name, null, allowed, "the field is missing");
    }
    return found;
  }

  private RequestException refused(String name, JsonNode found, String allowed) {
    return RequestException.of(path + name, shown(found), allowed, "the field is not " + allowed);
  }

  private static Object shown(JsonNode found) {
    return found.isNumber() ? found.doubleValue() : excerpt(found.asText(found.toString()));
  }

  private static String excerpt(String text) {
    return text.length() <= LONGEST_VALUE ? text : text.substring(0, LONGEST_VALUE) + "…";
  }

  /** A pH as a request states it. */
  record StatedPH(PH value, OptionalDouble standardUncertainty) {}

  /** A quantity as a request states it. */
  record Stated<Q>(Q value, Optional<Q> standardUncertainty) {}
}
