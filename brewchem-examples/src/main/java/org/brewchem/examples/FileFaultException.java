package org.brewchem.examples;

import org.jspecify.annotations.Nullable;

/** Thrown when a file of an example cannot be used; the message names file, line and column. */
final class FileFaultException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  FileFaultException(String message, @Nullable Throwable cause) {
    super(message, cause);
  }
}
