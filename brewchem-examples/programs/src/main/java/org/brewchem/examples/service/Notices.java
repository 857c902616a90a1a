package org.brewchem.examples.service;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.brewchem.figure.Notice;

/** Notices as JSON: the code for programs, the sentence for people. */
final class Notices {

  private Notices() {}

  static List<Map<String, String>> of(List<Notice> notices) {
    return notices.stream().map(Notices::of).toList();
  }

  private static Map<String, String> of(Notice notice) {
    Map<String, String> map = new LinkedHashMap<>();
    map.put("code", notice.code().name());
    map.put("severity", notice.severity().name());
    map.put("subject", notice.subject());
    map.put("text", notice.text());
    return map;
  }
}
