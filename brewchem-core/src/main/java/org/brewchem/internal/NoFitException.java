package org.brewchem.internal;

import org.jspecify.annotations.Nullable;

/** Thrown when readings do not lead to a fit, for the caller to say of what. */
public final class NoFitException extends Exception {
  private static final long serialVersionUID = 1L;

  /** Why there is no fit. */
  public enum Reason {
    /** Several parameters do the same, or one does nothing. */
    NOT_DETERMINED,
    /** The steps did not settle within their cap. */
    NOT_SETTLED
  }

  private final Reason reason;

  NoFitException(Reason reason, @Nullable Throwable cause) {
    super(reason.name(), cause);
    this.reason = reason;
  }

  /** Returns why there is no fit. */
  public Reason reason() {
    return reason;
  }
}
