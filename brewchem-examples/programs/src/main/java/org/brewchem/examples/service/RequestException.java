package org.brewchem.examples.service;

import java.util.LinkedHashMap;
import java.util.Map;
import org.brewchem.OutOfRangeException;
import org.brewchem.units.UnitTextException;
import org.jspecify.annotations.Nullable;

/**
 * The refusal of a request: its status, and what a form needs to point at the field at fault. The
 * exceptions of the library become one by {@link #of}.
 */
final class RequestException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  static final int BAD_REQUEST = 400;
  static final int NOT_FOUND = 404;
  static final int METHOD_NOT_ALLOWED = 405;
  static final int TOO_LARGE = 413;
  static final int UNAVAILABLE = 503;

  private final int status;
  private final String field;
  private final transient @Nullable Object value;
  private final String unit;
  private final String allowed;

  private RequestException(
      int status,
      String field,
      @Nullable Object value,
      String unit,
      String allowed,
      @Nullable String message) {
    super(message);
    this.status = status;
    this.field = field;
    this.value = value;
    this.unit = unit;
    this.allowed = allowed;
  }

  /** Refuses a request that no field is at fault in. */
  static RequestException of(int status, String message) {
    return new RequestException(status, "", null, "", "", message);
  }

  /** Refuses a field of a request. */
  static RequestException of(String field, @Nullable Object value, String allowed, String message) {
    return new RequestException(BAD_REQUEST, field, value, "", allowed, message);
  }

  /** Says of a field what the library says of an argument. */
  static RequestException of(String field, @Nullable Object value, RuntimeException refusal) {
    String message = refusal.getMessage();
    if (refusal instanceof OutOfRangeException range) {
      return new RequestException(
          BAD_REQUEST, field, range.value(), range.unit(), range.allowed(), message);
    }
    String allowed = refusal instanceof UnitTextException text ? text.allowed() : "";
    return new RequestException(BAD_REQUEST, field, value, "", allowed, message);
  }

  int status() {
    return status;
  }

  /** The body of the answer; what is empty is left out. */
  Map<String, Object> body() {
    Map<String, Object> error = new LinkedHashMap<>();
    if (!field.isEmpty()) {
      error.put("field", field);
    }
    if (value != null) {
      // JSON has no number that is infinite.
      error.put(
          "value", value instanceof Double n && !Double.isFinite(n) ? String.valueOf(n) : value);
    }
    if (!unit.isEmpty()) {
      error.put("unit", unit);
    }
    if (!allowed.isEmpty()) {
      error.put("allowed", allowed);
    }
    error.put("message", String.valueOf(getMessage()));
    return Map.of("error", error);
  }
}
